using System.CommandLine;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Cli;

/// <summary><c>check</c>: says what is off in the shop's database and folder.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var command = new Command("check", "Check the shop's database, in a file or on a server: the rope of every coil, states against history, tickets against job files.")
        {
            options.Folder,
            options.Server,
        };
        command.SetAction(async (parsed, _) =>
        {
            var place = options.PlaceOf(parsed);
            var findings = ShopCheck.Of(place, ShopTables.Standard, TimeProvider.System);
            await FindingLines.WriteAsync(findings);
            if (findings.Count > 0)
                return Exit.Failed;
            Console.WriteLine($"{place}: all is well.");
            return Exit.Done;
        });
        return command;
    }
}
