using System.CommandLine;
using CutShop.Shop.Maintenance;
using CutShop.Shop.People;
using CutShop.Takeoff.Tables;
using CutShop.Web.Host;
using CutShop.Web.Shared;
using Microsoft.Extensions.Hosting;

namespace CutShop.Cli;

/// <summary><c>serve</c>: runs the shop's web site.</summary>
internal static class ServeCommand
{
    /// <summary>Where the site listens unless told otherwise.</summary>
    public const string UsualListen = "http://localhost:5080";

    public static Command Create()
    {
        var options = new ShopOptions();
        var backups = new BackupOptions();
        var listen = ListenOption();
        var jsonLog = new Option<bool>("--json-log") { Description = CliWords.Say("HelpJsonLog") };
        var command = new Command("serve", CliWords.Say("HelpServe"))
        {
            options.Folder,
            options.Server,
            options.Address,
            options.Metric,
            listen,
            backups.At,
            backups.Folder,
            backups.Keep,
            jsonLog,
        };
        command.SetAction(async (parsed, cancel) =>
        {
            var (shop, rule) = (parsed.GetRequiredValue(options.Folder), backups.RuleOf(parsed));
            var folder = backups.FolderOf(parsed, shop);
            var place = options.PlaceOf(parsed);
            using var alone = Alone(place);
            PrivateFiles.Close(shop, folder);
            if (!place.IsOnServer && ShopStart.Refusal(shop, folder, TimeProvider.System) is { } refusal)
                throw new InvalidDataException(refusal);
            UpgradeCommand.MakeIfDue(place, folder);
            using var database = place.Open(TimeProvider.System);
            if (place.IsOnServer)
                Console.WriteLine(CliWords.Say("DatabaseOnServer", place, folder));
            var settings = new ShopSiteSettings(database, ShopTables.Standard, options.PaperOf(parsed), options.AddressOf(parsed, parsed.GetRequiredValue(listen)))
            {
                Nightly = database.IsFile && backups.TimeOf(parsed) is { } at ? new NightlySettings(folder, at, rule) : null,
                JsonLog = parsed.GetValue(jsonLog),
            };
            return await ServeAsync(settings, parsed.GetRequiredValue(listen), cancel);
        });
        return command;
    }

    /// <summary>Holds the shop's folder while a server runs: a database file has one server, a database on a server may have several.</summary>
    public static IDisposable Alone(ShopPlace place) => place.IsOnServer
        ? ShopInUse.Share(place.Folder)
        : ShopInUse.TryTakeAlone(place.Folder) ?? throw new IOException(CliWords.Say("ServerRuns", place.DatabaseFile));

    /// <summary>Where to listen; only this machine unless the shop says otherwise.</summary>
    public static Option<string> ListenOption() => new("--listen")
    {
        Description = CliWords.Say("HelpListen"),
        DefaultValueFactory = _ => UsualListen,
    };

    /// <summary>Runs the site until it is stopped; what is being answered then is finished first.</summary>
    public static async Task<int> ServeAsync(ShopSiteSettings settings, string listen, CancellationToken cancel, Action<string>? welcome = null)
    {
        await using var site = ShopSite.Build(settings, listen);
        await site.StartAsync(cancel);
        Console.WriteLine(CliWords.Say("Pages", string.Join(' ', site.Urls)));
        if (await new FirstOwner(settings.Database).DrawLinkAsync(cancel) is { } token)
            Console.WriteLine(CliWords.Say("FirstOwner", site.Urls.First().TrimEnd('/'), token));
        welcome?.Invoke(site.Urls.First());
        await site.WaitForShutdownAsync(cancel);
        return Exit.Done;
    }
}
