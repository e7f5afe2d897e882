using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using CutShop.Testing.Jobs;

namespace CutShop.Benchmarks.Fuzz;

/// <summary>What an input costs at a size and at sixteen times the size: a cost that grows with the square would be 256-fold.</summary>
internal static class CostGrowth
{
    /// <summary>How much larger the larger input is.</summary>
    public const int Larger = 16;

    /// <summary>The most that the larger one may cost: linear is 16, and caches and the collection of garbage have their steps.</summary>
    public const double Most = 64;

    private const int Rounds = 7;

    private static readonly (string What, int Size, Func<int, Action> Of)[] Inputs =
    [
        ("posts of a job", 200, n => Reading($"{{ {Head}, \"lines\": [ {Line(Posts(n, i => $"A{i}"), n - 1)} ] }}")),
        ("posts that all have one mark", 200, n => Reading($"{{ {Head}, \"lines\": [ {Line(Posts(n, _ => "A1"), n - 1)} ] }}")),
        ("lines that all have one mark", 100, n => Reading($"{{ {Head}, \"lines\": [ {Many(n, _ => Line(Posts(2, i => $"A{i}"), 1))} ] }}")),
        ("names that no job file has", 1_000, n => Reading($"{{ {Head}, {Many(n, i => $"\"numbr{i}\": 1")} }}")),
        ("one name again and again", 2_000, n => Reading($"{{ {Head}, {Many(n, _ => "\"number\": \"x\"")} }}")),
        ("values that are no lines", 2_000, n => Reading($"{{ {Head}, \"lines\": [ {Many(n, _ => "7")} ] }}")),
        ("letters of a customer", 500_000, n => Reading($"{{ {Head}, \"customer\": \"{new string('x', n)}\" }}")),
        ("digits of a number", 100_000, n => Reading($"{{ {Head}, \"lines\": {new string('9', n)} }}")),
        ("blanks", 500_000, n => Reading($"{{ {Head},{new string(' ', n)}\"lines\": [] }}")),
        ("brackets", 100_000, n => Reading(new string('[', n))),
        ("symbols of a code", 20_000, n => Typed(new string('A', n), text => PieceCode.Parse(text))),
        ("dashes of a code", 20_000, n => Typed(new string('-', n), text => PieceCode.Parse(text))),
        ("posts of a draft's form", 25, n => Form(DraftFields.Of(SmallJobs.Posts(n, "LQ-1")))),
        ("names that no draft has", 1_250, n => Form([.. Enumerable.Range(0, n).Select(i => KeyValuePair.Create($"lines[0].what{i}.now", "x"))])),
        ("rows pasted", 1_000, n => Typed(string.Join('\n', Enumerable.Repeat("A1\tsquare\t5 1/2 in", n)), text => SpreadsheetPaste.Into(SmallJobs.Posts(4, "LQ-1"), 0, text))),
    ];

    private static string Head => "\"number\": \"LQ-1\", \"rope\": { \"material\": \"manila\", \"diameter\": \"1 in\" }";

    /// <summary>Measures each, prints what it costs, and gives what grows too fast.</summary>
    public static IReadOnlyList<string> Measure(FuzzSite site)
    {
        var slow = new List<string>();
        foreach (var (what, size, of) in Inputs.Append(("posts of a sheet", 100, n => Sheet(site, n))))
        {
            var (small, large) = Best(of(size), of(size * Larger));
            Console.Error.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{what,-32} {size,7} {small,9:0.000} ms   {size * Larger,8} {large,9:0.000} ms   {large / small:0} times"));
            if (large > small * Most)
                slow.Add(string.Create(CultureInfo.InvariantCulture, $"{what}: {large / small:0} times for {Larger} times the size"));
        }
        return slow;
    }

    /// <summary>The shortest time of each, in milliseconds, taken in turns after a first go that does not count.</summary>
    private static (double Small, double Large) Best(Action small, Action large)
    {
        var (a, b) = (double.MaxValue, double.MaxValue);
        for (var round = -1; round < Rounds; round++)
        {
            var (one, other) = (Time(small), Time(large));
            if (round >= 0)
                (a, b) = (Math.Min(a, one), Math.Min(b, other));
        }
        return (a, b);
    }

    private static double Time(Action action)
    {
        GC.Collect();
        var start = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static Action Reading(string json)
    {
        var bytes = Encoding.UTF8.GetBytes(json);
        return () => JobFileReader.Read(bytes);
    }

    private static Action Typed<T>(string text, Func<string, T> read) => () => read(text);

    private static Action Form(IReadOnlyList<KeyValuePair<string, string>> fields) => () => DraftReading.Of(DraftFields.Read(fields), ShopTables.Standard);

    private static Action Sheet(FuzzSite site, int posts)
    {
        // Its rope is of nothing that is known, so that it is read whole and not stored.
        var text = "number,customer,due,material,diameter\nLQ-8,x,2027-03-12,glass,1 in\n\nline,post,shape,across,height,clear\n"
            + string.Concat(Enumerable.Range(1, posts).Select(i => string.Create(CultureInfo.InvariantCulture, $"A,A{i},square,5 1/2 in,42 in,{(i < posts ? "72 in" : "")}\n")))
            + "\nline,row,height,sag,start,finish\nA,top,36 in,6 in,stopped,stopped\n";
        var bytes = Encoding.UTF8.GetBytes(text);
        return () =>
        {
            using var content = new ByteArrayContent(bytes);
            content.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
            using var answer = site.Program.PostAsync(new Uri("/api/jobs/csv", UriKind.Relative), content).GetAwaiter().GetResult();
        };
    }

    private static string Line(string posts, int sections) =>
        $$"""{ "mark": "A", "posts": [ {{posts}} ], "sections": [ {{Many(sections, _ => "{ \"clear\": \"72 in\" }")}} ], "rows": [ { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped" } ] }""";

    private static string Posts(int count, Func<int, string> mark) =>
        Many(count, i => $$"""{ "mark": "{{mark(i)}}", "shape": "square", "across": "5 1/2 in", "height": "42 in" }""");

    private static string Many(int count, Func<int, string> one) => string.Join(", ", Enumerable.Range(1, count).Select(one));
}
