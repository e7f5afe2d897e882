using System.CommandLine;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Cli;

/// <summary><c>takeoff FILE</c>: prints what a job file needs as one JSON object.</summary>
internal static class TakeoffCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = CliWords.Say("HelpJobFile") };
        var command = new Command("takeoff", CliWords.Say("HelpTakeoff")) { file };
        command.SetAction((parsed, cancel) => RunAsync(parsed.GetRequiredValue(file), cancel));
        return command;
    }

    private static async Task<int> RunAsync(string file, CancellationToken cancel)
    {
        var (job, exitCode) = await JobFiles.ReadAsync(file, cancel);
        if (job is null)
            return exitCode;
        await using var output = Console.OpenStandardOutput();
        TakeoffJson.Write(JobTakeoff.Of(job, ShopTables.Standard), output);
        return Exit.Done;
    }
}
