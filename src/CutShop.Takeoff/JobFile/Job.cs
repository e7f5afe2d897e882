using System.Globalization;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.JobFile;

/// <summary>A checked job: what stands on the site and what rope is wanted. Every count, mark and length in it is consistent.</summary>
/// <param name="Number">The shop's number for the job.</param>
/// <param name="Customer">Who ordered it; may be empty.</param>
/// <param name="Due">The day it must leave the shop, or null.</param>
/// <param name="Rope">The rope of every row that has none of its own.</param>
/// <param name="Allowances">What is added to the geometry.</param>
/// <param name="Lines">The lines of posts, at least one.</param>
/// <param name="OneLot">True where all pieces of a rope must come from one lot, since colour differs by lot.</param>
/// <param name="Datum">Where heights are measured from on tickets; heights in the job itself are above ground.</param>
public sealed record Job(
    string Number,
    string Customer,
    DateOnly? Due,
    Rope Rope,
    Allowances Allowances,
    IReadOnlyList<Line> Lines,
    bool OneLot = false,
    Datum Datum = Datum.Ground)
{
    /// <summary>The most posts a job may have, over all its lines.</summary>
    public const int MostPosts = 100_000;

    /// <summary>The most rows a line may have.</summary>
    public const int MostRows = 100;

    /// <summary>The most places in a job where a row meets a post.</summary>
    public const int MostCrossings = 1_000_000;

    /// <summary>The longest name of a customer, in characters.</summary>
    public const int LongestCustomer = 200;

    /// <summary>Whether bores follow the slope of the ground, where a row or a hole does not say.</summary>
    public BoreSlope Bore { get; init; }

    /// <summary>Who bores the posts, where a line or a post does not say.</summary>
    public BoredBy Boring { get; init; }

    /// <summary>The longest cut that a piece may have, so that longer runs are broken inside posts; null for any.</summary>
    public Length? Longest { get; init; }

    /// <summary>The posts of all lines, in order.</summary>
    public IEnumerable<Post> Posts => Lines.SelectMany(line => line.Posts);
}

/// <summary>A line of posts with the rope rows strung along it.</summary>
/// <param name="Mark">The line's mark, unique in the job.</param>
/// <param name="Posts">Posts in order along the line, at least two.</param>
/// <param name="Sections">The i-th is between posts i and i + 1: one fewer than the posts, or as many where the line is closed.</param>
/// <param name="Rows">Rows of rope, at least one.</param>
public sealed record Line(string Mark, IReadOnlyList<Post> Posts, IReadOnlyList<Section> Sections, IReadOnlyList<Row> Rows)
{
    /// <summary>True where the last section leads back to the first post, at which every row starts and finishes.</summary>
    public bool IsClosed { get; init; }

    /// <summary>The arc that the posts stand on, from which the sections and turns were worked out; null where they were given.</summary>
    public Curve? Curve { get; init; }

    /// <summary>How far it is down beside the walk, where a section does not say; null where it is not known.</summary>
    public Length? Drop { get; init; }

    /// <summary>Who bores the posts, where a post does not say; null where the job says.</summary>
    public BoredBy? Boring { get; init; }

    /// <summary>The places along the line where a row comes to a post: the posts, and in a closed line the first post once more.</summary>
    public int Stations => Sections.Count + 1;

    /// <summary>The post at a station; in a closed line the stations before the first and after the last go on round it.</summary>
    public Post At(int station) => IsClosed ? Posts[(station + Posts.Count) % Posts.Count] : Posts[station];

    /// <summary>The mark of the neighbour that a station has before it, or null.</summary>
    public string? Before(int station) => IsClosed || station > 0 ? At(station - 1).Mark : null;

    /// <summary>The mark of the neighbour that a station has after it, or null.</summary>
    public string? After(int station) => IsClosed || station < Posts.Count - 1 ? At(station + 1).Mark : null;

    /// <summary>True for a line whose posts are set out from a drawing: a curve or a ring.</summary>
    public bool IsSetOut => IsClosed || Curve is not null;
}

/// <summary>Whether a bore follows the slope of the ground.</summary>
public enum BoreSlope
{
    /// <summary>Along the slope of its section.</summary>
    Raked,

    /// <summary>Level, whatever the slope.</summary>
    Level,
}

/// <summary>Who bores a post.</summary>
public enum BoredBy
{
    /// <summary>The shop, before the post leaves it.</summary>
    Shop,

    /// <summary>The installer, where it stands.</summary>
    Site,
}

/// <summary>What the bores of a corner post do.</summary>
public enum CornerKind
{
    /// <summary>One bore along each section; they meet at the post's centre, where a run ends and the next one starts.</summary>
    Ends,

    /// <summary>One straight bore along the bisector, through which the run goes on.</summary>
    Through,
}

/// <summary>An arc of posts that stand at equal distances: what was measured of it.</summary>
/// <param name="Radius">Its radius at the posts' centres; null where a string was measured.</param>
/// <param name="Taut">The length of a string drawn taut across it; null where the radius is given.</param>
/// <param name="Middle">The middle ordinate of that string; null where the radius is given.</param>
/// <param name="Chord">From post centre to post centre; null where the angle is given.</param>
/// <param name="Angle">The angle of the whole arc in degrees; null where the chord is given.</param>
/// <param name="Turns">Which way it turns.</param>
/// <param name="Rise">What the ground rises in each section.</param>
/// <param name="Hang">Sag or slack of each section, or null where the row's is used.</param>
public sealed record Curve(Length? Radius, Length? Taut, Length? Middle, Length? Chord, decimal? Angle, TurnSide Turns, Length Rise, Hang? Hang)
{
    /// <summary>The sharpest turn at an inner post, which the rope goes through in a straight bore.</summary>
    public const double MostTurn = 45;

    /// <summary>The radius in inches: R as given, or L² / 8m + m / 2 by the string L and its middle ordinate m.</summary>
    public double RadiusInches => Radius is { } radius
        ? radius.Inches
        : (Taut!.Value.Inches * Taut.Value.Inches / (8 * Middle!.Value.Inches)) + (Middle.Value.Inches / 2);

    /// <summary>From post centre to post centre: C as given, or 2 R sin(angle / 2n) where the arc has n sections.</summary>
    public Length ChordOf(int sections) =>
        Chord ?? Length.RoundedFromInches(2 * RadiusInches * Math.Sin((double)Angle!.Value * Math.PI / 360 / sections));

    /// <summary>The turn at each inner post in degrees: 2 asin(C / 2R); not a number where C is over the arc's width.</summary>
    public double TurnDegrees(int sections) => 2 * Math.Asin(ChordOf(sections).Inches / (2 * RadiusInches)) * 180 / Math.PI;
}

/// <summary>The shape of a post's cross-section.</summary>
public enum PostShape
{
    /// <summary>Square timber.</summary>
    Square,

    /// <summary>A round post or piling.</summary>
    Round,
}

/// <summary>Where heights on a post are measured from.</summary>
public enum Datum
{
    /// <summary>Upward from the ground it will stand in.</summary>
    Ground,

    /// <summary>Downward from its top.</summary>
    Top,

    /// <summary>Upward from its lower end, as it lies in the shop: its buried length more than above ground.</summary>
    Foot,
}

/// <summary>A post.</summary>
/// <param name="Mark">The post's mark, unique in the job.</param>
/// <param name="Shape">Its cross-section.</param>
/// <param name="Across">Measured width or diameter: the actual size, never the nominal.</param>
/// <param name="Height">Height above ground.</param>
/// <param name="Turn">The turn of the line at this post, which makes it a corner; null where the line goes straight on.</param>
/// <param name="Buried">Length of the post below ground, zero where it stands on the ground; null where nobody said.</param>
public sealed record Post(string Mark, PostShape Shape, Length Across, Length Height, Turn? Turn, Length? Buried = null)
{
    private const double EqualSkewsFrom = 45;

    /// <summary>The sharpest turn that bores meeting in a post can make.</summary>
    public const double MostTurnInBores = 135;

    /// <summary>What its bores do where the line turns.</summary>
    public CornerKind Corner { get; init; }

    /// <summary>The tape round a round post, from which the width was worked out; null where the width was measured.</summary>
    public Length? Girth { get; init; }

    /// <summary>Who bores it; null where its line or the job says.</summary>
    public BoredBy? Boring { get; init; }

    /// <summary>The holes that are there already, by row; null where there are none.</summary>
    public PostHoles? Holes { get; init; }

    /// <summary>A height above ground, measured from a datum.</summary>
    /// <exception cref="InvalidOperationException">It is measured from the foot, and nobody said how far the post is buried.</exception>
    public Length HeightFrom(Datum datum, Length aboveGround) => datum switch
    {
        Datum.Ground => aboveGround,
        Datum.Top => Height - aboveGround,
        Datum.Foot => aboveGround + (Buried ?? throw new InvalidOperationException($"How far is post {Mark} buried?")),
        _ => throw new InvalidOperationException($"No datum is numbered {(int)datum}."),
    };

    /// <summary>True where a corner counts as a right angle whatever it is, as by the first rules.</summary>
    internal bool HasSquareCorner { get; init; }

    /// <summary>True where the bores of a row end and meet: a corner that its rope does not go through.</summary>
    public bool EndsRuns => Turn is not null && Corner == CornerKind.Ends;

    /// <summary>
    /// How far the bores of a corner lie off the square to their faces, in degrees: t / 2 up to 45 degrees; from there on the post is
    /// turned so that both share |90 − t| / 2. None at a round post. Source: plane geometry.
    /// </summary>
    public double SkewDegrees => !EndsRuns || HasSquareCorner || Shape == PostShape.Round ? 0
        : (double)Turn!.Value.Degrees is var t && t <= EqualSkewsFrom ? t / 2
        : Math.Abs(90 - t) / 2;

    /// <summary>
    /// How far a square post stands turned from the direction in which the line comes to it, in degrees, positive to the left: on the
    /// bisector of a gentle turn and of one that a bore goes through, else so that both bores share their skew.
    /// </summary>
    public double StandsTurnedBy => Turn is not { } turn ? 0
        : (turn.Side == TurnSide.Left ? 1 : -1) * (Corner == CornerKind.Through || (double)turn.Degrees <= EqualSkewsFrom ? (double)turn.Degrees / 2 : ((double)turn.Degrees - 90) / 2);
}

/// <summary>A hole that is in a post already.</summary>
/// <param name="Height">Its height above ground; null for that of its row.</param>
/// <param name="Across">Its diameter.</param>
/// <param name="Bore">Whether it follows the slope; null where the row says.</param>
public sealed record Hole(Length? Height, Length Across, BoreSlope? Bore);

/// <summary>The holes of a post by the mark of their row; equal to others by what they hold.</summary>
/// <param name="ByRow">The holes.</param>
public sealed record PostHoles(IReadOnlyDictionary<string, Hole> ByRow)
{
    /// <inheritdoc/>
    public bool Equals(PostHoles? other) =>
        other is not null && ByRow.Count == other.ByRow.Count && ByRow.All(hole => other.ByRow.GetValueOrDefault(hole.Key) == hole.Value);

    /// <inheritdoc/>
    public override int GetHashCode() => ByRow.Count;
}

/// <summary>Which way a line turns, seen walking along it.</summary>
public enum TurnSide
{
    /// <summary>To the left.</summary>
    Left,

    /// <summary>To the right.</summary>
    Right,
}

/// <summary>A change of the line's direction at a corner post.</summary>
/// <param name="Degrees">The turned angle, above 0 and under 180 degrees.</param>
/// <param name="Side">Left or right.</param>
public readonly record struct Turn(decimal Degrees, TurnSide Side)
{
    /// <summary>The turned angle in radians.</summary>
    public double Radians => (double)Degrees * Math.PI / 180;

    /// <summary>The turn as a job file writes it.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Degrees:0.############################} {(Side == TurnSide.Left ? "left" : "right")}");
}

/// <summary>How a section's width was measured.</summary>
public enum SpacingKind
{
    /// <summary>Level, from post face to post face.</summary>
    Clear,

    /// <summary>Level, from post centre to post centre.</summary>
    Centres,
}

/// <summary>The space between two neighbouring posts.</summary>
/// <param name="Spacing">How <paramref name="Width"/> was measured.</param>
/// <param name="Width">The level distance, positive.</param>
/// <param name="Rise">The ground's rise from the first post to the second; negative downhill.</param>
/// <param name="Hang">This section's own sag or slack, or null where the row's is used.</param>
public sealed record Section(SpacingKind Spacing, Length Width, Length Rise, Hang? Hang)
{
    /// <summary>What was taped from mouth to mouth at the height of single rows, by row; null where there is nothing of the kind.</summary>
    public IReadOnlyDictionary<string, Length>? ClearAt { get; init; }

    /// <summary>How far it is down beside the walk; null where the line says.</summary>
    public Length? Drop { get; init; }

    /// <summary>The section as a row has it: with the tape at the row's own height, if there is one.</summary>
    public Section For(string row) => ClearAt is not null && ClearAt.TryGetValue(row, out var clear) ? this with { Spacing = SpacingKind.Clear, Width = clear } : this;
}

/// <summary>How the looseness of a rope is given.</summary>
public enum HangKind
{
    /// <summary>The vertical drop from the chord at mid-span.</summary>
    Sag,

    /// <summary>The rope's length beyond the straight chord.</summary>
    Slack,
}

/// <summary>How loosely a rope hangs in a section.</summary>
/// <param name="Kind">Sag or slack.</param>
/// <param name="Amount">The amount, zero or more.</param>
public readonly record struct Hang(HangKind Kind, Length Amount);

/// <summary>A row of rope along a line.</summary>
/// <param name="Mark">The row's mark, unique in its line.</param>
/// <param name="Height">Height of the rope at the posts, above ground.</param>
/// <param name="Hang">Sag or slack in every section that has none of its own; null where all have.</param>
/// <param name="Treatments">What is done at each station of the line, overrides applied.</param>
/// <param name="Rope">This row's own rope, or null for the job's.</param>
public sealed record Row(string Mark, Length Height, Hang? Hang, IReadOnlyList<Treatment> Treatments, Rope? Rope)
{
    /// <summary>Its height at single posts, by post; null where it is the same at all.</summary>
    public IReadOnlyDictionary<string, Length>? Heights { get; init; }

    /// <summary>Whether its bores follow the slope; null where the job says.</summary>
    public BoreSlope? Bore { get; init; }

    /// <summary>True where none of its runs may be broken.</summary>
    public bool IsUnbroken { get; init; }

    /// <summary>The height of the rope at a post, above ground: a hole's that is there, else the row's there, else the row's.</summary>
    public Length HeightAt(Post post)
    {
        ArgumentNullException.ThrowIfNull(post);
        return HoleIn(post)?.Height ?? (Heights is not null && Heights.TryGetValue(post.Mark, out var height) ? height : Height);
    }

    /// <summary>The hole that is in a post already for this row, or null.</summary>
    public Hole? HoleIn(Post post) => post.Holes?.ByRow.GetValueOrDefault(Mark);

    /// <summary>True where the row's bore in a post is level.</summary>
    /// <param name="post">The post.</param>
    /// <param name="job">What the job says, where neither the hole nor the row does.</param>
    public bool IsLevelIn(Post post, BoreSlope job) => (HoleIn(post)?.Bore ?? Bore ?? job) == BoreSlope.Level;
}

/// <summary>What is added to the geometry to get a cut length.</summary>
/// <param name="Shrink">Share of the net length added for natural rope, which shrinks when wet.</param>
/// <param name="PerPiece">Added once a piece.</param>
/// <param name="RoundUp">Cut lengths are rounded up to a whole number of this.</param>
public sealed record Allowances(Share Shrink, Length PerPiece, Length RoundUp)
{
    /// <summary>What is done about the shrinking of natural rope, in place of a share that is added; null where there is none.</summary>
    public Wetting? Wetting { get; init; }

    /// <summary>
    /// The wetting that a natural rope is hung with: a share that is added, s, is rope that is trimmed after it has lost s / (1 + s).
    /// </summary>
    /// <returns>What share it loses, and how it is hung.</returns>
    public (double Loses, WettingManner Manner) WettingOfNatural() => Wetting is { } wetting
        ? (wetting.Loses.Millionths / 1e6, wetting.Manner)
        : (Shrink.Millionths / (1e6 + Shrink.Millionths), WettingManner.Trimmed);

    /// <summary>The length to cut: with what the rope shrinks and what is added once a piece, rounded up.</summary>
    /// <param name="net">The length on the finished railing.</param>
    /// <param name="isNatural">True for natural rope.</param>
    public Length Cut(Length net, bool isNatural)
    {
        var grown = (isNatural, Wetting) switch
        {
            (false, _) or (_, { Manner: WettingManner.Preshrunk }) => net,
            (_, { } wetting) => wetting.Loses.Before(net),
            _ => Shrink.Grow(net),
        };
        return (grown + PerPiece).RoundUpTo(RoundUp);
    }

    /// <summary>15 % shrinkage, nothing a piece, up to the next 1/4 in (common practice is 10 to 15 %; a short piece is scrap where a long one is trimmed).</summary>
    public static Allowances Default { get; } = new(Share.FromMillionths(150_000), Length.Zero, Length.FromSixtyFourths(16));
}

/// <summary>When new natural rope is let shrink.</summary>
public enum WettingManner
{
    /// <summary>Soaked and dried before it is measured and cut.</summary>
    Preshrunk,

    /// <summary>Cut longer, soaked and dried slack before it is hung, and what is over is cut off.</summary>
    Trimmed,

    /// <summary>Cut longer and hung dry with more sag, which it loses as it shrinks.</summary>
    HungLong,
}

/// <summary>What is done about the shrinking of natural rope.</summary>
/// <param name="Loses">The share of its length that new rope loses once it was wet and is dry again, under a half.</param>
/// <param name="Manner">When it is let shrink.</param>
public sealed record Wetting(Share Loses, WettingManner Manner)
{
    /// <summary>Rope loses less than this.</summary>
    public static Share Most { get; } = Share.FromMillionths(500_000);
}
