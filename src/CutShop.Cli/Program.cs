using System.CommandLine;
using CutShop.Cli;
using CutShop.Shop.Maintenance;

PrivateFiles.FromNowOn();
var root = new RootCommand(CliWords.Say("HelpCutShop"))
{
    TakeoffCommand.Create(),
    TakeInCommand.Create(),
    ServeCommand.Create(),
    DemoCommand.Create(),
    PersonCommand.Create(),
    CheckCommand.Create(),
    UpgradeCommand.Create(),
    BackupCommand.Create(),
    RestoreCommand.Create(),
    ExportCommand.Create(),
    ImportCommand.Create(),
};
try
{
    return await root.Parse(args).InvokeAsync(new InvocationConfiguration
    {
        EnableDefaultExceptionHandler = false,
        // Longer than the server takes to finish what it is answering.
        ProcessTerminationTimeout = TimeSpan.FromSeconds(40),
    });
}
catch (OperationCanceledException)
{
    return Exit.Failed;
}
catch (Exception e) when (Trouble.TextOf(e) is not null)
{
    await Console.Error.WriteLineAsync(Trouble.TextOf(e));
    return Exit.Failed;
}
