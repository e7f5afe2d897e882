using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>A good job file of open lines in the oldest names, the same for the same seed.</summary>
internal sealed class RandomJob : RandomValues
{
    private static readonly string[] Ends = ["stopped", "stopped", "knot", "wrap 2", "wrap 2.5", "wrap 1", "wrap 0.5"];
    private static readonly string[] Betweens = ["bored", "bored", "bored", "wrap 1", "wrap 1.5", "wrap 3", "wrap 2 inside"];

    private int _posts;

    private RandomJob(int seed)
        : base(seed)
    {
    }

    public static JsonObject Of(int seed)
    {
        var job = new RandomJob(seed);
        var lines = Enumerable.Range(0, job.Next(1, 4)).Select(i => (JsonNode)job.Line("ABC"[i].ToString())).ToArray();
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
        var posts = Enumerable.Range(0, Next(2, 8)).Select(_ => Post()).ToArray();
        return new JsonObject
        {
            ["mark"] = mark,
            ["posts"] = new JsonArray([.. posts]),
            ["sections"] = new JsonArray([.. Enumerable.Range(1, posts.Length - 1).Select(_ => (JsonNode)Section())]),
            ["rows"] = new JsonArray([.. Enumerable.Range(0, Next(1, 4)).Select(i => (JsonNode)Row(i, posts))]),
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
        // Square posts turn by right angles and are bored there: RandomSite has the others.
        if (Chance(0.3))
            post["turn"] = IsSquare(post) ? OneOf("90 left", "90 right") : OneOf("90 left", "45 right", "22.5 left", "120 right");
        return post;
    }

    private static bool IsSquare(JsonObject post) => post["shape"]!.GetValue<string>() == "square";

    private JsonObject Section()
    {
        var section = new JsonObject { [OneOf("clear", "centres")] = Inches(30 * 64, 120 * 64) };
        if (Chance(0.5))
            section["rise"] = OneOf("", "-") + Inches(0, 40 * 64);
        return Chance(0.25) ? AddHang(section) : section;
    }

    private JsonObject Row(int index, JsonObject[] posts)
    {
        var row = AddHang(new JsonObject
        {
            ["mark"] = $"r{index}",
            ["height"] = Inches((12 + (18 * index)) * 64, (20 + (18 * index)) * 64),
            ["start"] = OneOf(Ends),
            ["finish"] = OneOf(Ends),
            ["between"] = OneOf(Betweens),
        });
        if (Chance(0.2))
            row["rope"] = Rope();
        var at = new JsonObject();
        for (var i = 0; i < posts.Length; i++)
        {
            var mark = posts[i]["mark"]!.GetValue<string>();
            if (i == 0 || i == posts.Length - 1)
                at[mark] = Chance(0.2) ? OneOf(Ends) : null;
            else if (posts[i].ContainsKey("turn") && IsSquare(posts[i]))
                at[mark] = "bored";
            else if (Chance(0.2))
                at[mark] = OneOf(Betweens);
        }
        row["at"] = new JsonObject(at.Where(one => one.Value is not null).Select(one => KeyValuePair.Create(one.Key, (JsonNode?)one.Value!.DeepClone())));
        return row;
    }

    /// <summary>A rope whose bit is on the rack: RandomSite has the others.</summary>
    private JsonObject Rope()
    {
        var eighths = Next(4, 20);
        var rope = new JsonObject { ["material"] = OneOf([.. TrueRopes, .. NaturalRopes]), ["diameter"] = Text((8 * eighths) - Next(0, 4)) };
        if (Chance(0.3))
            rope["measured"] = Text((8 * (eighths + Next(0, 2))) - Next(0, 4));
        return rope;
    }
}
