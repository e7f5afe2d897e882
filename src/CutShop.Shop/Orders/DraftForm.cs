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

    /// <summary>True where nothing was typed.</summary>
    public bool IsEmpty() => Material.Length + Diameter.Trim().Length + Measured.Trim().Length == 0;
}

/// <summary>Allowances being typed.</summary>
public sealed record DraftAllowances
{
    /// <summary>Shrinkage of natural rope.</summary>
    public string Shrink { get; init; } = "";

    /// <summary>Added to each piece.</summary>
    public string PerPiece { get; init; } = "";

    /// <summary>Cut lengths are rounded up to this.</summary>
    public string RoundUp { get; init; } = "";
}

/// <summary>A line being typed.</summary>
public sealed record DraftLine
{
    /// <summary>The line's mark.</summary>
    public string Mark { get; init; } = "";

    /// <summary>Its posts in order.</summary>
    public IReadOnlyList<DraftPost> Posts { get; init; } = [];

    /// <summary>Its sections, one fewer than the posts.</summary>
    public IReadOnlyList<DraftSection> Sections { get; init; } = [];

    /// <summary>Its rows.</summary>
    public IReadOnlyList<DraftRow> Rows { get; init; } = [];
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

    /// <summary>What is done at the first post.</summary>
    public string Start { get; init; } = "";

    /// <summary>What is done at the last post.</summary>
    public string Finish { get; init; } = "";

    /// <summary>What is done at the posts between.</summary>
    public string Between { get; init; } = "";

    /// <summary>What is done otherwise at single posts: <c>A4 wrap 2, A7 wrap 3</c>.</summary>
    public string At { get; init; } = "";

    /// <summary>The row's own rope, if it has one.</summary>
    public DraftRope Rope { get; init; } = new();
}
