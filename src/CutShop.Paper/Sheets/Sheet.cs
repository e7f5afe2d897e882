using CutShop.Paper.Drawings;

namespace CutShop.Paper.Sheets;

/// <summary>A ticket or summary: what every writer prints from. Text in it is plain, never marked up.</summary>
/// <param name="Title">What the sheet is, such as <c>Cut ticket</c>.</param>
/// <param name="Subject">What it is about, printed large: a run, a post, a job.</param>
/// <param name="Foot">Printed at the foot of each page, so that a loose page finds its way home.</param>
/// <param name="Blocks">The content, in order.</param>
public sealed record Sheet(string Title, string Subject, string Foot, IReadOnlyList<Block> Blocks)
{
    /// <summary>What a link in a document's contents leads to; null for a sheet that stands in no contents.</summary>
    public string? Anchor { get; init; }

    /// <summary>Printed large at the head of each page of a sheet that is not to be followed; null for one that is.</summary>
    public string? Stamp { get; init; }

    /// <summary>Labels of boxes in the sheet's head that somebody signs in.</summary>
    public IReadOnlyList<string> SignBoxes { get; init; } = [];
}

/// <summary>A part of a sheet.</summary>
public abstract record Block;

/// <summary>A heading inside the sheet.</summary>
public sealed record HeadingBlock(string Text) : Block;

/// <summary>A paragraph.</summary>
public sealed record NoteBlock(string Text) : Block;

/// <summary>The one figure that must be read from two steps away.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Figure">The figure in the leading unit.</param>
/// <param name="Other">The figure in the other unit.</param>
public sealed record BigFigureBlock(string Label, string Figure, string Other) : Block;

/// <summary>Figures that must be read at arm's length, in one frame, and beside them what else is to be known.</summary>
/// <param name="Caption">What they are for.</param>
/// <param name="Figures">The figures.</param>
/// <param name="Beside">What stands beside them, a line each.</param>
public sealed record BigFiguresBlock(string Caption, IReadOnlyList<BigFigureBlock> Figures, IReadOnlyList<string> Beside) : Block;

/// <summary>Labelled values side by side.</summary>
public sealed record FieldsBlock(IReadOnlyList<Field> Fields) : Block
{
    /// <summary>True where all stand in one row on paper, each as wide as its text asks; else four to a row.</summary>
    public bool IsOneRow { get; init; }
}

/// <summary>A labelled value; without a value it is an empty box to write in.</summary>
public sealed record Field(string Label, string? Value);

/// <summary>A table. A line break in a cell starts a new line.</summary>
/// <param name="Caption">What the table lists.</param>
/// <param name="Columns">Column headings.</param>
/// <param name="Rows">Rows, each with as many cells as there are columns.</param>
public sealed record TableBlock(string Caption, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) : Block
{
    /// <summary>The first of the columns that hold figures, which stand at the right; none unless set.</summary>
    public int FiguresFrom { get; init; } = int.MaxValue;

    /// <summary>True for a table that people work from at arm's length: in large letters where its columns have room for them.</summary>
    public bool IsLarge { get; init; }

    /// <summary>How many of the last rows are printed strong.</summary>
    public int StrongRows { get; init; }

    /// <summary>The rows, from 0, that are struck out: the first line of each cell, so that what is written below says why.</summary>
    public IReadOnlySet<int> StruckRows { get; init; } = new HashSet<int>();
}

/// <summary>Things to do in order.</summary>
public sealed record StepsBlock(string Caption, IReadOnlyList<string> Steps) : Block;

/// <summary>What to beware of.</summary>
public sealed record CautionsBlock(string Caption, IReadOnlyList<string> Cautions) : Block;

/// <summary>Two parts beside each other; on a narrow screen, or where they are longer than a page, one under the other.</summary>
public sealed record SideBySideBlock(Block Left, Block Right) : Block;

/// <summary>A drawing.</summary>
/// <param name="Drawing">The drawing as it is wanted.</param>
public sealed record DrawingBlock(Drawing Drawing) : Block
{
    /// <summary>The same drawing smaller, from the largest: paper takes the first that the page has room for.</summary>
    public IEnumerable<Drawing> Smaller { get; init; } = [];
}
