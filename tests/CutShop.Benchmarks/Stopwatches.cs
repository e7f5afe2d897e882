using System.Diagnostics;

namespace CutShop.Benchmarks;

/// <summary>One measured action: median time and what one call allocates.</summary>
/// <param name="Seconds">Median time of a call.</param>
/// <param name="Bytes">Bytes that one call allocates on its thread.</param>
internal sealed record Measured(double Seconds, long Bytes);

/// <summary>Times actions against each other in one run, turn by turn, so that a slow spell of the machine meets all of them.</summary>
internal static class Stopwatches
{
    /// <summary>Long enough for the runtime to compile what is hot a second time.</summary>
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(0.5);

    /// <summary>Runs the actions in turns and gives each one's median.</summary>
    /// <param name="rounds">How many times each is timed.</param>
    /// <param name="callsARound">How many calls make one timing, so that short ones are not lost in the clock's grain.</param>
    /// <param name="actions">What is timed.</param>
    public static Measured[] InTurns(int rounds, int callsARound, params Action[] actions)
    {
        foreach (var action in actions)
            WarmUpWith(action);
        var seconds = actions.Select(_ => new double[rounds]).ToArray();
        for (var round = 0; round < rounds; round++)
        {
            for (var i = 0; i < actions.Length; i++)
            {
                GC.Collect();
                var start = Stopwatch.GetTimestamp();
                Repeat(actions[i], callsARound);
                seconds[i][round] = Stopwatch.GetElapsedTime(start).TotalSeconds / callsARound;
            }
        }
        return [.. actions.Select((action, i) => new Measured(Median(seconds[i]), AllocatedBy(action)))];
    }

    private static void WarmUpWith(Action action)
    {
        var start = Stopwatch.GetTimestamp();
        do
            action();
        while (Stopwatch.GetElapsedTime(start) < WarmUp);
    }

    private static void Repeat(Action action, int times)
    {
        for (var i = 0; i < times; i++)
            action();
    }

    private static long AllocatedBy(Action action)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>The middle one of some values, or half way between the middle two; the values are sorted by it.</summary>
    public static double Median(double[] values)
    {
        Array.Sort(values);
        var middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
