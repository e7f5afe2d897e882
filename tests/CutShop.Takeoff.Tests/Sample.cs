using System.Text;
using CutShop.Testing.Fuzz;

namespace CutShop.Takeoff.Tests;

/// <summary>Job files for tests, from text or from the folder of examples.</summary>
internal static class Sample
{
    public static string Example(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Examples", name + ".json"));

    public static JobFileReading Read(string json) => JobFileReader.Read(Encoding.UTF8.GetBytes(json));

    public static JobTakeoff Takeoff(string json)
    {
        var reading = Read(json);
        Assert.Equal([], reading.Problems.Select(problem => problem.ToString()));
        return JobTakeoff.Of(reading.Job!, ShopTables.Standard);
    }

    /// <summary>A one-line job of square 5 1/2 in posts, 72 in clear, with rows as given.</summary>
    public static string Line(string rows, string rope = """{ "material": "polypropylene", "diameter": "1 1/2 in" }""", int posts = 3, string across = "5 1/2 in", string section = "") => $$"""
        {
          "number": "T-1", "rope": {{rope}},
          "lines": [ {
            "mark": "A",
            "posts": [ {{string.Join(", ", Enumerable.Range(1, posts).Select(i => $$"""{ "mark": "A{{i}}", "shape": "square", "across": "{{across}}", "height": "42 in" }"""))}} ],
            "sections": [ {{string.Join(", ", Enumerable.Repeat($$"""{ "clear": "72 in"{{section}} }""", posts - 1))}} ],
            "rows": [ {{rows}} ]
          } ]
        }
        """;

    /// <summary>A row that only a test of something else needs.</summary>
    public const string PlainRow = """{ "mark": "top", "height": "30 in", "sag": "4 in", "start": "stopped", "finish": "stopped" }""";
}
