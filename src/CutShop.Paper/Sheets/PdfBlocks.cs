using CutShop.Paper.Drawings;
using CutShop.Paper.Words;

namespace CutShop.Paper.Sheets;

/// <summary>Writes the blocks of a sheet onto its pages.</summary>
internal static class PdfBlocks
{
    private const double TextSize = 3.2;
    private const double SmallSize = 2.8;
    private const double LineHeight = 1.3;
    private const double Gap = 3;
    private const double HeadingHeight = 6.2;

    /// <summary>Writes a block, going on to new pages as needed.</summary>
    public static void Write(SheetPages pages, Block block)
    {
        switch (block)
        {
            case HeadingBlock h:
                Heading(pages, h.Text, keepWith: 30);
                break;
            case NoteBlock n:
                Paragraph(pages, n.Text, indent: 0, mark: "");
                pages.Down(Gap);
                break;
            case BigFigureBlock b:
                BigFigure(pages, b);
                break;
            case BigFiguresBlock b:
                BigFigures(pages, b);
                break;
            case FieldsBlock f:
                Fields(pages, f);
                break;
            case TableBlock t:
                PdfTable.Write(pages, t);
                break;
            case StepsBlock s:
                Heading(pages, s.Caption, keepWith: 12);
                for (var i = 0; i < s.Steps.Count; i++)
                    Paragraph(pages, s.Steps[i], indent: 8, $"{Figures.Count(i + 1)}.");
                pages.Down(Gap);
                break;
            case CautionsBlock c:
                Cautions(pages, c);
                break;
            case SideBySideBlock s:
                pages.SideBySide(() => Write(pages, s.Left), () => Write(pages, s.Right), Gap);
                break;
            case DrawingBlock d:
                Drawing(pages, d);
                break;
            default:
                throw new NotSupportedException($"No PDF for {block.GetType().Name}.");
        }
    }

    /// <summary>Writes a heading on the page that has room for what belongs to it.</summary>
    internal static void Heading(SheetPages pages, string text, double keepWith)
    {
        pages.Need(HeadingHeight + keepWith);
        pages.Put([new DrawnText(new(0, 4), text, 3.8, Bold: true)]);
        pages.Down(HeadingHeight);
    }

    private static void Paragraph(SheetPages pages, string text, double indent, string mark)
    {
        var size = SizeOn(pages);
        var lines = Lettering.Wrap(text, pages.Width - indent, size);
        pages.Need(Math.Min(lines.Count, 4) * size * LineHeight);
        for (var i = 0; i < lines.Count; i++)
        {
            pages.Need(size * LineHeight);
            if (i == 0 && mark.Length > 0)
                pages.Put([new DrawnText(new(indent - 2, size), mark, size, TextAnchor.End)]);
            pages.Put([new DrawnText(new(indent, size), lines[i], size)]);
            pages.Down(size * LineHeight);
        }
        pages.Down(0.8);
    }

    /// <summary>The size of running text: smaller where two things stand beside each other.</summary>
    private static double SizeOn(SheetPages pages) => pages.IsBeside ? SmallSize : TextSize;

    private static void BigFigure(SheetPages pages, BigFigureBlock block)
    {
        const double Height = 27;
        pages.Need(Height + Gap);
        var (figure, size) = Lettering.Fit(block.Figure, pages.Width - 8, 13, 6, bold: true);
        pages.Put(
        [
            new Box(0, 0, pages.Width, Height, Pen.Ground, Fill.None),
            new DrawnText(new(4, 5.2), block.Label, TextSize),
            new DrawnText(new(4, 17), figure, size, Bold: true),
            new DrawnText(new(4, 24.3), block.Other, 6),
        ]);
        pages.Down(Height + Gap);
    }

    private static void BigFigures(SheetPages pages, BigFiguresBlock block)
    {
        const double Size = 9;
        const double Edge = 3;
        const double BesideShare = 0.36;
        var column = (pages.Width - Edge) * (1 - BesideShare) / block.Figures.Count;
        var (besideX, besideWidth) = (pages.Width * (1 - BesideShare), pages.Width * BesideShare - Edge);
        var beside = block.Beside.SelectMany(line => Lettering.Wrap(line, besideWidth, SmallSize)).ToList();
        var others = block.Figures.Select(figure => Lettering.Wrap(figure.Other, column - Edge, SmallSize)).ToList();
        var height = Math.Max(18.8 + others.Max(lines => lines.Count) * SmallSize * LineHeight, 3 + beside.Count * SmallSize * LineHeight);
        pages.Need(height + Gap);
        var shapes = new List<Shape>
        {
            new Box(0, 0, pages.Width, height, Pen.Ground, Fill.None),
            new DrawnText(new(Edge, 4.4), block.Caption, TextSize, Bold: true),
        };
        foreach (var (i, figure) in block.Figures.Index())
        {
            var x = Edge + i * column;
            var (text, size) = Lettering.Fit(figure.Figure, column - Edge, Size, Size * 0.5, bold: true);
            shapes.AddRange([new DrawnText(new(x, 8.2), figure.Label, SmallSize), new DrawnText(new(x, 16.3), text, size, Bold: true)]);
            foreach (var (k, line) in others[i].Index())
                shapes.Add(new DrawnText(new(x, 20.5 + k * SmallSize * LineHeight), line, SmallSize));
        }
        foreach (var (i, line) in beside.Index())
            shapes.Add(new DrawnText(new(besideX, 4.4 + i * SmallSize * LineHeight), line, SmallSize));
        pages.Put(shapes);
        pages.Down(height + 2);
    }

    private static void Drawing(SheetPages pages, DrawingBlock block)
    {
        IReadOnlyList<Drawing> all = [block.Drawing, .. block.Smaller];
        if (!all.Any(Fits))
            pages.Need(all[^1].Height);
        var drawing = all.FirstOrDefault(Fits) ?? all[^1];
        pages.Put(drawing.Shapes);
        pages.Down(drawing.Height + Gap);

        bool Fits(Drawing one) => one.Height <= pages.Left;
    }

    private static void Fields(SheetPages pages, FieldsBlock block)
    {
        const int Columns = 4;
        foreach (var row in block.IsOneRow ? [[.. block.Fields]] : block.Fields.Chunk(Columns))
        {
            double[] widths = block.IsOneRow
                ? ColumnWidths.Share([.. row.Select(NaturalWidth)], pages.Width - (row.Length - 1) * Gap)
                : [.. row.Select(_ => (pages.Width - (Columns - 1) * Gap) / Columns)];
            FieldRow(pages, row, widths);
        }
        pages.Down(Gap - 1.5);
    }

    private static double NaturalWidth(Field field) => Math.Max(
        Lettering.Width(field.Label, SmallSize), Lettering.Width(CleanText.Of(field.Value ?? ""), TextSize, bold: true)) + 0.1;

    private static void FieldRow(SheetPages pages, Field[] row, double[] widths)
    {
        const double BoxHeight = 8;
        var lines = row.Zip(widths, (f, width) => f.Value is null ? [] : Lettering.Wrap(f.Value, width, TextSize, bold: true)).ToList();
        var height = row.Zip(lines, (f, l) => f.Value is null ? BoxHeight : l.Count * TextSize * LineHeight).Max() + SmallSize + 1.6;
        pages.Need(height + Gap);
        var x = 0.0;
        for (var i = 0; i < row.Length; i++)
        {
            var (label, size) = Lettering.Fit(row[i].Label, widths[i], SmallSize, SmallSize * 0.7);
            pages.Put([new DrawnText(new(x, SmallSize), label, size)]);
            if (row[i].Value is null)
                pages.Put([new Box(x, SmallSize + 1.6, widths[i], BoxHeight, Pen.Hidden, Fill.None)]);
            for (var k = 0; k < lines[i].Count; k++)
                pages.Put([new DrawnText(new(x, SmallSize + 1 + TextSize + k * TextSize * LineHeight), lines[i][k], TextSize, Bold: true)]);
            x += widths[i] + Gap;
        }
        pages.Down(height + 1.5);
    }

    private static void Cautions(SheetPages pages, CautionsBlock block)
    {
        const double Indent = 6;
        const double Bullet = 3;
        var size = SizeOn(pages);
        var items = block.Cautions.Select(c => Lettering.Wrap(c, pages.Width - Indent - Bullet - 3, size)).ToList();
        var height = 9 + items.Sum(lines => lines.Count * size * LineHeight + 0.6);
        pages.Need(height);
        var shapes = new List<Shape>
        {
            new Box(0, 0, pages.Width, height, Pen.Outline, Fill.None),
            new Box(0, 0, 2, height, Pen.None, Fill.Ink),
            new DrawnText(new(Indent, 5.5), block.Caption, 3.8, Bold: true),
        };
        var y = 8.0;
        foreach (var lines in items)
        {
            shapes.Add(new DrawnText(new(Indent, y + size), "•", size));
            foreach (var line in lines)
            {
                shapes.Add(new DrawnText(new(Indent + Bullet, y + size), line, size));
                y += size * LineHeight;
            }
            y += 0.6;
        }
        pages.Put(shapes);
        pages.Down(height + Gap);
    }
}
