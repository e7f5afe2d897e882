using System.CommandLine;
using CutShop.Shop.People;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Tables;

namespace CutShop.Cli;

/// <summary><c>demo</c>: takes in the three jobs of Lantern Quay, an invented boardwalk, writes their paper and runs the site.</summary>
internal static class DemoCommand
{
    private const string Folder = "demo/";

    public static Command Create()
    {
        var options = new ShopOptions();
        options.Folder.DefaultValueFactory = _ => "demo";
        var listen = ServeCommand.ListenOption();
        var noSite = new Option<bool>("--no-site") { Description = CliWords.Say("HelpNoSite") };
        var command = new Command("demo", CliWords.Say("HelpDemo"))
        {
            options.Folder,
            options.Server,
            options.Address,
            options.Metric,
            listen,
            noSite,
        };
        command.SetAction(async (parsed, cancel) =>
        {
            var (shop, address, settings) = (parsed.GetRequiredValue(options.Folder), options.AddressOf(parsed, parsed.GetRequiredValue(listen)), options.PaperOf(parsed));
            using var alone = ServeCommand.Alone(options.PlaceOf(parsed));
            using var database = options.Open(parsed);
            foreach (var job in Jobs())
            {
                var exitCode = await TakeInCommand.TakeInAsync(database, job, shop, address, settings, cancel);
                if (exitCode != Exit.Done)
                    return exitCode;
            }
            await DemoCoils.HangAsync(database, cancel);
            await DemoPrices.KeepAsync(database, cancel);
            await DemoWork.DoAsync(database, cancel);
            if (parsed.GetValue(noSite))
                return Exit.Done;
            var people = await new DemoPeople(database).MakeAsync(cancel);
            return await ServeCommand.ServeAsync(new(database, ShopTables.Standard, settings, address), parsed.GetRequiredValue(listen), cancel, site => Welcome(site, people));
        });
        return command;
    }

    /// <summary>The last thing on the screen, where nobody misses it.</summary>
    private static void Welcome(string site, IReadOnlyList<DemoPerson> people)
    {
        var rule = new string('=', 88);
        Console.WriteLine($"\n{rule}\n\n{CliWords.Say("DemoOpen", site)}\n");
        foreach (var one in people)
            Console.WriteLine(CliWords.Say("DemoPerson", RoleNames.NameOf(one.Person.Role), one.Person.Name, one.Password, one.Pin));
        Console.WriteLine($"\n{rule}\n");
    }

    private static IEnumerable<Job> Jobs()
    {
        var assembly = typeof(DemoCommand).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            yield return JobFileReader.Read(bytes).Job ?? throw new InvalidDataException($"The demo's {name} is not a job file.");
        }
    }
}
