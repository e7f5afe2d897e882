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
/// <param name="Datum">Where heights are told from on tickets; heights in the job itself are above ground.</param>
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

    /// <summary>The posts of all lines, in order.</summary>
    public IEnumerable<Post> Posts => Lines.SelectMany(line => line.Posts);
}

/// <summary>A line of posts with the rope rows strung along it.</summary>
/// <param name="Mark">The line's mark, unique in the job.</param>
/// <param name="Posts">Posts in order along the line, at least two.</param>
/// <param name="Sections">One fewer than the posts; the i-th is between posts i and i + 1.</param>
/// <param name="Rows">Rows of rope, at least one.</param>
public sealed record Line(string Mark, IReadOnlyList<Post> Posts, IReadOnlyList<Section> Sections, IReadOnlyList<Row> Rows);

/// <summary>The shape of a post's cross-section.</summary>
public enum PostShape
{
    /// <summary>Square timber.</summary>
    Square,

    /// <summary>A round post or piling.</summary>
    Round,
}

/// <summary>Where heights on a post are told from.</summary>
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
    /// <summary>A height above ground, told from a datum.</summary>
    /// <exception cref="InvalidOperationException">It is told from the foot, and nobody said how far the post is buried.</exception>
    public Length HeightFrom(Datum datum, Length aboveGround) => datum switch
    {
        Datum.Ground => aboveGround,
        Datum.Top => Height - aboveGround,
        Datum.Foot => aboveGround + (Buried ?? throw new InvalidOperationException($"How far is post {Mark} buried?")),
        _ => throw new InvalidOperationException($"No datum is numbered {(int)datum}."),
    };
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
/// <param name="Hang">This section's own sag or slack, or null where the row's counts.</param>
public sealed record Section(SpacingKind Spacing, Length Width, Length Rise, Hang? Hang);

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
/// <param name="Treatments">What is done at each post, one a post: overrides applied.</param>
/// <param name="Rope">This row's own rope, or null for the job's.</param>
public sealed record Row(string Mark, Length Height, Hang? Hang, IReadOnlyList<Treatment> Treatments, Rope? Rope);

/// <summary>What is added to the geometry to get a cut length.</summary>
/// <param name="Shrink">Share of the net length added for natural rope, which shrinks when wet.</param>
/// <param name="PerPiece">Added once a piece.</param>
/// <param name="RoundUp">Cut lengths are rounded up to a whole number of this.</param>
public sealed record Allowances(Share Shrink, Length PerPiece, Length RoundUp)
{
    /// <summary>15 % shrinkage, nothing a piece, up to the next 1/4 in (common practice is 10 to 15 %; a short piece is scrap where a long one is trimmed).</summary>
    public static Allowances Default { get; } = new(Share.FromMillionths(150_000), Length.Zero, Length.FromSixtyFourths(16));
}
