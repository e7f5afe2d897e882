using System.Globalization;

namespace CutShop.Testing.Solids;

/// <summary>
/// A random post with two rows of bores and their screws, square or round, at a corner or not: its figures by the product's solid and by
/// counting random points in bodies that are written down here once more, from the post alone.
/// </summary>
internal sealed class CountedPost
{
    /// <summary>How far the two may differ, in inches.</summary>
    public const double Allowed = 0.02;

    private const int BiteSteps = 3_000;
    private static readonly int[] Patience = [1, 8, 40, 200];

    private readonly Random _random;
    private readonly Post _post;
    private readonly PostSolid _solid;
    private readonly double _half;
    private readonly double _turn; // radians, left positive; 0 where the line goes straight on
    private readonly List<(string Name, CountedBody Body)> _bores = [];
    private readonly List<(string Name, CountedBody Body)> _screws = [];
    private readonly List<(CountedBody Rope, double[] From, double[] To)> _bites = [];

    private CountedPost(int seed)
    {
        _random = new(seed);
        var isCorner = _random.Next(3) == 0;
        var degrees = isCorner ? _random.Next(20, 136) : 0;
        _turn = (_random.Next(2) == 0 ? 1 : -1) * degrees * Math.PI / 180;
        _post = new(
            "P",
            _random.Next(2) == 0 ? PostShape.Square : PostShape.Round,
            Length.RoundedFromInches(Between(4, 10)),
            Length.RoundedFromInches(Between(30, 44)),
            isCorner ? new Turn(degrees, _turn > 0 ? TurnSide.Left : TurnSide.Right) : null,
            Length.FromInches(24));
        _half = _post.Across.Inches / 2;
        _solid = new(_post, isStart: seed % 2 == 0);
        var kind = isCorner ? AtPostKind.Corner : _random.Next(2) == 0 ? AtPostKind.Through : AtPostKind.Stopped;
        Put("low", Between(4, 30), kind);
        Put("high", Between(4, 30), kind);
    }

    /// <summary>Where the two differ by more than is allowed at the post of a seed; empty where they agree.</summary>
    public static IReadOnlyList<string> Differences(int seed)
    {
        var post = new CountedPost(seed);
        return [.. post.Differences().Where(difference => difference.Length > 0).Select(difference => string.Create(CultureInfo.InvariantCulture, $"post {seed}: {difference}"))];
    }

    private IEnumerable<string> Differences()
    {
        for (var i = 0; i < _bores.Count; i++)
        {
            var (bore, wood) = (_bores[i], _solid.WoodRound(_solid.Bores[i]));
            yield return Difference($"wood above {bore.Name}", wood.Above.Inches, patience => _post.Height.Inches - bore.Body.Farthest([0, 0, 1], patience, _random));
            yield return Difference($"wood below {bore.Name}", wood.Below.Inches, patience => -bore.Body.Farthest([0, 0, -1], patience, _random));
            if (_post.Shape == PostShape.Square)
            {
                // The faces beside the one that the mouth is in.
                var mouth = _solid.Bores[i].Body.FromCut;
                var (x, y) = (Math.Abs(mouth.X) > 0.5 ? 0.0 : 1.0, Math.Abs(mouth.X) > 0.5 ? 1.0 : 0.0);
                yield return Difference(
                    $"wood beside {bore.Name}",
                    wood.Beside.Inches,
                    patience => _half - Math.Max(bore.Body.Farthest([x, y, 0], patience, _random), bore.Body.Farthest([-x, -y, 0], patience, _random)));
            }
            for (var j = 0; j < i; j++)
                yield return Apart($"{_bores[j].Name} and {bore.Name}", Gap.Between(_solid.Bores[i].Body, _solid.Bores[j].Body), bore, _bores[j]);
        }
        for (var i = 0; i < _screws.Count; i++)
        {
            for (var j = 0; j < _bores.Count; j++)
                yield return Apart($"{_screws[i].Name} and {_bores[j].Name}", Gap.Between(_solid.Screws[i].Body, _solid.Bores[j].Body), _screws[i], _bores[j]);
            for (var j = 0; j < i; j++)
                yield return Apart($"{_screws[i].Name} and {_screws[j].Name}", Gap.Between(_solid.Screws[i].Body, _solid.Screws[j].Body), _screws[i], _screws[j]);
            yield return Difference($"bite of {_screws[i].Name}", _solid.Screws[i].BiteIn(_solid.Bores[i].Rope), _ => _bites[i].Rope.LengthOn(_bites[i].From, _bites[i].To, BiteSteps, _random));
        }
    }

    private string Apart(string what, double reckoned, (string Name, CountedBody Body) one, (string Name, CountedBody Body) other) =>
        Difference($"between {what}", Math.Max(0, reckoned), patience => one.Body.GapTo(other.Body, patience, _random));

    /// <summary>Too few points find less than there is, so where the two differ more points are tried.</summary>
    private static string Difference(string what, double reckoned, Func<int, double> count)
    {
        var counted = 0.0;
        foreach (var patience in Patience)
        {
            counted = count(patience);
            if (Math.Abs(reckoned - counted) <= Allowed)
                return "";
        }
        return string.Create(CultureInfo.InvariantCulture, $"{what} {reckoned:0.0000} in, counted {counted:0.0000} in");
    }

    private double Between(double least, double most) => least + ((most - least) * _random.NextDouble());

    /// <summary>Puts a row in: into the product's solid, and as bodies to count in.</summary>
    private void Put(string row, double height, AtPostKind kind)
    {
        var rope = new Rope(RopeMaterial.Polypropylene, Length.RoundedFromInches(Between(0.5, 2)));
        var bit = rope.Across + Length.RoundedFromInches(Between(0.0625, 0.2));
        if (kind != AtPostKind.Corner)
        {
            var isThrough = kind == AtPostKind.Through;
            PutBore(row, kind, angle: 0, isThrough || !_solid.IsStart ? -1 : 1, height, rope, bit, isThrough ? FixingPurpose.Line : FixingPurpose.End, raise: 0);
            return;
        }
        // The post shares the turn between its faces.
        var size = Math.Abs(_turn);
        var arrives = -Math.Sign(_turn) * (size <= Math.PI / 4 ? size / 2 : (size - (Math.PI / 2)) / 2);
        PutBore(row, kind, arrives, -1, height, rope, bit, FixingPurpose.CornerFirst, raise: 0);
        PutBore(row, kind, arrives + _turn, 1, height, rope, bit, FixingPurpose.CornerSecond, Between(0, 1));
    }

    /// <param name="row">The row.</param>
    /// <param name="kind">The bore's kind.</param>
    /// <param name="angle">Its section's direction.</param>
    /// <param name="way">1 where the mouth looks on along the line, -1 where it looks back.</param>
    /// <param name="height">Its height in the middle.</param>
    /// <param name="rope">The rope.</param>
    /// <param name="bit">The bit.</param>
    /// <param name="purpose">What its screw is for.</param>
    /// <param name="raise">How far above the bore the screw goes in.</param>
    private void PutBore(string row, AtPostKind kind, double angle, int way, double height, Rope rope, Length bit, FixingPurpose purpose, double raise)
    {
        var slope = _random.Next(3) == 0 ? 0 : Between(-0.6, 0.6);
        var rake = Math.Atan(slope) * 180 / Math.PI;
        double[] line = [Math.Cos(angle), Math.Sin(angle), slope];
        var norm = Math.Sqrt(1 + (slope * slope));
        double[] normal = _post.Shape == PostShape.Round ? [way * line[0], way * line[1], 0]
            : Math.Abs(line[0]) > Math.Abs(line[1]) ? [way * Math.Sign(line[0]), 0, 0]
            : [0, way * Math.Sign(line[1]), 0];
        var toMouth = _half / ((normal[0] * way * line[0]) + (normal[1] * way * line[1]));
        var depth = Length.RoundedFromInches(toMouth);
        var face = new Face(FaceSight.Toward, "N");
        var isThrough = kind == AtPostKind.Through;
        _solid.Add(new Bore(_post, row, "run", kind, rope, bit, new(BitKind.ThreadedForstner, OnRack: true), Length.RoundedFromInches(height), Length.Zero, rake, isThrough ? [] : [new(face, depth, Length.Zero, depth)]));
        var mouth = OnAxis(toMouth * way, height);
        double[] inward = [-way * line[0] / norm, -way * line[1] / norm, -way * slope / norm];
        _bores.Add(($"{row} bore {_bores.Count}", BoreOf(bit.Inches / 2, depth.Inches)));

        var screws = ShopTables.Standard.Screws.Screws;
        var screw = screws[_random.Next(screws.Count)];
        var level = Length.RoundedFromInches(height + raise);
        var isSide = purpose == FixingPurpose.Line;
        _solid.Add(
            new Fixing(_post, row, level, "run", new(purpose, screw.Name, 1, screw.Length, Length.Zero, Length.Zero, screw.Counterbore, screw.CounterboreDepth), face, level, level) { RakeDegrees = isSide ? 0 : rake },
            ShopTables.Standard.Screws);
        double[] from = isSide ? [0, _half, height] : OnAxis(-toMouth * way, height + raise);
        double[] go = isSide ? [0, -1, 0] : Back(inward);
        var reach = screw.Reach.Inches;
        _screws.Add(($"{row} screw {_screws.Count}", new(from, go, screw.Shank.Inches / 2, (Back(go), -Dot(go, from)), (go, Dot(go, from) + reach))));
        var ropeEnds = depth.Inches - (purpose == FixingPurpose.CornerSecond ? rope.Across.Inches / 2 : 0);
        _bites.Add((BoreOf(rope.Across.Inches / 2, ropeEnds), from, [from[0] + (go[0] * reach), from[1] + (go[1] * reach), from[2] + (go[2] * reach)]));

        double[] OnAxis(double t, double at) => [line[0] * t, line[1] * t, at + (slope * t)];

        CountedBody BoreOf(double radius, double deep) =>
            new(mouth, inward, radius, (normal, _half), isThrough ? (Back(normal), _half) : (inward, Dot(inward, mouth) + deep));
    }

    private static double[] Back(double[] a) => [-a[0], -a[1], -a[2]];

    private static double Dot(double[] a, double[] b) => (a[0] * b[0]) + (a[1] * b[1]) + (a[2] * b[2]);
}
