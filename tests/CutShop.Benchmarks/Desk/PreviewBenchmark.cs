using System.Globalization;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Benchmarks.Desk;

/// <summary>
/// The live preview of a draft of 200 posts, as the browser asks for it while a post's size is typed, against what it must work out:
/// the whole form read as a job file and taken off, and the way there and back. The answer has the drawings of the whole job.
/// </summary>
internal static class PreviewBenchmark
{
    private const int Posts = 200;
    private const int Rounds = 41;
    private const int CallsARound = 5;
    private const double MostTimesTakeoff = 1.2;

    /// <summary>Measures, prints and judges.</summary>
    public static bool Run(DeskSite site)
    {
        var form = new DraftQuestions
        {
            Number = "LQ-9",
            Customer = "Lantern Quay",
            Posts = Posts.ToString(CultureInfo.InvariantCulture),
            Across = "5 1/2",
            PostHeight = "42",
            Width = "6'",
            Rows = "36, 18",
            Diameter = "1 1/2",
            Sag = "4",
        }.ToForm().OrThrow();
        var draft = new DraftShelf(site.Database).StartAsync(form, "benchmark", "benchmark draft").GetAwaiter().GetResult();
        var page = string.Create(CultureInfo.InvariantCulture, $"/drafts/{draft}");
        KeyValuePair<string, string>[] fields = [new("__RequestVerificationToken", site.TokenOf(page)), new("version", "1"), new("lines[0].posts[99].across", "5 1/2 in")];
        var job = DraftReading.Of(form, ShopTables.Standard).Takeoff!.Job;

        var measured = Stopwatches.InTurns(
            Rounds,
            CallsARound,
            () => JobTakeoff.Of(job, ShopTables.Standard),
            () => DraftReading.Of(form, ShopTables.Standard),
            () => site.Get(DeskSite.Bare),
            () =>
            {
                using var content = new FormUrlEncodedContent(fields);
                site.Post($"{page}?handler=Preview", content);
            });
        var (takeoff, reading, bare, preview) = (measured[0].Seconds, measured[1].Seconds, measured[2].Seconds, measured[3].Seconds);
        var ratio = preview / (reading + bare);
        Console.WriteLine();
        Say($"preview of {Posts} posts, ms: the bare takeoff {takeoff * 1e3:0.00}, form read and taken off {reading * 1e3:0.00}, a bare request {bare * 1e3:0.00}, the preview whole {preview * 1e3:0.00}");
        Say($"preview against form read, taken off and a bare request: {ratio:0.00}, at most {MostTimesTakeoff:0.00}: {(ratio <= MostTimesTakeoff ? "met" : "NOT met")}");
        return ratio <= MostTimesTakeoff;
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
