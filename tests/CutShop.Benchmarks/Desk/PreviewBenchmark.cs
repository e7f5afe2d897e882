using System.Diagnostics;
using System.Globalization;
using CutShop.Testing.Fuzz;
using CutShop.Testing.Jobs;
using CutShop.Testing.Trust;
using static CutShop.Benchmarks.Printed;

namespace CutShop.Benchmarks.Desk;

/// <summary>
/// The live preview of a draft of 200 posts, as the browser asks for it while a post's size is typed, against what it must work out:
/// the whole form read as a job file and taken off, and the way there and back. The answer has the totals, the price, every note that
/// changed and the elevation where somebody types; the plan of the whole job is asked for after it, and timed beside it.
/// </summary>
internal static class PreviewBenchmark
{
    private const int Posts = 200;
    private const int WarmTurns = 1000;
    private const int Turns = 1001;
    private const double MostTimesTakeoff = 1.2;

    /// <summary>Prices for the draft's rope and bores; what they are does not matter here.</summary>
    private static readonly PriceList Prices = new(
        0,
        DateOnly.MinValue,
        [new(RopeMaterial.Manila, Length.FromSixtyFourths(96), Money.Parse("2").OrThrow())],
        [new(Length.FromSixtyFourths(128), Money.Parse("3").OrThrow())],
        Money.Parse("4.50").OrThrow(),
        Money.Parse("35").OrThrow(),
        Money.Parse("120").OrThrow(),
        Share.Parse("6.25%").OrThrow(),
        QuoteDays: 30);

    /// <summary>Measures, prints and judges.</summary>
    public static bool Run(DeskSite site)
    {
        var form = SmallJobs.Posts(Posts, "LQ-9");
        var book = new PriceBook(site.Database);
        book.KeepAsync(Prices, "benchmark", "benchmark prices").GetAwaiter().GetResult();
        var draft = new DraftShelf(site.Database).StartAsync(form, "benchmark", "benchmark draft").GetAwaiter().GetResult();
        var page = string.Create(CultureInfo.InvariantCulture, $"/drafts/{draft}");
        var token = site.TokenOf(page);
        var job = DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job;

        var medians = MediansInTurns(
            _ => JobTakeoff.Of(job, ShopTables.Standard),
            _ => DraftReading.Of(form, ShopTables.Standard),
            _ => site.Get(DeskSite.Bare),
            turn => Send("preview", turn),
            turn => Send("plan", turn),
            turn => book.SetCurrencyAsync(turn % 2 == 0 ? "$" : "US$", "benchmark").GetAwaiter().GetResult(),
            turn => Send("preview", turn));
        var (takeoff, reading, bare, preview, plan, afterWrite) = (medians[0], medians[1], medians[2], medians[3], medians[4], medians[6]);
        var ratio = preview / (reading + bare);
        Console.WriteLine();
        Say($"preview of {Posts} posts, ms: the bare takeoff {takeoff:0.00}, form read and taken off {reading:0.00}, a bare request {bare:0.00}, the preview {preview:0.00}, the plan after it {plan:0.00}; the preview right after a change elsewhere in the shop {afterWrite:0.00}");
        Say($"preview against form read, taken off and a bare request: {ratio:0.00}, at most {MostTimesTakeoff:0.00}: {(ratio <= MostTimesTakeoff ? "met" : "NOT met")}");
        return ratio <= MostTimesTakeoff;

        // Each turn types another width, as somebody does who types on.
        void Send(string what, int turn)
        {
            using var content = new FormUrlEncodedContent(
            [
                new(PageText.TokenField, token),
                new("version", "1"),
                new("at", "lines[0].posts[99]"),
                new("lines[0].posts[99].across", string.Create(CultureInfo.InvariantCulture, $"{140 + turn * 0.001:0.000} mm")),
            ]);
            site.Post($"{page}/{what}", content);
        }
    }

    /// <summary>Median times in milliseconds of actions that are done in turns, as in a shop that has been open for a while: no more is compiled, and nothing is made to wait.</summary>
    private static double[] MediansInTurns(params Action<int>[] actions)
    {
        var times = actions.Select(_ => new double[Turns]).ToArray();
        for (var turn = -WarmTurns; turn < Turns; turn++)
        {
            for (var i = 0; i < actions.Length; i++)
            {
                var start = Stopwatch.GetTimestamp();
                actions[i](turn + WarmTurns);
                if (turn >= 0)
                    times[i][turn] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            }
        }
        return [.. times.Select(one => one.Order().ElementAt(Turns / 2))];
    }
}
