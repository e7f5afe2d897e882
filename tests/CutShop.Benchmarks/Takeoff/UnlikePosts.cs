using System.Globalization;
using System.Text;

namespace CutShop.Benchmarks.Takeoff;

/// <summary>Job files that say how much alike posts are worked out at once: all posts alike, with many names of real sites (no curve, ring, girth or wetting), and no two alike.</summary>
internal static class UnlikePosts
{
    private const int Seed = 1043;
    private const string Rows = """
        { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "knot" },
        { "mark": "low", "height": "18 in", "sag": "3 in", "start": "stopped", "finish": "stopped" }
        """;

    /// <summary>Posts that are all alike, with no name of real sites.</summary>
    public static byte[] Like(int count) => Job(
        count,
        i => $$"""{ "mark": "A{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in" }""",
        _ => """{ "clear": "72 in" }""",
        Rows);

    /// <summary>Few posts like their neighbour: straight and ended corners, holes that are there, tapes at a row's height, level bores, eyes, ropes beside, joins.</summary>
    public static byte[] AllNames(int count) => Job(
        count,
        i => $$"""{ "mark": "A{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in", "buried": "24 in"{{Turn(i)}}{{(i % 4 == 1 ? """, "holes": { "top": { "across": "1 5/8 in", "height": "35 1/2 in" } }""" : "")}} }""",
        i => $$"""{ "clear": "72 in", "rise": "{{i % 2}} in", "drop": "20 in"{{(i % 5 == 0 ? """, "clearAt": { "top": "71 in" }""" : "")}} }""",
        """
        { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "knot", "bore": "level", "heights": { "A3": "35 in", "A70": "36 1/2 in" }, "at": { "A20": "beside", "A50": "beside" } },
        { "mark": "low", "height": "18 in", "sag": "3 in", "start": { "eye": { "pin": "1/2 in", "length": "6 in", "reach": "1 1/2 in" } }, "finish": "stopped" }
        """,
        """, "longest": "600 in", "boring": "site" """);

    /// <summary>No two posts alike: square and round, widths, heights, spans and slopes that no other has, and some corners.</summary>
    public static byte[] Unlike(int count)
    {
        var random = new Random(Seed);
        return Job(
            count,
            i => FormattableString.Invariant($$"""{ "mark": "A{{i}}", "shape": "{{(i % 3 == 0 ? "round" : "square")}}", "across": "{{5.5 + (i * 0.00005):F5}} in", "height": "{{42 + (i * 0.0001):F4}} in"{{(i % 11 == 5 ? ", \"turn\": \"90 left\"" : "")}} }"""),
            i => FormattableString.Invariant($$"""{ "clear": "{{70 + (i * 0.0003):F4}} in", "rise": "{{random.Next(-9000, 9000) / 1000.0:F3}} in" }"""),
            Rows);
    }

    private static string Turn(int i) => (i % 6) switch
    {
        3 => """, "turn": "30 left", "corner": "through" """,
        5 => """, "turn": "60 right" """,
        _ => "",
    };

    private static byte[] Job(int count, Func<int, string> post, Func<int, string> section, string rows, string more = "") => Encoding.UTF8.GetBytes(string.Create(
        CultureInfo.InvariantCulture,
        $$"""
        { "number": "BENCH", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" }{{more}}, "lines": [ { "mark": "A",
          "posts": [ {{string.Join(",\n", Enumerable.Range(0, count).Select(post))}} ],
          "sections": [ {{string.Join(",\n", Enumerable.Range(0, count - 1).Select(section))}} ],
          "rows": [ {{rows}} ] } ] }
        """));
}
