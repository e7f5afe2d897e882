using System.CommandLine;
using CutShop.Shop.Maintenance;

namespace CutShop.Cli;

/// <summary><c>backup</c>: makes a backup now; the shop may be worked on.</summary>
internal static class BackupCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var backups = new BackupOptions();
        var command = new Command("backup", CliWords.Say("HelpBackup"))
        {
            options.Folder,
            backups.Folder,
            backups.Keep,
        };
        ShopOptions.WorksOnAFile(command);
        command.SetAction(async (parsed, _) =>
        {
            var shop = parsed.GetRequiredValue(options.Folder);
            var answer = new ShopBackups(options.DatabaseOf(parsed), backups.FolderOf(parsed, shop), TimeProvider.System).Make(backups.RuleOf(parsed));
            Console.WriteLine(answer.File.Path);
            foreach (var old in answer.Removed)
                Console.WriteLine(CliWords.Say("RemovedBackup", old.Path));
            await FindingLines.WriteAsync(answer.Findings);
            return answer.File.IsSound ? Exit.Done : Exit.Failed;
        });
        return command;
    }
}
