using System.CommandLine;
using CutShop.Shop;

namespace CutShop.Cli;

/// <summary><c>restore FILE</c>: puts a backup in place of the shop's database.</summary>
internal static class RestoreCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var backup = new Argument<string>("FILE") { Description = "The backup." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Only say what would be done." };
        var evenSo = new Option<bool>("--even-so") { Description = "Restore it although something is off in it." };
        var command = new Command("restore", "Put a backup in place of the shop's database. What was there before is kept as a backup.")
        {
            backup,
            options.Folder,
            dryRun,
            evenSo,
        };
        ShopOptions.WorksOnAFile(command);
        command.SetAction(async (parsed, _) =>
        {
            var restore = new ShopRestore(parsed.GetRequiredValue(options.Folder), TimeProvider.System);
            var (file, isDry, isForced) = (parsed.GetRequiredValue(backup), parsed.GetValue(dryRun), parsed.GetValue(evenSo));
            return await TellAsync(isDry ? restore.Look(file, isForced) : restore.Restore(file, isForced), isDry);
        });
        return command;
    }

    private static async Task<int> TellAsync(RestoreAnswer answer, bool isDry)
    {
        await FindingLines.WriteAsync(answer.Findings);
        if (answer.Backup is { } backup)
            Console.WriteLine($"The backup: {Said(backup)}.");
        Console.WriteLine(answer.Present is { } present ? $"The shop before: {Said(present)}." : "The shop before: no database that can be read.");
        if (answer is { Backup: { } restored, Present: { } lost } && lost.Lines > restored.Lines)
            Console.WriteLine($"{lost.Lines - restored.Lines} lines of history are not in the backup.");
        if (answer is { Backup: { } to, Present: { } from } && from.LastLine > to.LastLine)
            Console.WriteLine(FormattableString.Invariant($"Programs that follow the changes: the last line in the backup is {to.LastLine}; what they read after it, up to line {from.LastLine}, is undone. They are answered 410 and start again."));
        if (answer.Problem is { } problem)
        {
            await Console.Error.WriteLineAsync(problem);
            return Exit.Failed;
        }
        WriteKept(answer, isDry);
        Console.WriteLine(isDry ? "It can be restored. Nothing was changed." : "Restored.");
        if (answer.Aside is { } aside)
            Console.WriteLine($"What was there before: {aside}");
        return Exit.Done;
    }

    private static void WriteKept(RestoreAnswer answer, bool isDry)
    {
        if (answer.Kept is not { } kept)
        {
            Console.WriteLine("The database before cannot be read, so what was revoked since the backup is not known. Check keys, people, tablets and labels.");
            return;
        }
        if (kept.Count > 0)
            Console.WriteLine(isDry ? "Revoked or changed since the backup, and would stay so:" : "Revoked or changed since the backup, and stays so:");
        foreach (var line in kept)
            Console.WriteLine($"  {line}");
    }

    private static string Said(ShopFacts facts) =>
        FormattableString.Invariant($"{facts.Jobs} jobs, {facts.Coils} coils, {facts.Lines} lines of history, last changed {(facts.LastChange is { } at ? $"{at.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC" : "never")}");
}
