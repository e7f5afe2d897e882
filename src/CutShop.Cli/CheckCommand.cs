using System.CommandLine;
using CutShop.Shop.Maintenance;
using CutShop.Takeoff.Tables;

namespace CutShop.Cli;

/// <summary><c>check</c>: says what is off in the shop's database and folder.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var rules = new Option<bool>("--rules") { Description = CliWords.Say("HelpRules") };
        var command = new Command("check", CliWords.Say("HelpCheck"))
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
            Console.WriteLine(CliWords.Say("AllIsWell", place));
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
