using System.Globalization;
using System.Text.Json.Nodes;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>A piece as the oracle sees it; inches.</summary>
internal sealed record OraclePiece(string Run, double Net, double Needed, double Step, List<(double Chord, double Sag, double Arc)> Sections, List<(string Post, string Kind, double Length)> AtPosts);

/// <summary>A bore as the oracle sees it; inches.</summary>
internal sealed record OracleBore(string Post, string Kind, double Bit, double Wall, List<(string Face, double Depth)> Operations);

/// <summary>
/// Works a job out a second time, straight from the JSON, in floating point, post by post with one open piece at a time, and
/// with the curves of <see cref="Catenary"/>. It reads only the ways of writing that <see cref="RandomJob"/> uses.
/// </summary>
internal sealed class Oracle
{
    private static readonly HashSet<string> Natural = ["manila", "sisal", "hemp", "jute", "cotton"];

    private readonly JsonObject _job;
    private readonly JsonArray _posts;
    private readonly JsonArray _sections;
    private readonly JsonObject _row;
    private readonly string[] _at;
    private readonly double[] _across;
    private readonly double[] _centres;
    private readonly double[] _slope;
    private readonly double _rope;

    private Oracle(JsonObject job, JsonNode line, JsonObject row)
    {
        (_job, _row, _posts, _sections) = (job, row, line["posts"]!.AsArray(), line["sections"]!.AsArray());
        _at = [.. _posts.Select((post, i) => Text(row["at"]?[Mark(i)]) ?? Text(i == 0 ? row["start"] : i == _posts.Count - 1 ? row["finish"] : row["between"])!)];
        _across = [.. _posts.Select(post => Inches(post!["across"])!.Value)];
        _centres = [.. _sections.Select((section, i) => Inches(section!["centres"]) ?? (Inches(section["clear"])!.Value + ((_across[i] + _across[i + 1]) / 2)))];
        _slope = [.. _sections.Select((section, i) => (Inches(section!["rise"]) ?? 0) / _centres[i])];
        var rope = RopeNode;
        _rope = Inches(rope["measured"]) ?? Inches(rope["diameter"])!.Value;
    }

    public List<OraclePiece> Pieces { get; } = [];

    public List<OracleBore> Bores { get; } = [];

    private JsonObject RopeNode => (_row["rope"] ?? _job["rope"])!.AsObject();

    /// <summary>The pieces and bores of the whole job.</summary>
    public static (List<OraclePiece> Pieces, List<OracleBore> Bores) Of(JsonObject job)
    {
        var (pieces, bores) = (new List<OraclePiece>(), new List<OracleBore>());
        foreach (var line in job["lines"]!.AsArray())
        {
            foreach (var row in line!["rows"]!.AsArray())
            {
                var oracle = new Oracle(job, line, row!.AsObject());
                oracle.Walk($"{line["mark"]}-{row["mark"]}");
                pieces.AddRange(oracle.Pieces);
                bores.AddRange(oracle.Bores);
            }
        }
        return (pieces, bores);
    }

    private string Mark(int post) => Text(_posts[post]!["mark"])!;

    private bool IsWrapped(int post) => _at[post].StartsWith("wrap", StringComparison.Ordinal);

    private void Walk(string name)
    {
        var open = Open(name, 1);
        var last = _posts.Count - 1;
        for (var i = 0; i <= last; i++)
        {
            var half = _across[i] / 2;
            if (IsWrapped(i))
            {
                open.AtPosts.Add((Mark(i), "wrap", WrapLength(i)));
            }
            else if (i == 0 || i == last)
            {
                var (neighbour, slope) = i == 0 ? (Mark(1), _slope[0]) : (Mark(last - 1), _slope[last - 1]);
                open.AtPosts.Add((Mark(i), _at[i], _at[i] == "knot" ? _across[i] + (12 * _rope) : half));
                Bore(i, _at[i], _at[i] == "knot" ? [($"toward {neighbour}", Through(i, slope)), ($"away from {neighbour}", Through(i, slope))] : [($"toward {neighbour}", half)]);
            }
            else if (_posts[i]!["turn"] is not null)
            {
                open.AtPosts.Add((Mark(i), "corner", half));
                Bore(i, "corner", [($"toward {Mark(i - 1)}", half)]);
                Close(open);
                open = Open(name, Pieces.Count + 1);
                open.AtPosts.Add((Mark(i), "corner", half - (_rope / 2)));
                Bore(i, "corner", [($"toward {Mark(i + 1)}", half)]);
            }
            else
            {
                var slope = (_slope[i - 1] + _slope[i]) / 2;
                open.AtPosts.Add((Mark(i), "through", _across[i] / Math.Cos(Math.Atan(slope))));
                Bore(i, "through", [($"toward {Mark(i - 1)}", Through(i, slope)), ($"toward {Mark(i + 1)}", Through(i, slope))]);
            }
            if (i < last)
                open.Sections.Add(Section(i));
        }
        Close(open);
    }

    private static OraclePiece Open(string name, int number) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{name}-{number}"), 0, 0, 0, [], []);

    private void Close(OraclePiece piece)
    {
        var net = piece.Sections.Sum(section => section.Arc) + piece.AtPosts.Sum(at => at.Length);
        var allowances = _job["allowances"];
        var shrink = double.Parse((Text(allowances?["shrink"]) ?? "15%").TrimEnd('%'), CultureInfo.InvariantCulture) / 100;
        var grown = Natural.Contains(Text(RopeNode["material"])!) ? net * (1 + shrink) : net;
        Pieces.Add(piece with
        {
            Net = net,
            Needed = grown + (Inches(allowances?["perPiece"]) ?? 0),
            Step = Inches(allowances?["roundUp"]) ?? 0.25,
        });
    }

    private double Through(int post, double slope) => (_across[post] / (2 * Math.Cos(Math.Atan(slope)))) + 0.125;

    private void Bore(int post, string kind, List<(string Face, double Depth)> operations)
    {
        var rope = RopeNode;
        var over = Natural.Contains(Text(rope["material"])!) && rope["measured"] is null ? 3.0 : 1.0;
        // Random diameters are whole 64ths; written in millimetres they come back a hair off.
        var bit = Math.Ceiling((Math.Round(_rope * 64) / 4) + over) / 16;
        Bores.Add(new(Mark(post), kind, bit, (_across[post] - bit) / 2, operations));
    }

    private double WrapLength(int post)
    {
        var words = _at[post].Split(' ');
        var (turns, w) = (double.Parse(words[1], CultureInfo.InvariantCulture), _across[post]);
        // A helix unrolled: the way round by the climb.
        var round = Text(_posts[post]!["shape"]) == "round" ? Math.PI * (w + _rope) : (4 * w) + (Math.PI * _rope);
        var length = double.Hypot(turns * round, turns * _rope);
        if (post == 0 || post == _posts.Count - 1 || Text(_posts[post]!["turn"]) is not { } turn)
            return length;
        var arc = double.Parse(turn.Split(' ')[0], CultureInfo.InvariantCulture) / 360 * Math.PI * (w + _rope);
        return words.Length > 2 ? length - arc : length + arc;
    }

    private (double Chord, double Sag, double Arc) Section(int index)
    {
        var level = _centres[index] - (IsWrapped(index) ? 0 : _across[index] / 2) - (IsWrapped(index + 1) ? 0 : _across[index + 1] / 2);
        var rise = _slope[index] * level;
        var chord = double.Hypot(level, rise);
        var own = _sections[index]!;
        var from = own["sag"] is not null || own["slack"] is not null ? own : _row;
        var (sag, slack) = (Inches(from["sag"]), Inches(from["slack"]));
        if (sag is 0 || slack is 0)
            return (chord, 0, chord);
        var c = sag is { } drop ? Catenary.ParameterForSag(level, rise, drop) : Catenary.ParameterForArc(level, rise, chord + slack!.Value);
        return (chord, Catenary.SagOf(c, level, rise), Catenary.ArcOf(c, level, rise));
    }

    private static string? Text(JsonNode? node) => node?.GetValue<string>();

    private static double? Inches(JsonNode? node)
    {
        if (Text(node) is not { } text)
            return null;
        var sign = text.StartsWith('-') ? -1 : 1;
        text = text.TrimStart('-');
        if (text.EndsWith("mm", StringComparison.Ordinal))
            return sign * double.Parse(text[..^2], CultureInfo.InvariantCulture) / 25.4;
        var words = text.Replace(" in", "", StringComparison.Ordinal).Split(' ');
        var total = 0.0;
        foreach (var word in words)
        {
            var fraction = word.Split('/');
            total = word == "ft" ? total * 12
                : total + (double.Parse(fraction[0], CultureInfo.InvariantCulture) / (fraction.Length > 1 ? double.Parse(fraction[1], CultureInfo.InvariantCulture) : 1));
        }
        return sign * total;
    }
}
