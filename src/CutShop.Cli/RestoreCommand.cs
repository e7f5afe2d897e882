using System.CommandLine;
using System.Globalization;
using CutShop.Shop.Maintenance;

namespace CutShop.Cli;

/// <summary><c>restore FILE</c>: puts a backup in place of the shop's database.</summary>
internal static class RestoreCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var backup = new Argument<string>("FILE") { Description = CliWords.Say("HelpBackupFile") };
        var dryRun = new Option<bool>("--dry-run") { Description = CliWords.Say("HelpDryRun") };
        var force = new Option<bool>("--force") { Description = CliWords.Say("HelpForce") };
        var command = new Command("restore", CliWords.Say("HelpRestore"))
        {
            backup,
            options.Folder,
            dryRun,
            force,
        };
        ShopOptions.WorksOnAFile(command);
        command.SetAction(async (parsed, _) =>
        {
            var restore = new ShopRestore(parsed.GetRequiredValue(options.Folder), TimeProvider.System);
            var (file, isDry, isForced) = (parsed.GetRequiredValue(backup), parsed.GetValue(dryRun), parsed.GetValue(force));
            return await TellAsync(isDry ? restore.Look(file, isForced) : restore.Restore(file, isForced), isDry);
        });
        return command;
    }

    private static async Task<int> TellAsync(RestoreAnswer answer, bool isDry)
    {
        await FindingLines.WriteAsync(answer.Findings);
        if (answer.Backup is { } backup)
            Console.WriteLine(CliWords.Say("BackupHolds", Said(backup)));
        Console.WriteLine(answer.Present is { } present ? CliWords.Say("ShopHeld", Said(present)) : CliWords.Say("ShopUnreadable"));
        if (answer is { Backup: { } restored, Present: { } lost } && lost.Lines - restored.Lines is > 0 and var lines)
            Console.WriteLine(lines == 1 ? CliWords.Say("OneLineLost") : CliWords.Say("SomeLinesLost", lines));
        if (answer is { Backup: { } to, Present: { } from } && from.LastLine > to.LastLine)
            Console.WriteLine(CliWords.Say("FollowersStartAgain", to.LastLine, from.LastLine));
        if (answer.Problem is { } problem)
        {
            await Console.Error.WriteLineAsync(problem);
            return Exit.Failed;
        }
        WriteKept(answer, isDry);
        Console.WriteLine(CliWords.Say(isDry ? "CanBeRestored" : "Restored"));
        if (answer.Aside is { } aside)
            Console.WriteLine(CliWords.Say("Aside", aside));
        return Exit.Done;
    }

    private static void WriteKept(RestoreAnswer answer, bool isDry)
    {
        if (answer.Kept is not { } kept)
        {
            Console.WriteLine(CliWords.Say("RevokedUnknown"));
            return;
        }
        if (kept.Count > 0)
            Console.WriteLine(CliWords.Say(isDry ? "WouldStayRevoked" : "StaysRevoked"));
        foreach (var line in kept)
            Console.WriteLine($"  {line}");
    }

    private static string Said(ShopFacts facts) => facts.LastChange is { } at
        ? CliWords.Say("Facts", facts.Jobs, facts.Coils, facts.Lines, at.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture))
        : CliWords.Say("FactsUnchanged", facts.Jobs, facts.Coils, facts.Lines);
}
