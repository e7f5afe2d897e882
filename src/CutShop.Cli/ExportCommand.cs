using System.CommandLine;
using CutShop.Shop.Maintenance;

namespace CutShop.Cli;

/// <summary><c>export</c>: writes everything the shop holds as JSON and CSV.</summary>
internal static class ExportCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var to = new Option<string>("--to") { Description = CliWords.Say("HelpExportTo"), Required = true };
        var command = new Command("export", CliWords.Say("HelpExport")) { options.Folder, options.Server, to };
        command.SetAction((parsed, _) => TellAsync(new ShopExport(options.PlaceOf(parsed), TimeProvider.System).Write(parsed.GetRequiredValue(to)), "Exported"));
        return command;
    }

    /// <summary>Says how an export or an import went.</summary>
    public static async Task<int> TellAsync(TransferAnswer answer, string key)
    {
        if (answer.Problem is { } problem)
        {
            await Console.Error.WriteLineAsync(problem);
            return Exit.BadInput;
        }
        Console.WriteLine(CliWords.Say(key, answer.Tables, answer.Rows, answer.Photos));
        return Exit.Done;
    }
}
