namespace CutShop.Shop.Orders;

// A job as it is being typed. Every member is the text of one field, just as it was typed; empty where nothing was.
// The members have the names of the job file, so that a problem's path leads to its field.

/// <summary>A job being typed.</summary>
public sealed record DraftForm
{
    /// <summary>The most posts that are edited in a form; larger jobs come as job files.</summary>
    public const int MostPosts = 400;

    /// <summary>The job's number.</summary>
    public string Number { get; init; } = "";

    /// <summary>The number of the stored job that this draft is to change, as the desk said; empty for a job of its own. A number alone never makes a change.</summary>
    public string Changes { get; init; } = "";

    /// <summary>Who orders.</summary>
    public string Customer { get; init; } = "";

    /// <summary>The day it is due.</summary>
    public string Due { get; init; } = "";

    /// <summary>The unit of a number typed without one; empty where each must have its own.</summary>
    public string Unit { get; init; } = "";

    /// <summary><c>yes</c> where all rope must come from one lot.</summary>
    public string OneLot { get; init; } = "";

    /// <summary>Where heights are measured from on drill tickets: top, ground or foot; empty means the ground.</summary>
    public string Datum { get; init; } = "";

    /// <summary>Whether bores follow the slope, raked or level; empty means raked.</summary>
    public string Bore { get; init; } = "";

    /// <summary>Who bores the posts, shop or site; empty means the shop.</summary>
    public string Boring { get; init; } = "";

    /// <summary>The longest cut a piece may have.</summary>
    public string Longest { get; init; } = "";

    /// <summary>The rope of rows that have none of their own.</summary>
    public DraftRope Rope { get; init; } = new();

    /// <summary>What is added to the geometry.</summary>
    public DraftAllowances Allowances { get; init; } = new();

    /// <summary>The lines of posts.</summary>
    public IReadOnlyList<DraftLine> Lines { get; init; } = [];

    /// <summary>True where the desk said that this draft changes the stored job of its number.</summary>
    public bool IsChangeOf(string number) => Changes.Trim() == number;

    /// <summary>Posts over all lines.</summary>
    public int Posts() => Lines.Sum(line => line.Posts.Count);
}

/// <summary>A rope being typed.</summary>
public sealed record DraftRope
{
    /// <summary>What it is made of.</summary>
    public string Material { get; init; } = "";

    /// <summary>Nominal diameter.</summary>
    public string Diameter { get; init; } = "";

    /// <summary>Diameter measured on the coil.</summary>
    public string Measured { get; init; } = "";

    /// <summary>How it is laid or plaited, by the shop's own list.</summary>
    public string Construction { get; init; } = "";

    /// <summary>Its colour, by the shop's own list.</summary>
    public string Colour { get; init; } = "";

    /// <summary>True where nothing was typed.</summary>
    public bool IsEmpty() => Material.Length + Diameter.Trim().Length + Measured.Trim().Length + Construction.Trim().Length + Colour.Trim().Length == 0;
}

/// <summary>Allowances being typed.</summary>
public sealed record DraftAllowances
{
    /// <summary>Shrinkage of natural rope.</summary>
    public string Shrink { get; init; } = "";

    /// <summary>What is done about the shrinking in place of that share.</summary>
    public DraftWetting Wetting { get; init; } = new();

    /// <summary>Added to each piece.</summary>
    public string PerPiece { get; init; } = "";

    /// <summary>Cut lengths are rounded up to this.</summary>
    public string RoundUp { get; init; } = "";
}

/// <summary>What is done about the shrinking of natural rope, being typed.</summary>
public sealed record DraftWetting
{
    /// <summary>The share of its length that new rope loses.</summary>
    public string Loses { get; init; } = "";

    /// <summary>When it is let shrink: preshrunk, trimmed or hung-long.</summary>
    public string Manner { get; init; } = "";
}

/// <summary>A line being typed.</summary>
public sealed record DraftLine
{
    /// <summary>The <see cref="Course"/> of a line whose posts stand on an arc: it has a <see cref="Curve"/> in place of sections and turns.</summary>
    public const string OnCurve = "curve";

    /// <summary>The <see cref="Course"/> of a ring, whose last section leads back to its first post.</summary>
    public const string Closed = "closed";

    /// <summary>The line's mark.</summary>
    public string Mark { get; init; } = "";

    /// <summary>How the line goes: <see cref="OnCurve"/>, <see cref="Closed"/>, or empty for a line that is measured section by section.</summary>
    public string Course { get; init; } = "";

    /// <summary>How far it is down beside the walk.</summary>
    public string Drop { get; init; } = "";

    /// <summary>Who bores its posts; empty means as the job.</summary>
    public string Boring { get; init; } = "";

    /// <summary>The arc that its posts stand on.</summary>
    public DraftCurve Curve { get; init; } = new();

    /// <summary>Its posts in order.</summary>
    public IReadOnlyList<DraftPost> Posts { get; init; } = [];

    /// <summary>Its sections: one fewer than the posts, as many in a ring, none on a curve.</summary>
    public IReadOnlyList<DraftSection> Sections { get; init; } = [];

    /// <summary>Its rows.</summary>
    public IReadOnlyList<DraftRow> Rows { get; init; } = [];
}

/// <summary>An arc of posts being typed.</summary>
public sealed record DraftCurve
{
    /// <summary>Its radius, where no string was measured.</summary>
    public string Radius { get; init; } = "";

    /// <summary>A string drawn taut across it.</summary>
    public string Taut { get; init; } = "";

    /// <summary>The middle ordinate of that string.</summary>
    public string Middle { get; init; } = "";

    /// <summary>From post centre to post centre, where no angle is given.</summary>
    public string Chord { get; init; } = "";

    /// <summary>The angle of the whole arc in degrees.</summary>
    public string Angle { get; init; } = "";

    /// <summary>Which way it turns.</summary>
    public string Turns { get; init; } = "";

    /// <summary>The ground's rise in each section.</summary>
    public string Rise { get; init; } = "";

    /// <summary>The sag of its sections.</summary>
    public string Sag { get; init; } = "";

    /// <summary>The slack of its sections.</summary>
    public string Slack { get; init; } = "";
}

/// <summary>A post being typed.</summary>
public sealed record DraftPost
{
    /// <summary>Its mark.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Square or round.</summary>
    public string Shape { get; init; } = "";

    /// <summary>Measured width or diameter.</summary>
    public string Across { get; init; } = "";

    /// <summary>Height above ground.</summary>
    public string Height { get; init; } = "";

    /// <summary>The line's turn here.</summary>
    public string Turn { get; init; } = "";

    /// <summary>Its length below ground.</summary>
    public string Buried { get; init; } = "";

    /// <summary>The tape round a round post, in place of its width.</summary>
    public string Girth { get; init; } = "";

    /// <summary>What its bores do where the line turns, ends or through; empty means ends.</summary>
    public string Corner { get; init; } = "";

    /// <summary>Who bores it; empty means as the line.</summary>
    public string Boring { get; init; } = "";

    /// <summary>The holes that are there already, by row: <c>top: 1 5/8 at 35 1/2 level</c>.</summary>
    public string Holes { get; init; } = "";

    /// <summary>A post like this one that stands elsewhere: without what belongs to its place, the turn and the holes that are there.</summary>
    public DraftPost Elsewhere(string mark) => this with { Mark = mark, Turn = "", Corner = "", Holes = "" };
}

/// <summary>A section being typed.</summary>
public sealed record DraftSection
{
    /// <summary>How the width was measured: clear or centres.</summary>
    public string Spacing { get; init; } = "clear";

    /// <summary>The width.</summary>
    public string Width { get; init; } = "";

    /// <summary>The ground's rise.</summary>
    public string Rise { get; init; } = "";

    /// <summary>This section's own sag.</summary>
    public string Sag { get; init; } = "";

    /// <summary>This section's own slack.</summary>
    public string Slack { get; init; } = "";

    /// <summary>The tape at single rows' own heights: <c>top: 71 1/2</c>.</summary>
    public string ClearAt { get; init; } = "";

    /// <summary>How far it is down beside the walk; empty means as the line.</summary>
    public string Drop { get; init; } = "";
}

/// <summary>A row being typed.</summary>
public sealed record DraftRow
{
    /// <summary>Its mark.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Height of the rope at the posts.</summary>
    public string Height { get; init; } = "";

    /// <summary>Sag of every section.</summary>
    public string Sag { get; init; } = "";

    /// <summary>Slack of every section.</summary>
    public string Slack { get; init; } = "";

    /// <summary>Its height at single posts: <c>A2: 34, A3: 33 1/2</c>.</summary>
    public string Heights { get; init; } = "";

    /// <summary>What is done at the first post; <c>eye</c> has its figures in <see cref="StartEye"/>.</summary>
    public string Start { get; init; } = "";

    /// <summary>The eye at the first post.</summary>
    public DraftEye StartEye { get; init; } = new();

    /// <summary>What is done at the last post; <c>eye</c> has its figures in <see cref="FinishEye"/>.</summary>
    public string Finish { get; init; } = "";

    /// <summary>The eye at the last post.</summary>
    public DraftEye FinishEye { get; init; } = new();

    /// <summary>What is done at the posts between.</summary>
    public string Between { get; init; } = "";

    /// <summary>What is done otherwise at single posts: <c>A4 wrap 2, A7 wrap 3</c>.</summary>
    public string At { get; init; } = "";

    /// <summary>Whether its bores follow the slope; empty means as the job.</summary>
    public string Bore { get; init; } = "";

    /// <summary><c>yes</c> where none of its runs may be broken.</summary>
    public string Unbroken { get; init; } = "";

    /// <summary>The row's own rope, if it has one.</summary>
    public DraftRope Rope { get; init; } = new();
}

/// <summary>An eye being typed.</summary>
public sealed record DraftEye
{
    /// <summary>What an end with an eye is called.</summary>
    public const string Word = "eye";

    /// <summary>Diameter of the pin.</summary>
    public string Pin { get; init; } = "";

    /// <summary>From the pin's centre to the eye's throat.</summary>
    public string Length { get; init; } = "";

    /// <summary>From the post's face to the pin's centre.</summary>
    public string Reach { get; init; } = "";

    /// <summary>Full tucks of the splice.</summary>
    public string Tucks { get; init; } = "";

    /// <summary>Diameter of the thimble's groove.</summary>
    public string Thimble { get; init; } = "";

    /// <summary>True where nothing was typed.</summary>
    public bool IsEmpty() => Pin.Trim().Length + Length.Trim().Length + Reach.Trim().Length + Tucks.Trim().Length + Thimble.Trim().Length == 0;
}
