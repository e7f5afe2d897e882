namespace CutShop.Paper;

/// <summary>Writes the blocks of a sheet onto its pages.</summary>
internal static class PdfBlocks
{
    private const double TextSize = 3.2;
    private const double SmallSize = 2.8;
    private const double LineHeight = 1.3;
    private const double Gap = 3;

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
            case DrawingBlock d:
                pages.Need(d.Drawing.Height + Gap);
                pages.Put(d.Drawing.Shapes);
                pages.Down(d.Drawing.Height + Gap);
                break;
            default:
                throw new NotSupportedException($"No PDF for {block.GetType().Name}.");
        }
    }

    /// <summary>Writes a heading on the page that has room for what belongs to it.</summary>
    internal static void Heading(SheetPages pages, string text, double keepWith)
    {
        pages.Need(6.5 + keepWith);
        pages.Put([new Words(new(0, 4), text, 3.8, Bold: true)]);
        pages.Down(6.5);
    }

    private static void Paragraph(SheetPages pages, string text, double indent, string mark)
    {
        var lines = Lettering.Wrap(text, pages.Width - indent, TextSize);
        pages.Need(Math.Min(lines.Count, 4) * TextSize * LineHeight);
        for (var i = 0; i < lines.Count; i++)
        {
            pages.Need(TextSize * LineHeight);
            if (i == 0 && mark.Length > 0)
                pages.Put([new Words(new(indent - 2, TextSize), mark, TextSize, TextAnchor.End)]);
            pages.Put([new Words(new(indent, TextSize), lines[i], TextSize)]);
            pages.Down(TextSize * LineHeight);
        }
        pages.Down(0.8);
    }

    private static void BigFigure(SheetPages pages, BigFigureBlock block)
    {
        const double Height = 30;
        pages.Need(Height + Gap);
        var (figure, size) = Lettering.Fit(block.Figure, pages.Width - 8, 13, 6, bold: true);
        pages.Put(
        [
            new Box(0, 0, pages.Width, Height, Pen.Ground, Fill.None),
            new Words(new(4, 6), block.Label, TextSize),
            new Words(new(4, 18.5), figure, size, Bold: true),
            new Words(new(4, 26.5), block.Other, 6),
        ]);
        pages.Down(Height + Gap);
    }

    private static void Fields(SheetPages pages, FieldsBlock block)
    {
        const int Columns = 4;
        const double BoxHeight = 8;
        var width = (pages.Width - (Columns - 1) * Gap) / Columns;
        foreach (var row in block.Fields.Chunk(Columns))
        {
            var lines = row.Select(f => f.Value is null ? [] : Lettering.Wrap(f.Value, width, TextSize, bold: true)).ToList();
            var height = row.Zip(lines, (f, l) => f.Value is null ? BoxHeight : l.Count * TextSize * LineHeight).Max() + SmallSize + 1.6;
            pages.Need(height + Gap);
            for (var i = 0; i < row.Length; i++)
            {
                var x = i * (width + Gap);
                var (label, size) = Lettering.Fit(row[i].Label, width, SmallSize, SmallSize * 0.7);
                pages.Put([new Words(new(x, SmallSize), label, size)]);
                if (row[i].Value is null)
                    pages.Put([new Box(x, SmallSize + 1.6, width, BoxHeight, Pen.Hidden, Fill.None)]);
                for (var k = 0; k < lines[i].Count; k++)
                    pages.Put([new Words(new(x, SmallSize + 1 + TextSize + k * TextSize * LineHeight), lines[i][k], TextSize, Bold: true)]);
            }
            pages.Down(height + 1.5);
        }
        pages.Down(Gap - 1.5);
    }

    private static void Cautions(SheetPages pages, CautionsBlock block)
    {
        const double Indent = 6;
        const double Bullet = 3;
        var items = block.Cautions.Select(c => Lettering.Wrap(c, pages.Width - Indent - Bullet - 3, TextSize)).ToList();
        var height = 9 + items.Sum(lines => lines.Count * TextSize * LineHeight + 0.6);
        pages.Need(height);
        var shapes = new List<Shape>
        {
            new Box(0, 0, pages.Width, height, Pen.Outline, Fill.None),
            new Box(0, 0, 2, height, Pen.None, Fill.Ink),
            new Words(new(Indent, 5.5), block.Caption, 3.8, Bold: true),
        };
        var y = 8.0;
        foreach (var lines in items)
        {
            shapes.Add(new Words(new(Indent, y + TextSize), "•", TextSize));
            foreach (var line in lines)
            {
                shapes.Add(new Words(new(Indent + Bullet, y + TextSize), line, TextSize));
                y += TextSize * LineHeight;
            }
            y += 0.6;
        }
        pages.Put(shapes);
        pages.Down(height + Gap);
    }
}
