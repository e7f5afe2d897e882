using CutShop.Benchmarks.Takeoff;

// One subcommand a subject; each measures, prints a table and says whether its targets are met (exit code 1 where not).
var subjects = new Dictionary<string, Func<int>>
{
    ["takeoff"] = TakeoffBenchmark.Run,
};

if (args is [var name] && subjects.TryGetValue(name, out var run))
    return run();

Console.Error.WriteLine($"usage: one of {string.Join(", ", subjects.Keys)}");
return 2;
