using CutShop.Benchmarks.Cutting;

switch (args.FirstOrDefault())
{
    case "cutting":
        return CuttingCommand.Run(args[1..]);
    default:
        Console.Error.WriteLine("usage: cutting [--seconds N] [--direct N] [--only TEXT] [--write FILE]");
        return 2;
}
