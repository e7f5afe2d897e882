using System.Text;

namespace CutShop.Benchmarks.OnSite;

/// <summary>A job of 500 pieces: 50 lines of two legs at a bored corner, each leg with five ropes over five sections.</summary>
internal static class LargeJob
{
    public const string Number = "LQ-5000";
    public const int Pieces = Lines * 2 * Rows;

    private const int Lines = 50;
    private const int Rows = 5;
    private const int PostsALeg = 6;

    public static Job Read()
    {
        var lines = string.Join(",\n", Enumerable.Range(1, Lines).Select(Line));
        var file = $$"""{ "number": "{{Number}}", "customer": "Lantern Quay", "rope": { "material": "polyester", "diameter": "3/4 in" }, "lines": [ {{lines}} ] }""";
        var reading = JobFileReader.Read(Encoding.UTF8.GetBytes(file));
        return reading.Job ?? throw new InvalidDataException(reading.Problems[0].ToString());
    }

    private static string Line(int line)
    {
        const int Posts = 2 * PostsALeg - 1;
        var posts = string.Join(", ", Enumerable.Range(1, Posts).Select(post =>
            FormattableString.Invariant($$"""{ "mark": "L{{line}}-{{post}}", "shape": "square", "across": "5 1/2 in", "height": "48 in"{{(post == PostsALeg ? ", \"turn\": \"90 left\"" : "")}} }""")));
        var sections = string.Join(", ", Enumerable.Repeat("""{ "clear": "72 in" }""", Posts - 1));
        var rows = string.Join(", ", Enumerable.Range(1, Rows).Select(row =>
            FormattableString.Invariant($$"""{ "mark": "r{{row}}", "height": "{{row * 8}} in", "sag": "1/2 in", "start": "stopped", "finish": "stopped" }""")));
        return FormattableString.Invariant($$"""{ "mark": "L{{line}}", "posts": [ {{posts}} ], "sections": [ {{sections}} ], "rows": [ {{rows}} ] }""");
    }
}
