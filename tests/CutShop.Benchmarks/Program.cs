using CutShop.Benchmarks.Benches;
using CutShop.Benchmarks.Cutting;
using CutShop.Benchmarks.Desk;
using CutShop.Benchmarks.Labels;
using CutShop.Benchmarks.OnSite;
using CutShop.Benchmarks.Stores;
using CutShop.Benchmarks.Takeoff;
using CutShop.Benchmarks.Trust;

// One subcommand a subject; each measures, prints a table and says whether its targets are met (exit code 1 where not).
var subjects = new Dictionary<string, Func<string[], int>>
{
    ["takeoff"] = _ => TakeoffBenchmark.Run(),
    ["desk"] = _ => DeskBenchmark.Run(),
    ["benches"] = _ => BenchesBenchmark.Run(),
    ["stores"] = _ => StoresBenchmark.Run(),
    ["cutting"] = CuttingCommand.Run,
    ["trust"] = TrustCommand.Run,
    ["labels"] = LabelsBenchmark.Run,
    ["site"] = _ => SiteBenchmark.Run(),
};

if (args is [var name, .. var rest] && subjects.TryGetValue(name, out var run))
    return run(rest);

Console.Error.WriteLine($"usage: one of {string.Join(", ", subjects.Keys)}; cutting takes [--seconds N] [--direct N] [--only TEXT] [--write FILE]; trust takes names of its figures, and [--kills N] [--lengths N] [--files N] [--seconds N] [--write FILE]; labels takes [--pictures N]");
return 2;
