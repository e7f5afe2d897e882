using System.CommandLine;
using CutShop.Cli;

var root = new RootCommand("CutShop: cut and drill work orders for rope railings.")
{
    TakeoffCommand.Create(),
    TakeInCommand.Create(),
    ServeCommand.Create(),
    DemoCommand.Create(),
    PersonCommand.Create(),
};
return await root.Parse(args).InvokeAsync();
