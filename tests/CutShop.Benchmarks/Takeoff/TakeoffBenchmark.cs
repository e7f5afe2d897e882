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
    private const double MostTimesLikePosts = 2.5;
    private const double MostMicrosecondsUnlike = 6;
    private const int RoundsOfKinds = 21;

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
        return met & OfKinds() ? 0 : 1;
    }

    /// <summary>Posts that are like others are worked out once; those that are not cost more.</summary>
    private static bool OfKinds()
    {
        var jobs = new[] { UnlikePosts.Like(CountOfTarget), UnlikePosts.AllNames(CountOfTarget), UnlikePosts.Unlike(CountOfTarget) }
            .Select(utf8 => JobFileReader.Read(utf8) is { Job: { } job } ? job : throw new InvalidOperationException("A generated job is not good."))
            .ToList();
        var tables = ShopTables.Standard;
        var micro = Stopwatches.InTurns(RoundsOfKinds, 1, [.. jobs.Select(job => (Action)(() => JobTakeoff.Of(job, tables)))])
            .Select(one => one.Seconds * 1e6 / CountOfTarget).ToList();
        var met = micro[1] <= micro[0] * MostTimesLikePosts && micro[2] <= MostMicrosecondsUnlike;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{CountOfTarget} posts, us/post: all alike {micro[0]:0.000}; with many names of real sites {micro[1]:0.000}, {micro[1] / micro[0]:0.00} times, at most {MostTimesLikePosts}; all unlike {micro[2]:0.000}, at most {MostMicrosecondsUnlike}: {(met ? "met" : "MISSED")}"));
        return met;
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
