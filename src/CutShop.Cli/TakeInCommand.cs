using System.CommandLine;
using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Cli;

/// <summary><c>take-in FILE…</c>: takes jobs in to the shop's database and writes their paper.</summary>
internal static class TakeInCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var files = new Argument<string[]>("FILE") { Description = "Job files.", Arity = ArgumentArity.OneOrMore };
        var command = new Command("take-in", "Take jobs in: store their pieces, bores and tickets, and write their paper to the shop's folder.")
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
        using (var progress = new ProgressLine($"{job.Number}: pieces"))
        {
            var outcome = await new JobIntake(database, ShopTables.Standard).TakeInAsync(job, Environment.UserName, progress, cancel);
            if (outcome == IntakeOutcome.NumberTaken)
            {
                await Console.Error.WriteLineAsync($"$.number: \"{job.Number}\": another job has this number; accepted: a number of its own, or the same job again");
                return Exit.BadInput;
            }
            Console.WriteLine(outcome == IntakeOutcome.TakenIn ? $"{job.Number}: taken in" : $"{job.Number}: was taken in before, the same; nothing changed");
        }

        var folder = Path.Combine(ShopFolder.PaperIn(shopFolder), job.Number);
        var stored = new JobShelf(database).Find(job.Number)!;
        var exitCode = await PaperFolder.WriteAsync(stored, new LabelAddressShelf(database).Current ?? address, settings, folder, cancel);
        if (exitCode == Exit.Done)
            Console.WriteLine($"{job.Number}: paper in {Path.GetFullPath(folder)}");
        return exitCode;
    }
}
