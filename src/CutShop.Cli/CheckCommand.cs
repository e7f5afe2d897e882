using System.CommandLine;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Cli;

/// <summary><c>check</c>: says what is off in the shop's database and folder.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var options = new ShopOptions();
        var command = new Command("check", "Check the shop's database: the file, the rope of every coil, states against history, tickets against job files.") { options.Folder };
        ShopOptions.WorksOnAFile(command);
        command.SetAction(async (parsed, _) =>
        {
            var folder = parsed.GetRequiredValue(options.Folder);
            var findings = ShopCheck.OfFolder(folder, ShopTables.Standard, TimeProvider.System);
            await FindingLines.WriteAsync(findings);
            if (findings.Count > 0)
                return Exit.Failed;
            Console.WriteLine($"{ShopFolder.DatabaseIn(folder)}: all is well.");
            return Exit.Done;
        });
        return command;
    }
}
