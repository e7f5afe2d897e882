using CutShop.Paper.Drawings;

namespace CutShop.Paper.Sheets;

/// <summary>Writes a table: columns as wide as their text asks, rows never torn, headings again on each page.</summary>
internal static class PdfTable
{
    private const double TextSize = 2.9;
    private const double LargeSize = 3.4;
    private const double HeadSize = 2.7;
    private const double LineHeight = 1.3;
    private const double Between = 2.2;

    /// <summary>Writes the table.</summary>
    public static void Write(SheetPages pages, TableBlock table)
    {
        var size = table.IsLarge && NaturalWidths(table, LargeSize).Sum() <= RoomOf(table, pages.Width) ? LargeSize : TextSize;
        var widths = ColumnWidths.Share(NaturalWidths(table, size), RoomOf(table, pages.Width));
        PdfBlocks.Heading(pages, table.Caption, keepWith: Math.Max(20, HeadAndFirstRow()));
        Head();
        foreach (var (number, row) in table.Rows.Index())
        {
            var strong = number >= table.Rows.Count - table.StrongRows;
            var height = HeightOf(Wrapped(row, widths, size, strong), size);
            if (pages.Need(height + 1))
                Head();
            Row(pages, row, widths, size, strong, strong ? Pen.Outline : Pen.Thin, table.FiguresFrom, table.StruckRows.Contains(number));
        }
        pages.Down(1.4);

        double HeadAndFirstRow() => HeightOf(Wrapped(table.Columns, widths, HeadSize, bold: true), HeadSize)
            + (table.Rows.Count == 0 ? 0 : HeightOf(Wrapped(table.Rows[0], widths, size, bold: table.StrongRows == table.Rows.Count), size)) + 2;

        void Head() => Row(pages, table.Columns, widths, HeadSize, bold: true, Pen.Outline, table.FiguresFrom);
    }

    private static void Row(SheetPages pages, IReadOnlyList<string> cells, double[] widths, double size, bool bold, Pen rule, int figuresFrom, bool isStruck = false)
    {
        var wrapped = Wrapped(cells, widths, size, bold);
        var height = HeightOf(wrapped, size);
        var shapes = new List<Shape>();
        var x = 0.0;
        for (var i = 0; i < wrapped.Count; i++)
        {
            var (at, anchor) = i >= figuresFrom ? (x + widths[i], TextAnchor.End) : (x, TextAnchor.Start);
            for (var line = 0; line < wrapped[i].Count; line++)
                shapes.Add(new DrawnText(new(at, 0.4 + size + line * size * LineHeight), wrapped[i][line], size, anchor, bold));
            x += widths[i] + Between;
        }
        if (isStruck)
            shapes.Add(new Stroke(new(0, 0.4 + size * 0.65), new(pages.Width, 0.4 + size * 0.65), Pen.Outline));
        shapes.Add(new Stroke(new(0, height), new(pages.Width, height), rule));
        pages.Put(shapes);
        pages.Down(height + 0.6);
    }

    private static List<IReadOnlyList<string>> Wrapped(IReadOnlyList<string> cells, double[] widths, double size, bool bold) =>
        [.. cells.Select((cell, i) => Lettering.Wrap(cell, widths[i], size, bold))];

    private static double HeightOf(List<IReadOnlyList<string>> wrapped, double size) =>
        wrapped.Max(lines => lines.Count) * size * LineHeight + 1;

    private static double RoomOf(TableBlock table, double width) => width - (table.Columns.Count - 1) * Between;

    private static double[] NaturalWidths(TableBlock table, double size)
    {
        const int Sampled = 200;
        return
        [
            .. table.Columns.Select((column, i) => table.Rows.Take(Sampled).SelectMany(row => row[i].Split('\n'))
                .Select(cell => Lettering.Width(CleanText.Of(cell), size, bold: table.StrongRows > 0) + 0.1)
                .Append(Lettering.Width(column, HeadSize, bold: true) + 0.1).Max()),
        ];
    }
}
