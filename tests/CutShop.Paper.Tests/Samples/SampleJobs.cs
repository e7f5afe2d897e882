using System.Text;
using CutShop.Testing.Fuzz;

namespace CutShop.Paper.Tests.Samples;

/// <summary>Invented jobs to print.</summary>
internal static class SampleJobs
{
    /// <summary>A square line with a bored corner, a slope and a wrap, and a pier of pilings with manila of its own.</summary>
    public const string LanternQuay = """
        {
          "number": "LQ-1042", "customer": "Lantern Quay boardwalk", "due": "2027-03-12",
          "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "allowances": { "shrink": "12.5%", "perPiece": "0 in", "roundUp": "1/4 in" },
          "lines": [ {
            "mark": "A",
            "posts": [
              { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A3", "shape": "square", "across": "5 1/2 in", "height": "42 in", "turn": "90 left" },
              { "mark": "A4", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A5", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "72 in" }, { "clear": "72 in" }, { "centres": "77 1/2 in" }, { "centres": "78 in", "rise": "9 in" } ],
            "rows": [
              { "mark": "top", "height": "36 in", "sag": "6 in", "start": "stopped", "finish": "knot", "between": "bored" },
              { "mark": "low", "height": "18 in", "slack": "3 in", "start": "stopped", "finish": "stopped", "at": { "A4": "wrap 2" } } ]
          }, {
            "mark": "Pier",
            "posts": [
              { "mark": "P1", "shape": "round", "across": "9 1/2 in", "height": "44 in" },
              { "mark": "P2", "shape": "round", "across": "9 1/2 in", "height": "44 in" },
              { "mark": "P3", "shape": "round", "across": "9 1/2 in", "height": "44 in", "turn": "60 right" },
              { "mark": "P4", "shape": "round", "across": "9 1/2 in", "height": "44 in" } ],
            "sections": [ { "centres": "96 in" }, { "centres": "96 in", "rise": "-6 in" }, { "centres": "96 in", "rise": "12 in" } ],
            "rows": [
              { "mark": "hand", "height": "38 in", "sag": "5 in", "start": "wrap 3", "finish": "stopped", "between": "wrap 2",
                "rope": { "material": "manila", "diameter": "2 in", "measured": "2 1/16 in" }, "at": { "P2": "bored" } } ]
          } ]
        }
        """;

    /// <summary>A job of one line of two posts, for what the caller wants to see in it.</summary>
    public static string TwoPosts(
        string material = "polypropylene",
        string start = "stopped",
        string finish = "stopped",
        string number = "LQ-7",
        string customer = "Lantern Quay",
        string line = "B",
        string clear = "72 in",
        string hang = "\"sag\": \"6 in\"",
        string height = "42 in",
        string rowHeight = "36 in") => $$"""
        {
          "number": {{Json(number)}}, "customer": {{Json(customer)}},
          "rope": { "material": "{{material}}", "diameter": "1 1/2 in" },
          "lines": [ {
            "mark": {{Json(line)}},
            "posts": [
              { "mark": "B1", "shape": "square", "across": "5 1/2 in", "height": "{{height}}" },
              { "mark": "B2", "shape": "square", "across": "5 1/2 in", "height": "{{height}}" } ],
            "sections": [ { "clear": "{{clear}}" } ],
            "rows": [ { "mark": "top", "height": "{{rowHeight}}", {{hang}}, "start": "{{start}}", "finish": "{{finish}}" } ]
          } ]
        }
        """;

    /// <summary>
    /// A gate in 1 in nylon beside a walk: two eyes over an opening of 48 in, one with a thimble, and a second row that goes by a post and
    /// through another, so that one of its eyes is made on site. It is 36 in down beside it.
    /// </summary>
    public const string Gate = """
        {
          "number": "LQ-20", "customer": "Lantern Quay", "rope": { "material": "nylon", "diameter": "1 in" },
          "lines": [ {
            "mark": "G", "drop": "36 in",
            "posts": [
              { "mark": "G1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "G2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "48 in" } ],
            "rows": [
              { "mark": "gate", "height": "36 in", "sag": "3 in",
                "start": { "eye": { "pin": "1/2 in", "length": "4 in", "reach": "1 1/2 in" } },
                "finish": { "eye": { "pin": "5/8 in", "length": "4 in", "reach": "1 1/2 in", "thimble": "1 in" } } } ]
          }, {
            "mark": "H",
            "posts": [
              { "mark": "H1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "H2", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "H3", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "H4", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "60 in" }, { "clear": "60 in" }, { "clear": "60 in" } ],
            "rows": [
              { "mark": "top", "height": "36 in", "sag": "3 in", "at": { "H2": "beside" },
                "start": { "eye": { "pin": "1/2 in", "length": "4 in", "reach": "1 1/2 in" } },
                "finish": { "eye": { "pin": "1/2 in", "length": "4 in", "reach": "1 1/2 in" } } } ]
          } ]
        }
        """;

    /// <summary>A line of three tall posts with so many rows, a foot apart.</summary>
    public static string ManyRows(int rows)
    {
        var all = string.Join(",\n", Enumerable.Range(1, rows).Select(i =>
            $$"""{ "mark": "r{{i}}", "height": "{{i * 12}} in", "slack": "1/8 in", "start": "stopped", "finish": "stopped" }"""));
        var posts = string.Join(", ", Enumerable.Range(1, 3).Select(i =>
            $$"""{ "mark": "T{{i}}", "shape": "square", "across": "5 1/2 in", "height": "{{(rows + 1) * 12}} in" }"""));
        return $$"""
            { "number": "LQ-9", "customer": "", "rope": { "material": "nylon", "diameter": "1 in" },
              "lines": [ { "mark": "T", "posts": [ {{posts}} ], "sections": [ { "clear": "60 in", "rise": "4 in" }, { "clear": "60 in" } ], "rows": [ {{all}} ] } ] }
            """;
    }

    /// <summary>A corner of usual posts with so many rows.</summary>
    public static string Corner(int rows)
    {
        var all = string.Join(",\n", Enumerable.Range(1, rows).Select(i =>
            $$"""{ "mark": "r{{i}}", "height": "{{i * 8}} in", "slack": "1/8 in", "start": "stopped", "finish": "stopped" }"""));
        var posts = string.Join(", ", Enumerable.Range(1, 4).Select(i =>
            $$"""{ "mark": "K{{i}}", "shape": "square", "across": "5 1/2 in", "height": "{{Math.Max(42, (rows + 1) * 8)}} in"{{(i == 3 ? ", \"turn\": \"90 right\"" : "")}} }"""));
        return $$"""
            { "number": "LQ-12", "customer": "", "rope": { "material": "nylon", "diameter": "1 in" },
              "lines": [ { "mark": "K", "posts": [ {{posts}} ], "sections": [ { "clear": "60 in" }, { "clear": "60 in" }, { "clear": "60 in" } ], "rows": [ {{all}} ] } ] }
            """;
    }

    /// <summary>A straight line of so many posts.</summary>
    public static string LongLine(int posts)
    {
        var all = string.Join(", ", Enumerable.Range(1, posts).Select(i =>
            $$"""{ "mark": "L{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in" }"""));
        var sections = string.Join(", ", Enumerable.Repeat("""{ "clear": "72 in" }""", posts - 1));
        return $$"""
            { "number": "LQ-10", "customer": "Lantern Quay boardwalk", "rope": { "material": "polyester", "diameter": "1 1/4 in" },
              "lines": [ { "mark": "L", "posts": [ {{all}} ], "sections": [ {{sections}} ],
                "rows": [ { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped" } ] } ] }
            """;
    }

    /// <summary>
    /// What real sites have: a curve by radius and one by string and middle, rings that are wrapped and that are joined, corners that end and
    /// that are bored through, a gate, heights and holes of single posts, a rope beside posts.
    /// </summary>
    public static string RealSites => $$"""
        {
          "number": "LQ-20", "customer": "Lantern Quay", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [
            { "mark": "C", "posts": [ {{Posts("C", 9)}} ], "curve": { "radius": "240 in", "chord": "72 in", "turns": "left" },
              "rows": [ {{Row("top", "36 in")}}, {{Row("low", "18 in", "\"between\": \"beside\"")}} ] },
            { "mark": "B", "posts": [ {{Posts("B", 5)}} ], "curve": { "string": "288 in", "middle": "46 in", "chord": "72 in", "turns": "right", "rise": "6 in" }, "rows": [ {{Row("top", "36 in")}} ] },
            { "mark": "R", "closed": true, "posts": [ {{Posts("R", 8, "\"turn\": \"45 left\", \"corner\": \"through\"")}} ], "sections": [ {{Sections(8, "\"centres\": \"30 in\"")}} ],
              "rows": [ {{Row("top", "36 in", sag: "1 in")}}, { "mark": "low", "height": "18 in", "sag": "1 in", "start": "wrap 1", "finish": "wrap 1", "between": "wrap 1" } ] },
            { "mark": "K", "posts": [ {{Posts("K", 2)}}, {{Posts("L", 1, "\"turn\": \"60 right\"")}}, {{Posts("M", 1, "\"turn\": \"30 left\", \"corner\": \"through\"")}}, {{Posts("N", 1)}} ],
              "sections": [ {{Sections(2, "\"clear\": \"60 in\"")}}, {{Sections(2, "\"clear\": \"60 in\", \"rise\": \"20 in\"")}} ], "rows": [ {{Row("top", "36 in")}} ] },
            { "mark": "G", "posts": [ {{Posts("G", 2)}} ], "sections": [ {{Sections(1, "\"clear\": \"48 in\"")}} ],
              "rows": [ { "mark": "top", "height": "36 in", "sag": "3 in", "start": { "eye": { "pin": "1/2 in", "length": "5 in", "reach": "1 1/2 in" } }, "finish": { "eye": { "pin": "5/8 in", "length": "5 in", "reach": "2 in" } } } ] },
            { "mark": "H", "posts": [
                { "mark": "H1", {{SquarePost}}, "holes": { "top": { "across": "1 5/8 in", "height": "35 in" } } }, { "mark": "H2", {{SquarePost}} },
                { "mark": "H3", "shape": "round", "girth": "26 in", "height": "42 in", "holes": { "top": { "across": "1 5/8 in" } } }, { "mark": "H4", {{SquarePost}} } ],
              "sections": [ { "clear": "60 in", "rise": "9 in", "clearAt": { "low": "59 1/4 in" } }, {{Sections(2, "\"clear\": \"60 in\"")}} ],
              "rows": [ {{Row("top", "36 in", "\"heights\": { \"H2\": \"37 in\" }")}}, {{Row("low", "18 in")}} ] } ]
        }
        """;

    /// <summary>A line that climbs 1 in 2, with a raked and a level row, whose runs are broken inside posts.</summary>
    public static string LongSlope => $$"""
        {
          "number": "LQ-21", "customer": "", "longest": "320 in", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ { "mark": "J", "posts": [ {{Posts("J", 9)}} ], "sections": [ {{Sections(8, "\"clear\": \"60 in\", \"rise\": \"32.75 in\"")}} ],
            "rows": [ {{Row("top", "36 in")}}, {{Row("low", "14 in", "\"bore\": \"level\"")}} ] } ]
        }
        """;

    private const string SquarePost = "\"shape\": \"square\", \"across\": \"5 1/2 in\", \"height\": \"42 in\"";

    private static string Posts(string line, int count, string more = "") =>
        string.Join(", ", Enumerable.Range(1, count).Select(i => $$"""{ "mark": "{{line}}{{i}}", {{SquarePost}}{{(more.Length == 0 ? "" : ", " + more)}} }"""));

    private static string Sections(int count, string section) => string.Join(", ", Enumerable.Repeat($"{{ {section} }}", count));

    private static string Row(string mark, string height, string more = "", string sag = "3 in") =>
        $$"""{ "mark": "{{mark}}", "height": "{{height}}", "sag": "{{sag}}", "start": "stopped", "finish": "stopped"{{(more.Length == 0 ? "" : ", " + more)}} }""";

    /// <summary>The takeoff of a job file.</summary>
    public static JobTakeoff Takeoff(string json)
    {
        var reading = JobFileReader.Read(Encoding.UTF8.GetBytes(json));
        Assert.Empty(reading.Problems);
        return JobTakeoff.Of(reading.Job!, ShopTables.Standard);
    }

    /// <summary>Some code; which one does not matter.</summary>
    public static PieceCode Code { get; } = PieceCode.Parse("3333-3333-3332").OrThrow();

    private static string Json(string text) => System.Text.Json.JsonSerializer.Serialize(text);
}
