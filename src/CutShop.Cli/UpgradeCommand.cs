using System.CommandLine;
using CutShop.Shop.Maintenance;
using CutShop.Takeoff.Tables;

namespace CutShop.Cli;

/// <summary><c>upgrade</c>: brings the shop's database up to date with this program, or tries that on a copy.</summary>
internal static class UpgradeCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var backups = new BackupOptions();
        var rehearse = new Option<bool>("--rehearse") { Description = CliWords.Say("HelpRehearse") };
        var command = new Command("upgrade", CliWords.Say("HelpUpgrade"))
        {
            options.Folder,
            options.Server,
            backups.Folder,
            rehearse,
        };
        command.SetAction(async (parsed, cancel) =>
        {
            var place = options.PlaceOf(parsed);
            var upgrade = new ShopUpgrade(place, backups.FolderOf(parsed, parsed.GetRequiredValue(options.Folder)), ShopTables.Standard, TimeProvider.System);
            if (upgrade.Version == 0)
            {
                await Console.Error.WriteLineAsync(CliWords.Say("NoShopAt", place));
                return Exit.Failed;
            }
            if (!upgrade.IsDue && !parsed.GetValue(rehearse))
            {
                Console.WriteLine(CliWords.Say("UpToDate", place));
                return Exit.Done;
            }
            return await WriteAsync(parsed.GetValue(rehearse) ? await upgrade.RehearseAsync(cancel) : upgrade.Make());
        });
        return command;
    }

    /// <summary>Brings a database of an older program up to date and reports it, before a command uses it.</summary>
    public static void MakeIfDue(ShopPlace place, string backups)
    {
        var upgrade = new ShopUpgrade(place, backups, ShopTables.Standard, TimeProvider.System);
        if (upgrade.IsDue)
            WriteAsync(upgrade.Make()).GetAwaiter().GetResult();
    }

    private static async Task<int> WriteAsync(UpgradeReport report)
    {
        Console.WriteLine(report.Kept.Length > 0
            ? CliWords.Say("Upgraded", report.From, report.To, report.Kept)
            : CliWords.Say("Rehearsed", report.From, report.To));
        await FindingLines.WriteAsync(report.Findings);
        RuleLines.Write(report.Different);
        return report.Findings.Count == 0 ? Exit.Done : Exit.Failed;
    }
}
