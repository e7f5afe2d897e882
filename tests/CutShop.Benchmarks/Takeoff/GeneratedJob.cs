using System.Globalization;
using System.Text;

namespace CutShop.Benchmarks.Takeoff;

/// <summary>A railing of any number of posts, always the same for the same number: two rows, slopes, corners, some wrapped posts.</summary>
internal static class GeneratedJob
{
    private const int Seed = 1042;

    /// <summary>The job file as UTF-8.</summary>
    /// <param name="count">How many posts.</param>
    /// <param name="number">The job's number.</param>
    public static byte[] OfPosts(int count, string number = "BENCH")
    {
        var random = new Random(Seed);
        var json = new StringBuilder();
        json.Append(CultureInfo.InvariantCulture, $$"""
            {
              "number": "{{number}}", "customer": "generated", "due": "2027-03-12",
              "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
              "allowances": { "shrink": "12.5%", "perPiece": "0 in", "roundUp": "1/4 in" },
              "lines": [ {
                "mark": "A",
                "posts": [

            """);
        Join(json, count, i => string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "mark": "A{{i + 1}}", "shape": "square", "across": "5 1/2 in", "height": "42 in"{{(random.Next(12) == 0 ? ", \"turn\": \"90 left\"" : "")}} }"""));
        json.Append("],\n    \"sections\": [\n");
        Join(json, count - 1, _ => string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "clear": "{{random.Next(60, 97)}} {{random.Next(1, 16)}}/16 in", "rise": "{{random.Next(-8, 9)}} in" }"""));
        json.Append("""
            ],
                "rows": [
                  { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "knot" },
                  { "mark": "low", "height": "18 in", "slack": "1 in", "start": "stopped", "finish": "stopped", "at": {
            """);
        Join(json, (count - 2) / 8, i => string.Create(CultureInfo.InvariantCulture, $"\"A{(i * 8) + 2}\": \"wrap 2\""));
        json.Append("} } ]\n  } ]\n}\n");
        return Encoding.UTF8.GetBytes(json.ToString());
    }

    private static void Join(StringBuilder json, int count, Func<int, string> item)
    {
        for (var i = 0; i < count; i++)
            json.Append("      ").Append(item(i)).Append(i < count - 1 ? ",\n" : "\n");
    }
}
