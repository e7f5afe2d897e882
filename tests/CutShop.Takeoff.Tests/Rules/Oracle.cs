using System.Text.Json.Nodes;
using static CutShop.Testing.Jobs.JobText;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>A job that cannot be built: the takeoff must refuse it.</summary>
internal sealed class ImpossibleJobException(string message) : Exception(message);

/// <summary>
/// Works a job out a second time from what docs/job-file.md says: straight from the JSON, in floating point, with the curves of
/// <see cref="Catenary"/>, and answers with the names of the takeoff's own JSON. Letters are the document's: d the rope's
/// diameter, W a post's width, t a turn, y a height, C centre to centre, D the climb from rope to rope, a and h the level
/// distance and the rise between the holds.
/// </summary>
internal sealed class Oracle
{
    private static readonly string[] Natural = ["manila", "sisal", "hemp", "jute", "cotton"];

    /// <summary>The rack that comes with the program, db/tables/bits.csv, in sixteenths.</summary>
    private static readonly int[] Rack = [8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 40, 41, 44, 48];

    private readonly JsonNode _job;
    private readonly JsonNode _line;
    private readonly JsonNode _row;
    private readonly JsonNode _rope;
    private readonly bool _isNatural;
    private readonly double _d;
    private readonly double _over;
    private readonly bool _isRing;
    private readonly OracleStand[] _stands;
    private readonly Span[] _spans;
    private readonly JsonObject _takeoff;

    /// <summary>From one stand to the next. Slope is D / C; Middle is how high the rope's chord is over the ground's, half way.</summary>
    private sealed record Span(double C, double Slope, double A, double H, double Chord, double Sag, double Arc, double Middle);

    private Oracle(JsonNode job, JsonNode line, JsonNode row, JsonObject takeoff)
    {
        (_job, _line, _row, _takeoff, _isRing) = (job, line, row, takeoff, IsTrue(line["closed"]));
        _rope = row["rope"] ?? job["rope"]!;
        _isNatural = Natural.Contains(Text(_rope["material"]));
        _d = Inches(_rope["measured"] ?? _rope["diameter"])!.Value;
        _over = (_isNatural && _rope["measured"] is null ? 3 : 1) / 16.0;
        var posts = line["posts"]!.AsArray();
        var last = _isRing ? posts.Count : posts.Count - 1;
        _stands = [.. Enumerable.Range(0, last + 1).Select(i => Stand(posts[i % posts.Count]!, i == 0, i == last, last))];
        _spans = [.. Enumerable.Range(0, last).Select(i => SpanFrom(i, last))];
    }

    private string Row => Text(_row["mark"])!;

    private int Last => _spans.Length;

    /// <summary>pieces, bores, and those warnings that depend on figures, except for weights.</summary>
    /// <exception cref="ImpossibleJobException">The job must be refused.</exception>
    public static JsonObject Of(JsonNode job)
    {
        var takeoff = new JsonObject { ["pieces"] = new JsonArray(), ["bores"] = new JsonArray(), ["warnings"] = new JsonArray() };
        foreach (var line in job["lines"]!.AsArray())
        {
            foreach (var row in line!["rows"]!.AsArray())
            {
                var oracle = new Oracle(job, line, row!, takeoff);
                oracle.AddPieces();
                oracle.AddBores();
            }
            AddLineWarnings(line, takeoff);
        }
        return takeoff;
    }

    // Posts and sections.

    private OracleStand Stand(JsonNode post, bool isFirst, bool isLast, int bays)
    {
        var mark = Text(post["mark"])!;
        var how = _row["at"]?[mark] ?? (isFirst ? _row["start"]! : isLast ? _row["finish"]! : _row["between"] ?? "bored");
        var (curve, isEnd) = (_line["curve"], isFirst || isLast);
        var turn = isEnd && !_isRing ? 0 : curve is null ? Turn(post["turn"]) : CurveTurn(curve, bays);
        var isCorner = turn != 0 && curve is null && Text(post["corner"]) != "through";
        var kind = how is JsonObject ? "eye" : Text(how)!.Split(' ')[0] switch
        {
            "bored" => isCorner ? "corner" : "through",
            "stopped" when _isRing => isCorner ? "corner" : "join",
            var word => word,
        };
        var hole = post["holes"]?[Row];
        var width = Inches(post["across"]) ?? (Inches(post["girth"])!.Value / Math.PI);
        var height = Inches(hole?["height"] ?? _row["heights"]?[mark] ?? _row["height"])!.Value;
        var stand = new OracleStand(post, kind, how, width, turn, height, IsRaked: false, hole);
        return stand with { IsRaked = stand.IsBored && Text(hole?["bore"] ?? _row["bore"] ?? _job["bore"]) != "level" };
    }

    private static double Radius(JsonNode curve) => Inches(curve["radius"]) is { } radius ? radius
        : (Math.Pow(Inches(curve["string"])!.Value, 2) / (8 * Inches(curve["middle"])!.Value)) + (Inches(curve["middle"])!.Value / 2);

    private static double CurveChord(JsonNode curve, int bays) =>
        Inches(curve["chord"]) ?? (2 * Radius(curve) * Math.Sin(Number(Text(curve["angle"])!) / (2 * bays) * Math.PI / 180));

    private static double CurveTurn(JsonNode curve, int bays) =>
        360 / Math.PI * Math.Asin(CurveChord(curve, bays) / (2 * Radius(curve))) * (Text(curve["turns"]) == "left" ? 1 : -1);

    private Span SpanFrom(int i, int bays)
    {
        var (one, two, own) = (_stands[i], _stands[i + 1], _line["curve"] ?? _line["sections"]![i]!);
        var centres = _line["curve"] is { } curve ? CurveChord(curve, bays)
            : Inches(own["clearAt"]?[Row] ?? own["clear"]) is { } clear ? Centres(one, two, clear)
            : Inches(own["centres"])!.Value;
        var (rise, e1, e2) = (Inches(own["rise"]) ?? 0, one.Hold, two.Hold);
        var climb = rise + two.Y - one.Y;
        var (x1, x2) = (e1 * Math.Cos(one.Bend), centres - (e2 * Math.Cos(two.Bend)));
        var a = double.Hypot(x2 - x1, (e1 * Math.Sin(one.Bend)) - (e2 * Math.Sin(two.Bend)));
        var h = climb * (1 - ((one.RakedHalf + two.RakedHalf) / centres));
        var middle = ((one.Y + (climb * one.RakedHalf / centres) + rise + two.Y - (climb * two.RakedHalf / centres)) / 2) - (rise * (x1 + x2) / 2 / centres);
        var chord = double.Hypot(a, h);

        var from = own["sag"] is not null || own["slack"] is not null ? own : _row;
        var (sag, slack) = (Inches(from["sag"]), Inches(from["slack"]));
        if (sag is 0 || slack is 0)
            return new(centres, climb / centres, a, h, chord, 0, chord, middle);
        var c = sag is { } drop ? Catenary.ParameterForSag(a, h, drop) : Catenary.ParameterForArc(a, h, chord + slack!.Value);
        return new(centres, climb / centres, a, h, chord, Catenary.SagOf(c, a, h), Catenary.ArcOf(c, a, h), middle);
    }

    /// <summary>C from a tape between the mouths, or the faces of posts that are not bored.</summary>
    private static double Centres(OracleStand one, OracleStand two, double clear)
    {
        var (m1, m2) = (one.Mouth, two.Mouth);
        var p = (m1 * Math.Cos(one.Bend)) + (m2 * Math.Cos(two.Bend));
        var q = (m1 * Math.Sin(one.Bend)) - (m2 * Math.Sin(two.Bend));
        return p + Math.Sqrt((clear * clear) - (q * q));
    }

    // The rope at a post.

    /// <summary>tan(rake) of a bore; at a corner of the arriving or the leaving one.</summary>
    private double Rake(int i, bool isLeaving)
    {
        if (!_stands[i].IsRaked)
            return 0;
        var before = i > 0 ? _spans[i - 1].Slope : _isRing ? _spans[^1].Slope : _spans[0].Slope;
        var after = i < Last ? _spans[i].Slope : _isRing ? _spans[0].Slope : before;
        return _stands[i].Kind == "corner" ? (isLeaving ? after : before) : (before + after) / 2;
    }

    private double ThroughLength(int i) => _stands[i].W / Math.Cos(Math.Atan(Rake(i, false)));

    private (string Kind, double Length) At(int i, bool isStart, bool isEnd)
    {
        var stand = _stands[i];
        if (IsJoined(i, isStart || isEnd))
            return ("join", ThroughLength(i) / 2);
        return (stand.Kind, stand.Kind switch
        {
            "through" => ThroughLength(i),
            "corner" => isStart ? stand.Mouth - (_d / 2) : stand.Mouth,
            "knot" => stand.W + (12 * _d),
            "wrap" => Wrap(stand, i > 0),
            "beside" => stand.Turned(_d),
            "eye" => Eye(stand.How["eye"]!),
            _ => stand.W / 2,
        });
    }

    private bool IsJoined(int i, bool isEndOfPiece) => _stands[i].Kind == "join" || (_stands[i].Kind == "through" && isEndOfPiece);

    private double Wrap(OracleStand stand, bool isTurned)
    {
        var words = Text(stand.How)!.Split(' ');
        return stand.Wrapped(Number(words[1]), _d) + (!isTurned ? 0 : words.Length > 2 ? -stand.Turned(_d) : stand.Turned(_d));
    }

    private double Tucks(JsonNode eye) => eye["tucks"]?.GetValue<int>() ?? (_isNatural ? 3 : 4);

    private double Eye(JsonNode eye) => Inches(eye["length"])!.Value + (Math.PI * (Inches(eye["thimble"] ?? eye["pin"])!.Value + _d) / 2) + (Tucks(eye) * 16 / 3 * _d);

    // Pieces.

    private double Net(int from, int to) =>
        _spans[from..to].Sum(span => span.Arc) + Enumerable.Range(from, to - from + 1).Sum(i => At(i, i == from, i == to).Length);

    /// <summary>How wet rope is hung, and what it loses; null where it loses nothing.</summary>
    private (string Manner, double Loses)? Wetting()
    {
        var allowances = _job["allowances"];
        if (!_isNatural || Text(allowances?["wetting"]?["manner"]) == "preshrunk")
            return null;
        var shrink = Share(allowances?["shrink"]) ?? 0.15;
        return allowances?["wetting"] is { } wetting ? (Text(wetting["manner"])!, Share(wetting["loses"])!.Value) : ("trimmed", shrink / (1 + shrink));
    }

    private double Cut(double net)
    {
        var step = Inches(_job["allowances"]?["roundUp"]) ?? 0.25;
        var needed = (net / (1 - (Wetting()?.Loses ?? 0))) + (Inches(_job["allowances"]?["perPiece"]) ?? 0);
        // What is whole already is not rounded up for a breath of floating point.
        return Math.Ceiling((needed - 1e-6) / step) * step;
    }

    /// <summary>Runs end at bored corners; those longer than the longest piece are broken.</summary>
    private IEnumerable<(int From, int To)> Pieces()
    {
        var from = 0;
        for (var i = 1; i <= Last; i++)
        {
            if (i != Last && _stands[i].Kind != "corner")
                continue;
            var longest = Inches(_job["longest"]) ?? double.PositiveInfinity;
            while (Cut(Net(from, i)) > longest)
            {
                var end = Enumerable.Range(from + 1, i - from - 1)
                    .LastOrDefault(k => _stands[k].Kind == "through" && _stands[k].Turn == 0 && Cut(Net(from, k)) <= longest);
                if (end == 0 || IsTrue(_row["unbroken"]))
                    throw new ImpossibleJobException($"{Row} from {_stands[from].Mark} is longer than the longest piece");
                yield return (from, end);
                from = end;
            }
            yield return (from, i);
            from = i;
        }
    }

    private void AddPieces()
    {
        var count = 0;
        foreach (var (from, to) in Pieces())
        {
            var (net, run) = (Net(from, to), $"{_line["mark"]}-{Row}-{++count}");
            var cut = Cut(net);
            _takeoff["pieces"]!.AsArray().Add(new JsonObject
            {
                ["run"] = run,
                ["line"] = Text(_line["mark"]),
                ["row"] = Row,
                ["from"] = _stands[from].Mark,
                ["to"] = _stands[to].Mark,
                ["material"] = Text(_rope["material"]),
                ["diameterIn"] = Inches(_rope["diameter"]),
                ["netIn"] = net,
                ["cutIn"] = cut,
                ["trimIn"] = Wetting() is var (_, loses) ? (cut * (1 - loses)) - net : 0,
                ["setOut"] = _isRing || _line["curve"] is not null,
                ["sections"] = new JsonArray([.. Enumerable.Range(from, to - from).Select(i => Section(i, from, to))]),
                ["atPosts"] = new JsonArray([.. Enumerable.Range(from, to - from + 1).Select(i => AtPost(i, from, to))]),
            });
            if (_job["longest"] is null && cut > 7200)
                Warn("longer-than-usual-coil", run);
            if (_stands[from].Kind == "eye" && _stands[to].Kind == "eye" && _stands[from..to].Any(stand => stand.IsBored))
                Warn("splice-on-site", run);
        }
    }

    private JsonObject AtPost(int i, int from, int to)
    {
        var stand = _stands[i];
        var (kind, length) = At(i, i == from, i == to);
        if (kind == "join" && stand.W / 4 < _d)
            Warn("short-join", $"{stand.Mark}/{Row}");
        if (kind == "wrap" && i > 0 && i < Last && Number(Text(stand.How)!.Split(' ')[1]) % 1 != 0)
            Warn("half-turn-inside", $"{stand.Mark}/{Row}");
        return new() { ["post"] = stand.Mark, ["kind"] = kind, ["lengthIn"] = length };
    }

    private JsonObject Section(int i, int from, int to)
    {
        var (span, one, two) = (_spans[i], _stands[i], _stands[i + 1]);
        var where = $"{one.Mark}-{two.Mark}/{Row}";
        if (_isNatural && (span.Arc == span.Chord || Share(_job["allowances"]?["shrink"]) is 0))
            Warn("taut-when-wet", where);
        var eyes = new[] { one, two }.Where(stand => stand.Kind == "eye").Select(stand => stand.How["eye"]!).ToList();
        if (eyes.Count > 0 && span.Arc - eyes.Sum(eye => Inches(eye["length"])!.Value + (Tucks(eye) * 4 / 3 * _d)) < 10 * _d)
            Warn("short-between-eyes", where);

        var g = one.ToScrew(IsJoined(i, i == from)) + two.ToScrew(IsJoined(i + 1, i + 1 == to));
        var dry = Wetting() is ("hung-long", var loses) ? ((span.Arc + g) / (1 - loses)) - g : (double?)null;
        return new()
        {
            ["from"] = one.Mark,
            ["to"] = two.Mark,
            ["chordIn"] = span.Chord,
            ["sagIn"] = span.Sag,
            ["arcIn"] = span.Arc,
            ["midHeightIn"] = span.Middle - span.Sag,
            ["tautShare"] = (span.Arc - span.Chord) / (span.Arc + g),
            ["drySagIn"] = dry is { } arc ? Catenary.SagOf(Catenary.ParameterForArc(span.A, span.H, arc), span.A, span.H) : null,
        };
    }

    // Bores.

    private void AddBores()
    {
        for (var i = 0; i <= (_isRing ? Last - 1 : Last); i++)
        {
            var stand = _stands[i];
            // On a ring the post before the first one is the last.
            var previous = i > 0 ? i - 1 : _isRing ? Last - 1 : 1;
            var (back, on) = ($"toward {_stands[previous].Mark}", $"toward {_stands[Math.Min(i + 1, Last)].Mark}");
            var half = (ThroughLength(i) / 2) + 0.125;
            switch (stand.Kind)
            {
                case "stopped":
                    AddBore(i, "stopped", Rake(i, false), (i == 0 ? on : back, stand.W / 2));
                    break;
                case "knot":
                    AddBore(i, "knot", Rake(i, false), (i == 0 ? on : back, half), ((i == 0 ? on : back).Replace("toward", "away from", StringComparison.Ordinal), half));
                    break;
                case "corner":
                    AddBore(i, "corner", Rake(i, false), (back, stand.Mouth));
                    AddBore(i, "corner", Rake(i, true), (on, stand.Mouth));
                    break;
                case "through" or "join":
                    AddBore(i, "through", Rake(i, false), (back, half), (on, half));
                    break;
            }
        }
    }

    private void AddBore(int i, string kind, double rake, params (string Face, double Depth)[] operations)
    {
        var (stand, where) = (_stands[i], $"{_stands[i].Mark}/{Row}");
        var hole = Inches(stand.Hole?["across"]);
        // Rope is measured in whole 64ths; written in millimetres it comes back a hair off.
        var wanted = Math.Ceiling((Math.Round(_d * 64) / 4) + (_over * 16)) / 16;
        var bit = Rack.Select(size => size / 16.0).FirstOrDefault(size => size >= wanted && size <= wanted + 0.125, wanted);
        if (stand.Wall(hole ?? wanted) <= 0 && stand.Skew > 0)
            throw new ImpossibleJobException($"no wood beside the bore at {where}");
        _takeoff["bores"]!.AsArray().Add(new JsonObject
        {
            ["post"] = stand.Mark,
            ["row"] = Row,
            ["kind"] = kind,
            ["heightIn"] = stand.Y,
            ["level"] = !stand.IsRaked,
            ["existing"] = hole is not null,
            ["bored"] = Text(stand.Post["boring"] ?? _line["boring"] ?? _job["boring"]) ?? "shop",
            ["skewDegrees"] = stand.Skew,
            ["kinkDegrees"] = Math.Abs(stand.Bend) * 180 / Math.PI,
            ["rakeDegrees"] = Math.Atan(rake) * 180 / Math.PI,
            ["bitWantedIn"] = hole is null ? wanted : null,
            ["bitIn"] = hole is null ? bit : null,
            ["wallIn"] = stand.Wall(hole ?? bit),
            ["operations"] = new JsonArray([.. (hole is null ? operations : []).Select(operation => new JsonObject { ["face"] = operation.Face, ["depthIn"] = operation.Depth })]),
        });
        if (Math.Abs(stand.Bend) * 180 / Math.PI > 15)
            Warn("kink", where);
        if (Math.Atan(Math.Abs(rake)) * 180 / Math.PI > 20)
            Warn("steep-bore", where);
        if (stand.Wall(hole ?? bit) < 0.75 - 1e-7)
            Warn("thin-wall", where);
        if (hole - _d - _over < -1e-7)
            Warn("tight-hole", where);
        if (hole - _d - _over > 0.25 + 1e-7)
            Warn("loose-hole", where);
    }

    // Warnings.

    private void Warn(string code, string where) => Warn(_takeoff, code, where);

    private static void Warn(JsonObject takeoff, string code, string where) =>
        takeoff["warnings"]!.AsArray().Add(new JsonObject { ["code"] = code, ["where"] = where });

    private static void AddLineWarnings(JsonNode line, JsonObject takeoff)
    {
        var (mark, sections, posts) = (Text(line["mark"])!, line["sections"]?.AsArray() ?? [], line["posts"]!.AsArray());
        if (Inches(line["drop"]) > 30)
            Warn(takeoff, "drop-needs-guard", mark);
        for (var i = 0; i < sections.Count; i++)
        {
            if (Inches(sections[i]!["drop"]) > 30)
                Warn(takeoff, "drop-needs-guard", $"{posts[i]!["mark"]}-{posts[(i + 1) % posts.Count]!["mark"]}");
        }
        if (!IsTrue(line["closed"]))
            return;
        var (x, y, heading) = (0.0, 0.0, 0.0);
        for (var i = 0; i < sections.Count; i++)
        {
            var centres = Inches(sections[i]!["centres"]) ?? double.NaN;
            (x, y) = (x + (centres * Math.Cos(heading * Math.PI / 180)), y + (centres * Math.Sin(heading * Math.PI / 180)));
            heading += Turn(posts[(i + 1) % posts.Count]!["turn"]);
        }
        // Where one section is not given by its centres, the gap is no number and no comparison holds.
        if (Math.Abs(Math.Abs(heading) - 360) > 1 || double.Hypot(x, y) > 2)
            Warn(takeoff, "does-not-close", mark);
    }
}
