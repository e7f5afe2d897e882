using System.Globalization;
using System.Text.Json;
using CutShop.Testing.Fuzz;

namespace CutShop.Benchmarks.Takeoff;

/// <summary>
/// The takeoff against the least that any reader of the same file must do: parse its JSON. Times are ratios within one run,
/// so that they hold on any machine.
/// </summary>
internal static class TakeoffBenchmark
{
    private const int CountOfTarget = 10_000;
    private const double MostTimesTheParse = 3;

    /// <summary>Measures, prints and judges.</summary>
    public static int Run()
    {
        Console.WriteLine("   posts   bytes/post   parse us/post   read us/post   takeoff us/post   read/parse   takeoff/parse   takeoff B/post");
        var met = true;
        foreach (var (count, rounds, calls) in new[] { (10, 31, 400), (100, 31, 40), (1_000, 31, 4), (10_000, 21, 1), (100_000, 7, 1) })
            met &= OfPosts(count, rounds, calls);
        Console.WriteLine(met
            ? $"Met: at {CountOfTarget} posts the takeoff takes at most {MostTimesTheParse} times the JSON parse."
            : $"MISSED: at {CountOfTarget} posts the takeoff takes over {MostTimesTheParse} times the JSON parse.");
        return met ? 0 : 1;
    }

    private static bool OfPosts(int count, int rounds, int calls)
    {
        var utf8 = GeneratedJob.OfPosts(count);
        var reading = JobFileReader.Read(utf8);
        if (reading.Job is not { } job)
            throw new InvalidOperationException($"The generated job is not good: {reading.Problems[0]}");

        var tables = ShopTables.Standard;
        var measured = Stopwatches.InTurns(
            rounds,
            calls,
            () => JsonDocument.Parse(utf8).Dispose(),
            () => JobFileReader.Read(utf8),
            () => JobTakeoff.Of(job, tables));
        var (parse, read, takeoff) = (measured[0], measured[1], measured[2]);
        var ratio = takeoff.Seconds / parse.Seconds;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{count,8} {utf8.Length / (double)count,12:0} {Micro(parse),15:0.000} {Micro(read),14:0.000} {Micro(takeoff),17:0.000} {read.Seconds / parse.Seconds,12:0.00} {ratio,15:0.00} {takeoff.Bytes / count,16}"));
        return count != CountOfTarget || ratio <= MostTimesTheParse;

        double Micro(Measured one) => one.Seconds * 1e6 / count;
    }
}
