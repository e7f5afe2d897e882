using System.Globalization;
using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>A good job file of any kind, the same for the same seed.</summary>
internal sealed class RandomJob
{
    private static readonly string[] Materials = ["polypropylene", "polyester", "nylon", "polyethylene", "manila", "sisal", "hemp", "jute", "cotton"];
    private static readonly string[] Ends = ["stopped", "stopped", "knot", "wrap 2", "wrap 2.5", "wrap 1", "wrap 0.5"];
    private static readonly string[] Betweens = ["bored", "bored", "bored", "wrap 1", "wrap 1.5", "wrap 3", "wrap 2 inside"];
    private static readonly string[] Turns = ["90 left", "90 right", "90 left", "45 right", "22.5 left", "120 right"];

    private readonly Random _random;
    private int _posts;

    private RandomJob(int seed) => _random = new Random(seed);

    public static JsonObject Of(int seed)
    {
        var job = new RandomJob(seed);
        var lines = Enumerable.Range(0, job._random.Next(1, 4)).Select(i => (JsonNode)job.Line("ABC"[i].ToString())).ToArray();
        var root = new JsonObject { ["number"] = "R-1", ["rope"] = job.Rope(), ["lines"] = new JsonArray(lines) };
        if (job.Chance(0.7))
        {
            root["allowances"] = new JsonObject
            {
                ["shrink"] = job.OneOf("12.5%", "10%", "0%", "15%", "7.25%"),
                ["perPiece"] = job.Inches(0, 640),
                ["roundUp"] = job.OneOf("1/4 in", "1 in", "1/2 in", "1/64 in", "5 mm"),
            };
        }
        return root;
    }

    private JsonObject Line(string mark)
    {
        var count = _random.Next(2, 8);
        var posts = Enumerable.Range(0, count).Select(_ => Post()).ToArray();
        return new JsonObject
        {
            ["mark"] = mark,
            ["posts"] = new JsonArray([.. posts]),
            ["sections"] = new JsonArray([.. Enumerable.Range(1, count - 1).Select(_ => (JsonNode)Section())]),
            ["rows"] = new JsonArray([.. Enumerable.Range(0, _random.Next(1, 4)).Select(i => (JsonNode)Row(i, posts))]),
        };
    }

    private JsonObject Post()
    {
        var post = new JsonObject
        {
            ["mark"] = $"P{++_posts}",
            ["shape"] = OneOf("square", "square", "round"),
            ["across"] = Chance(0.5) ? OneOf("5 1/2 in", "7 1/4 in", "9 1/2 in") : Inches(256, 800),
            ["height"] = "70 in",
        };
        if (Chance(0.3))
            post["turn"] = OneOf(Turns);
        return post;
    }

    private JsonObject Section()
    {
        var section = new JsonObject { [OneOf("clear", "centres")] = Inches(30 * 64, 120 * 64) };
        if (Chance(0.5))
            section["rise"] = OneOf("", "-") + Inches(0, 40 * 64);
        if (Chance(0.25))
            AddHang(section);
        return section;
    }

    private JsonObject Row(int index, JsonObject[] posts)
    {
        var row = new JsonObject
        {
            ["mark"] = $"r{index}",
            ["height"] = Inches((12 + (18 * index)) * 64, (20 + (18 * index)) * 64),
            ["start"] = OneOf(Ends),
            ["finish"] = OneOf(Ends),
            ["between"] = OneOf(Betweens),
        };
        AddHang(row);
        if (Chance(0.2))
            row["rope"] = Rope();
        if (Chance(0.5))
        {
            var at = new JsonObject();
            for (var i = 0; i < posts.Length; i++)
            {
                if (Chance(0.3))
                    at[posts[i]["mark"]!.GetValue<string>()] = OneOf(i == 0 || i == posts.Length - 1 ? Ends : Betweens);
            }
            row["at"] = at;
        }
        return row;
    }

    private JsonObject Rope()
    {
        var sixtyFourths = Chance(0.5) ? _random.Next(1, 9) * 16 : _random.Next(40, 160);
        var rope = new JsonObject { ["material"] = OneOf(Materials), ["diameter"] = Text(sixtyFourths) };
        if (Chance(0.3))
            rope["measured"] = Text(sixtyFourths + _random.Next(-3, 8));
        return rope;
    }

    private void AddHang(JsonObject to)
    {
        if (Chance(0.5))
            to["sag"] = Chance(0.2) ? "0 in" : Inches(1, 20 * 64);
        else
            to["slack"] = Chance(0.2) ? "0 mm" : Inches(1, 12 * 64);
    }

    private string Inches(int least, int most) => Text(_random.Next(least, most));

    private string Text(int sixtyFourths) => _random.Next(4) switch
    {
        0 => string.Create(CultureInfo.InvariantCulture, $"{sixtyFourths * 0.396875m} mm"),
        1 when sixtyFourths >= 768 => string.Create(CultureInfo.InvariantCulture, $"{sixtyFourths / 768} ft {sixtyFourths % 768 / 64} {sixtyFourths % 64}/64 in"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{sixtyFourths / 64} {sixtyFourths % 64}/64 in"),
    };

    private string OneOf(params string[] words) => words[_random.Next(words.Length)];

    private bool Chance(double share) => _random.NextDouble() < share;
}
