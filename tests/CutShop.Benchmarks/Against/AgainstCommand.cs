using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.Against;

/// <summary>
/// <c>against COMMIT [MEASURE…] [--turns N]</c>: this program against the one of another commit, turn by turn, so that a slow spell of
/// the machine meets both. Without names everything is measured.
/// </summary>
internal static class AgainstCommand
{
    private const int UsualTurns = 5;
    private const int MostTurns = 99;

    /// <summary>What can be measured. A new one is a row here: its name, the most that new / old may be or null, and what measures it.</summary>
    private static readonly (string Name, double? Most, Func<ShopProgram, Measure> Of)[] Measures =
    [
        ("pages", null, program => new PagesMeasure(program)),
        ("intake", 1.1, program => new IntakeMeasure(program)),
        ("stored-size", 1.0, program => new StoredSizeMeasure(program)),
        ("bench", null, program => new BenchMeasure(program)),
        ("preview", null, program => new PreviewMeasure(program)),
        ("takeoff", null, program => new TakeoffMeasure(program)),
    ];

    /// <summary>The measures' names.</summary>
    public static string Names => string.Join(", ", Measures.Select(measure => measure.Name));

    /// <summary>Measures, prints and judges.</summary>
    public static int Run(string[] args)
    {
        var (turns, rest) = (UsualTurns, args.ToList());
        if (rest.IndexOf("--turns") is var at and >= 0)
        {
            var text = rest.ElementAtOrDefault(at + 1) ?? "";
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out turns) || turns is < 1 or > MostTurns)
                return Refuse($"--turns: \"{text}\"; accepted: a whole number from 1 to {MostTurns}");
            rest.RemoveRange(at, 2);
        }
        if (rest is not [var commit, .. var names])
            return Refuse("COMMIT: missing; accepted: a hash, a branch or a tag, such as main~3");
        if (names.Find(name => !Array.Exists(Measures, measure => measure.Name == name)) is { } unknown)
            return Refuse($"MEASURE: \"{unknown}\"; accepted: {Names}");
        if (typeof(AgainstCommand).Assembly.GetCustomAttribute<DebuggableAttribute>() is { IsJITOptimizerDisabled: true })
            return Refuse("This program is built to be debugged; accepted: one that is built with -c Release, as the other one is");
        var (old, problem) = BuiltCommit.Of(commit);
        if (old is null)
            return Refuse(problem!);
        try
        {
            return Run(old, BuiltCommit.Own(), [.. Measures.Where(measure => names.Count == 0 || names.Contains(measure.Name))], turns);
        }
        catch (InvalidOperationException e)
        {
            // Caught, so that the servers are stopped and their shops removed.
            return Refuse(e.ToString());
        }
    }

    private static int Run(ShopProgram old, ShopProgram own, (string Name, double? Most, Func<ShopProgram, Measure> Of)[] measures, int turns)
    {
        Say($"old: {old.Name}; new: {own.Name}; turns: {turns}, old and new after each other; new / old is the median of the turns' ratios");
        Say($"{"",-64} {"old",10} {"new",10} {"new/old",8} {"least",6} {"most",6}");
        var met = true;
        foreach (var (name, most, of) in measures)
        {
            using var oldMeasure = of(old);
            using var ownMeasure = of(own);
            oldMeasure.Prepare();
            ownMeasure.Prepare();
            var readings = Enumerable.Range(0, turns).Select(_ => oldMeasure.Turn().Zip(ownMeasure.Turn()).SelectMany(part => part.First.Zip(part.Second)).ToList()).ToList();
            for (var figure = 0; figure < readings[0].Count; figure++)
                met &= Judge(name, most, [.. readings.Select(turn => turn[figure])]);
        }
        return met ? 0 : 1;
    }

    private static bool Judge(string name, double? most, (Reading Old, Reading Own)[] turns)
    {
        var label = $"{name}: {turns[0].Old.What}";
        if (turns.Select(turn => turn.Own).FirstOrDefault(reading => reading.Value is null) is { } missing)
        {
            Say($"{label,-64} {missing.Missing}");
            return true;
        }
        var ratios = turns.Select(turn => turn.Own.Value!.Value / turn.Old.Value!.Value).ToArray();
        var (ratio, isMet) = (Stopwatches.Median(ratios), true);
        var judged = "";
        if (most is { } limit)
        {
            isMet = ratio <= limit;
            judged = string.Create(CultureInfo.InvariantCulture, $"   at most {limit:0.00}: {(isMet ? "met" : "NOT met")}");
        }
        Say($"{label,-64} {Median(turns.Select(turn => turn.Old)),10:0.00} {Median(turns.Select(turn => turn.Own)),10:0.00} {ratio,8:0.00} {ratios[0],6:0.00} {ratios[^1],6:0.00}{judged}");
        return isMet;
    }

    private static double Median(IEnumerable<Reading> readings) => Stopwatches.Median([.. readings.Select(reading => reading.Value!.Value)]);

    private static int Refuse(string problem)
    {
        Console.Error.WriteLine(problem);
        return 2;
    }
}
