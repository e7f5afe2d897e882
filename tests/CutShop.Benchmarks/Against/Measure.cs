using System.Diagnostics;

namespace CutShop.Benchmarks.Against;

/// <summary>One figure of one turn.</summary>
/// <param name="What">What was measured, with its unit.</param>
/// <param name="Value">The figure, the less the better; null where the newer version has nothing to measure.</param>
/// <param name="Missing">Why there is no figure where there is none.</param>
internal sealed record Reading(string What, double? Value, string Missing = "");

/// <summary>What is measured of one version of the program.</summary>
internal abstract class Measure : IDisposable
{
    private static readonly TimeSpan Warming = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan LongestTiming = TimeSpan.FromSeconds(2);
    private const int LeastAsks = 20;
    private const int MostAsks = 200;

    /// <summary>Makes ready, once, before the first turn.</summary>
    public abstract void Prepare();

    /// <summary>
    /// Measures once: the same figures in the same order each time, in parts. After each part the other version measures the same one, so
    /// that a slow spell of the machine meets both; nothing of this version runs then, for a server at rest still compiles.
    /// </summary>
    public abstract IEnumerable<Reading[]> Turn();

    public abstract void Dispose();

    /// <summary>Milliseconds that something takes.</summary>
    protected static double Time(Action work)
    {
        var start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>The median of the milliseconds that one of many takes, once it is warm.</summary>
    /// <param name="ask">Does it; is given 0, 1, 2 and so on.</param>
    protected static double MedianTime(Action<int> ask)
    {
        var asks = 0;
        for (var start = Stopwatch.GetTimestamp(); asks < LeastAsks || Stopwatch.GetElapsedTime(start) < Warming;)
            ask(asks++);
        var times = new List<double>();
        for (var start = Stopwatch.GetTimestamp(); times.Count < LeastAsks || (times.Count < MostAsks && Stopwatch.GetElapsedTime(start) < LongestTiming);)
            times.Add(Time(() => ask(asks++)));
        return Stopwatches.Median([.. times]);
    }
}
