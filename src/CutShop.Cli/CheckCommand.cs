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
        var rules = new Option<bool>("--rules") { Description = "Where nothing is wrong, list the open jobs that would be different under this program's rules. This is not an error." };
        var command = new Command("check", "Check the shop's database, in a file or on a server: the rope of every coil, states against history, tickets against what was promised.")
        {
            options.Folder,
            options.Server,
            rules,
        };
        command.SetAction(async (parsed, _) =>
        {
            var place = options.PlaceOf(parsed);
            var findings = ShopCheck.Of(place, TimeProvider.System);
            await FindingLines.WriteAsync(findings);
            if (findings.Count > 0)
                return Exit.Failed;
            Console.WriteLine($"{place}: all is well.");
            if (parsed.GetValue(rules))
            {
                using var database = place.Open(TimeProvider.System);
                RuleLines.Write(new JobsAgainstRules(database, ShopTables.Standard).All());
            }
            return Exit.Done;
        });
        return command;
    }
}
