using System.CommandLine;
using CutShop.Shop.Maintenance;

namespace CutShop.Cli;

/// <summary><c>import</c>: makes a shop from an export.</summary>
internal static class ImportCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var from = new Option<string>("--from") { Description = CliWords.Say("HelpImportFrom"), Required = true };
        var command = new Command("import", CliWords.Say("HelpImport")) { options.Folder, options.Server, from };
        command.SetAction(async (parsed, cancel) => await ExportCommand.TellAsync(
            await new ShopImport(options.PlaceOf(parsed), TimeProvider.System).ReadAsync(parsed.GetRequiredValue(from), cancel), "Imported"));
        return command;
    }
}
