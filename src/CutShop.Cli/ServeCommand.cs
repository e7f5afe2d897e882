using System.CommandLine;
using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;
using CutShop.Web;
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
        var listen = ListenOption();
        var command = new Command("serve", "Run the shop's web site.") { options.Folder, options.Server, options.Address, options.Metric, listen };
        command.SetAction(async (parsed, cancel) =>
        {
            using var database = options.Open(parsed);
            return await ServeAsync(database, options.AddressOf(parsed, parsed.GetRequiredValue(listen)), options.PaperOf(parsed), parsed.GetRequiredValue(listen), cancel);
        });
        return command;
    }

    /// <summary>Where to listen; only this machine unless the shop says otherwise.</summary>
    public static Option<string> ListenOption() => new("--listen")
    {
        Description = "Where to listen; the default answers this machine only.",
        DefaultValueFactory = _ => UsualListen,
    };

    /// <summary>Runs the site until it is stopped.</summary>
    public static async Task<int> ServeAsync(ShopDatabase database, Uri address, PaperSettings settings, string listen, CancellationToken cancel)
    {
        await using var site = ShopSite.Build(new ShopSiteSettings(database, ShopTables.Standard, settings, address), listen);
        await site.StartAsync(cancel);
        Console.WriteLine($"The shop's pages: {string.Join(' ', site.Urls)}   (Ctrl+C stops)");
        if (await new FirstOwner(database).DrawLinkAsync(cancel) is { } token)
            Console.WriteLine($"Nobody can sign in yet. Make the owner's account here; the link works once: {site.Urls.First().TrimEnd('/')}/set-up/{token}");
        await site.WaitForShutdownAsync(cancel);
        return Exit.Done;
    }
}
