using System.CommandLine;
using CutShop.Paper.Words;
using CutShop.Shop.Jobs;
using CutShop.Shop.Site;
using CutShop.Shop.Store;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Tables;

namespace CutShop.Cli;

/// <summary><c>take-in FILE…</c>: takes jobs in to the shop's database and writes their paper.</summary>
internal static class TakeInCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var files = new Argument<string[]>("FILE") { Description = CliWords.Say("HelpJobFiles"), Arity = ArgumentArity.OneOrMore };
        var command = new Command("take-in", CliWords.Say("HelpTakeIn"))
        {
            files,
            options.Folder,
            options.Server,
            options.Address,
            options.Metric,
        };
        command.SetAction(async (parsed, cancel) =>
        {
            using var database = options.Open(parsed);
            var worst = Exit.Done;
            foreach (var file in parsed.GetRequiredValue(files))
            {
                var (job, exitCode) = await JobFiles.ReadAsync(file, cancel);
                if (job is not null)
                    exitCode = await TakeInAsync(database, job, parsed.GetRequiredValue(options.Folder), parsed.GetRequiredValue(options.Address), options.PaperOf(parsed), cancel);
                worst = Math.Max(worst, exitCode);
            }
            return worst;
        });
        return command;
    }

    /// <summary>Takes one job in and writes its paper.</summary>
    public static async Task<int> TakeInAsync(
        ShopDatabase database, Job job, string shopFolder, Uri address, PaperSettings settings, CancellationToken cancel)
    {
        using (var progress = new ProgressLine(CliWords.Say("Pieces", job.Number)))
        {
            var outcome = await new JobIntake(database, ShopTables.Standard).TakeInAsync(job, Environment.UserName, progress, cancel);
            if (outcome == IntakeOutcome.NumberTaken)
            {
                await Console.Error.WriteLineAsync(CliWords.Say("NumberTaken", job.Number));
                return Exit.BadInput;
            }
            Console.WriteLine(CliWords.Say(outcome == IntakeOutcome.TakenIn ? "TakenIn" : "AsBefore", job.Number));
        }

        var folder = Path.Combine(ShopFolder.PaperIn(shopFolder), job.Number);
        var stored = new JobShelf(database).Find(job.Number)!;
        var exitCode = await PaperFolder.WriteAsync(stored, new LabelAddressShelf(database).Current ?? address, settings, folder, cancel);
        if (exitCode == Exit.Done)
            Console.WriteLine(CliWords.Say("PaperIn", job.Number, Path.GetFullPath(folder)));
        return exitCode;
    }
}
