using System.CommandLine;
using CutShop.Shop;

namespace CutShop.Cli;

/// <summary><c>export</c>: writes everything the shop holds as JSON and CSV.</summary>
internal static class ExportCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var to = new Option<string>("--to") { Description = "A folder that is not there yet.", Required = true };
        var command = new Command("export", "Write everything the shop holds as JSON and CSV, with its photos. The server may run.") { options.Folder, options.Server, to };
        command.SetAction((parsed, _) => TellAsync(new ShopExport(options.PlaceOf(parsed), TimeProvider.System).Write(parsed.GetRequiredValue(to)), "Exported"));
        return command;
    }

    /// <summary>Says how an export or an import went.</summary>
    public static async Task<int> TellAsync(TransferAnswer answer, string done)
    {
        if (answer.Problem is { } problem)
        {
            await Console.Error.WriteLineAsync(problem);
            return Exit.BadInput;
        }
        Console.WriteLine(FormattableString.Invariant($"{done}: {answer.Tables} tables, {answer.Rows} rows, {answer.Photos} photos."));
        return Exit.Done;
    }
}
