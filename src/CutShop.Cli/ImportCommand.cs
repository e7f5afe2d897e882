using System.CommandLine;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Cli;

/// <summary><c>import</c>: makes a shop from an export.</summary>
internal static class ImportCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var from = new Option<string>("--from") { Description = "The folder of an export.", Required = true };
        var command = new Command("import", "Make a shop from an export, in a folder that has none.") { options.Folder, from };
        ShopOptions.WorksOnAFile(command);
        command.SetAction((parsed, _) => ExportCommand.TellAsync(
            new ShopImport(parsed.GetRequiredValue(options.Folder), ShopTables.Standard, TimeProvider.System).Read(parsed.GetRequiredValue(from)), "Imported"));
        return command;
    }
}
