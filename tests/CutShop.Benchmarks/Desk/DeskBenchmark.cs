using System.Diagnostics;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.Desk;

/// <summary>
/// The order desk's pages against a bare endpoint of the same server, with few and with many jobs stored, and the live preview
/// against the takeoff it shows. All over the loopback, one request at a time, in turns.
/// </summary>
internal static class DeskBenchmark
{
    private const int Few = 1_000;
    private const int Many = 100_000;
    private const int Rounds = 1500;
    private const int WarmRounds = 400;
    private const double MostTimesBare = 5;
    private const double MostGrowth = 1.5;

    private static readonly (string Name, string Address)[] Pages =
    [
        ("bare", DeskSite.Bare),
        ("list of open jobs", "/"),
        ("list of all jobs", "/?show=all"),
        ("list far down", "/?show=all&after=2020-01-20B-000400"),
        ("late jobs", "/?show=late"),
        ("search, one hit", "/?show=all&q=B-000900"),
        ("search, rare word", "/?show=all&q=tide"),
        ("search, common word", "/?show=all&q=lantern"),
        ("search, no hit", "/?show=all&q=nowhere"),
        ("job", "/jobs/" + StoredJobs.Number),
    ];

    /// <summary>Measures, prints and judges.</summary>
    public static int Run()
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-desk-bench-").FullName;
        try
        {
            using var few = new DeskSite(folder, Few);
            using var many = new DeskSite(folder, Many);
            var met = JudgePages(Time([few, many]));
            return met & PreviewBenchmark.Run(few) ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Times of each page on each site, sorted: all in turns, so that a slow spell meets every one of them.</summary>
    private static double[][][] Time(DeskSite[] sites)
    {
        var times = sites.Select(_ => Pages.Select(_ => new double[Rounds]).ToArray()).ToArray();
        for (var round = -WarmRounds; round < Rounds; round++)
        {
            for (var site = 0; site < sites.Length; site++)
            {
                for (var page = 0; page < Pages.Length; page++)
                {
                    var start = Stopwatch.GetTimestamp();
                    sites[site].Get(Pages[page].Address);
                    if (round >= 0)
                        times[site][page][round] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
                }
            }
        }
        foreach (var one in times.SelectMany(site => site))
            Array.Sort(one);
        return times;
    }

    private static bool JudgePages(double[][][] times)
    {
        var (few, many) = (times[0], times[1]);
        Say($"{"",-22} {Few,10:N0} jobs, ms {Many,17:N0} jobs, ms");
        Say($"{"page",-22} {"median",9} {"p99",9} {"median",12} {"p99",9} {"times bare",12} {"p99 growth",12}");
        var met = true;
        for (var page = 0; page < Pages.Length; page++)
        {
            var (timesBare, growth) = (Stopwatches.Median(many[page]) / Stopwatches.Median(many[0]), P99(many[page]) / P99(few[page]));
            Say($"{Pages[page].Name,-22} {Stopwatches.Median(few[page]),9:0.00} {P99(few[page]),9:0.00} {Stopwatches.Median(many[page]),12:0.00} {P99(many[page]),9:0.00} {timesBare,12:0.0} {growth,12:0.00}");
            met &= page == 0 || (timesBare <= MostTimesBare && growth <= MostGrowth);
        }
        Say($"every page under {MostTimesBare} times the bare endpoint, p99 grown no more than {MostGrowth} times: {(met ? "met" : "NOT met")}");
        return met;
    }

    private static double P99(double[] sorted) => sorted[sorted.Length * 99 / 100];
}
