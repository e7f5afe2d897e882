using System.Globalization;
using System.Text.Json.Nodes;

namespace CutShop.Testing.Jobs;

/// <summary>
/// A job file of open lines, curves and rings that uses every name, the same for the same seed. Now and then one cannot be
/// built: a skewed bore leaves no wood, or no post is near enough for the longest piece. The tests of the takeoff say which.
/// </summary>
internal sealed class RandomSite : RandomValues
{
    private static readonly string[] Ends = ["stopped", "stopped", "stopped", "knot", "wrap 2", "wrap 2.5"];
    private static readonly string[] Betweens = ["bored", "bored", "bored", "bored", "wrap 1", "wrap 1.5", "wrap 2 inside", "beside"];
    private static readonly string[] Turns = ["90 left", "90 right", "45 right", "22.5 left", "12.25 left", "40 right", "60 left", "75 right", "120 right", "135 left"];

    private readonly bool _isNatural;
    private readonly bool _isWet;
    private readonly JsonObject _rope;
    private int _posts;

    private RandomSite(int seed)
        : base(seed)
    {
        _isWet = Chance(0.3);
        _isNatural = _isWet || Chance(0.5);
        _rope = Rope();
    }

    public static JsonObject Of(int seed)
    {
        var site = new RandomSite(seed);
        var job = new JsonObject { ["number"] = "R-2", ["rope"] = site._rope, ["allowances"] = site.Allowances(), ["lines"] = site.Lines() };
        site.Add(job, "longest", 0.3, () => site.Inches(320 * 64, 1000 * 64));
        site.Add(job, "bore", 0.3, () => site.OneOf("level", "raked"));
        site.Add(job, "boring", 0.2, () => site.OneOf("shop", "site"));
        site.Add(job, "datum", 0.3, () => site.OneOf("top", "ground", "foot"));
        return job;
    }

    private void Add(JsonObject to, string name, double share, Func<JsonNode> value)
    {
        if (Chance(share))
            to[name] = value();
    }

    private JsonObject Allowances()
    {
        var allowances = new JsonObject { ["perPiece"] = Inches(0, 320), ["roundUp"] = OneOf("1/4 in", "1 in", "1/64 in", "5 mm") };
        if (_isWet)
            allowances["wetting"] = new JsonObject { ["loses"] = OneOf("12.5%", "8%", "15.25%"), ["manner"] = OneOf("preshrunk", "trimmed", "hung-long") };
        else
            Add(allowances, "shrink", 0.6, () => OneOf("12.5%", "10%"));
        return allowances;
    }

    private JsonObject Rope()
    {
        var sixtyFourths = Next(32, 140);
        var rope = new JsonObject { ["material"] = OneOf(_isNatural ? NaturalRopes : TrueRopes), ["diameter"] = Text(sixtyFourths) };
        Add(rope, "measured", 0.3, () => Text(sixtyFourths + Next(-3, 8)));
        Add(rope, "construction", 0.2, () => "three-strand");
        Add(rope, "colour", 0.2, () => OneOf("white", "tan"));
        return rope;
    }

    private JsonArray Lines() => new([.. Enumerable.Range(0, Next(1, 3)).Select(i => (JsonNode)Line("AB"[i].ToString()))]);

    private JsonObject Line(string mark)
    {
        var (line, kind) = (new JsonObject { ["mark"] = mark }, Next(0, 3));
        var posts = Posts(kind == 0 ? (Chance(0.1) ? Next(60, 120) : Next(2, 8)) : kind == 1 ? Next(2, 10) : Next(3, 9));
        line["posts"] = new JsonArray([.. posts]);
        Add(line, "boring", 0.2, () => OneOf("shop", "site"));
        Add(line, "drop", 0.3, () => Inches(20 * 64, 40 * 64));
        if (kind == 0)
            line["sections"] = OpenSections(posts);
        else if (kind == 1)
            line["curve"] = Curve(posts.Length - 1);
        else
            (line["closed"], line["sections"]) = (true, RingSections(posts));
        var rows = Enumerable.Range(0, Next(1, posts.Length > 20 ? 2 : 4)).Select(i => Row(i, posts, isRing: kind == 2)).ToArray();
        line["rows"] = new JsonArray([.. rows]);
        if (kind == 0)
            AddClearAt(line["sections"]!.AsArray(), rows);
        AddHoles(posts, rows, isRing: kind == 2);
        return line;
    }

    private JsonObject[] Posts(int count)
    {
        var across = Inches(228, 800);
        return [.. Enumerable.Range(0, count).Select(_ =>
        {
            var post = new JsonObject { ["mark"] = $"P{++_posts}", ["shape"] = OneOf("square", "square", "round"), ["height"] = "70 in", ["buried"] = "3 ft" };
            if (post["shape"]!.GetValue<string>() == "round" && Chance(0.5))
                post["girth"] = Inches(14 * 64, 38 * 64);
            else
                post["across"] = Chance(0.7) ? across : Inches(228, 800);
            Add(post, "boring", 0.1, () => OneOf("shop", "site"));
            return post;
        })];
    }

    private void SetTurn(JsonObject post, string turn)
    {
        post["turn"] = turn;
        Add(post, "corner", 0.6, () => JobText.Number(turn.Split(' ')[0]) <= 45 ? OneOf("through", "through", "ends") : "ends");
    }

    private JsonArray OpenSections(JsonObject[] posts)
    {
        foreach (var post in posts.Where(_ => Chance(posts.Length > 20 ? 0.01 : 0.4)))
            SetTurn(post, OneOf(Turns));
        return new([.. posts.Skip(1).Select(_ =>
        {
            var section = new JsonObject { [OneOf("clear", "centres")] = Inches(26 * 64, 120 * 64) };
            Add(section, "rise", 0.5, () => OneOf("", "-") + Inches(0, 24 * 64));
            Add(section, "drop", 0.1, () => Inches(20 * 64, 40 * 64));
            return (JsonNode)(Chance(0.2) ? AddHang(section) : section);
        })]);
    }

    private JsonObject Curve(int bays)
    {
        var curve = new JsonObject { ["turns"] = OneOf("left", "right") };
        var chord = Next(60, 100);
        // The radius is over 1.31 chords, so that no post turns by more than 45 degrees.
        if (Chance(0.5))
            curve["radius"] = Inches(140 * 64, 400 * 64);
        else
            (curve["string"], curve["middle"]) = (Inches(200 * 64, 250 * 64), Inches(12 * 64, 40 * 64));
        if (Chance(0.5))
            curve["chord"] = Text(chord * 64);
        else
            curve["angle"] = (Next(25, 40) * bays).ToString(CultureInfo.InvariantCulture);
        Add(curve, "rise", 0.5, () => OneOf("", "-") + Inches(0, 30 * 64));
        return Chance(0.3) ? AddHang(curve) : curve;
    }

    private JsonArray RingSections(JsonObject[] posts)
    {
        var (count, way, areCentres, isRegular) = (posts.Length, OneOf("left", "right"), Chance(0.5), Chance(0.6));
        var length = Inches(60 * 64, 110 * 64);
        for (var i = 0; i < count; i++)
        {
            if (count is not 7 && isRegular)
                SetTurn(posts[i], FormattableString.Invariant($"{360m / count} {way}"));
            else if (Chance(0.7))
                SetTurn(posts[i], OneOf(Turns));
        }
        var last = 0;
        return new([.. posts.Select((_, i) =>
        {
            var section = new JsonObject { [areCentres || Chance(0.3) ? "centres" : "clear"] = Chance(0.9) ? length : Inches(60 * 64, 110 * 64) };
            var rise = i == count - 1 ? -last : Next(-12, 13);
            last += rise;
            if (rise != 0)
                section["rise"] = FormattableString.Invariant($"{rise} in");
            return (JsonNode)(Chance(0.1) ? AddHang(section) : section);
        })]);
    }

    private JsonObject Row(int index, JsonObject[] posts, bool isRing)
    {
        var low = 14 + (18 * index);
        var row = AddHang(new JsonObject { ["mark"] = $"r{index}", ["height"] = Inches(low * 64, (low + 6) * 64), ["between"] = OneOf(Betweens) });
        if (_isWet || Chance(0.3))
            row["rope"] = Rope();
        (row["start"], row["finish"]) = !isRing ? (End(), End()) : Chance(0.6) ? ("stopped", "stopped") : (OneOf("wrap 1", "wrap 2.5"), OneOf("wrap 1", "wrap 3", "wrap 2 inside"));
        row["at"] = ForSome(posts[1..^(isRing ? 0 : 1)], 0.2, _ => OneOf(Betweens));
        row["heights"] = ForSome(posts, Chance(0.5) ? 0.3 : 0, _ => Inches((low - 2) * 64, (low + 8) * 64));
        Add(row, "bore", 0.2, () => OneOf("level", "raked"));
        Add(row, "unbroken", 0.05, () => true);
        return row;
    }

    private JsonNode End()
    {
        if (Chance(0.8))
            return OneOf(Ends);
        var eye = new JsonObject { ["pin"] = Inches(16, 96), ["length"] = Inches(8 * 64, 12 * 64), ["reach"] = Inches(0, 160) };
        Add(eye, "tucks", 0.5, () => Next(4, 7));
        Add(eye, "thimble", 0.4, () => Inches(16, 160));
        if (eye.ContainsKey("thimble"))
            eye["length"] = Inches(64, 8 * 64);
        return new JsonObject { ["eye"] = eye };
    }

    private JsonObject ForSome(IEnumerable<JsonObject> posts, double share, Func<JsonObject, JsonNode> value) =>
        new(posts.Where(_ => Chance(share)).Select(post => KeyValuePair.Create(post["mark"]!.GetValue<string>(), (JsonNode?)value(post))));

    private void AddClearAt(JsonArray sections, JsonObject[] rows)
    {
        foreach (var section in sections.Where(_ => Chance(0.15)))
        {
            section!["clearAt"] = new JsonObject(rows.Where(_ => Chance(0.6)).Select(row => KeyValuePair.Create(row["mark"]!.GetValue<string>(), (JsonNode?)Inches(40 * 64, 120 * 64))));
        }
    }

    private void AddHoles(JsonObject[] posts, JsonObject[] rows, bool isRing)
    {
        for (var i = 0; i < posts.Length; i++)
        {
            var holes = new JsonObject();
            foreach (var row in rows.Where(_ => Chance(0.1)))
            {
                var how = row["at"]?[posts[i]["mark"]!.GetValue<string>()] ?? row[i == 0 ? "start" : i == posts.Length - 1 && !isRing ? "finish" : "between"]!;
                if (how is not JsonValue || how.GetValue<string>() is not ("bored" or "stopped" or "knot"))
                    continue;
                var rope = row["rope"] ?? _rope;
                var hole = new JsonObject { ["height"] = Near(row["height"]!, -64, 65), ["across"] = Near(rope["measured"] ?? rope["diameter"]!, 1, 36) };
                Add(hole, "bore", 0.3, () => OneOf("level", "raked"));
                holes[row["mark"]!.GetValue<string>()] = hole;
            }
            if (holes.Count > 0)
                posts[i]["holes"] = holes;
        }
    }

    private string Near(JsonNode length, int least, int most) => Text((int)Math.Round(JobText.Inches(length)!.Value * 64) + Next(least, most));
}
