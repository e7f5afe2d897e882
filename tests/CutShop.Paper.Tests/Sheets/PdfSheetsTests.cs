using CutShop.Paper.Tests.Rendering;

namespace CutShop.Paper.Tests.Sheets;

public sealed class PdfSheetsTests
{
    // Letter is 8 1/2 x 11 in, 612 x 792 points; A4 is 210 x 297 mm, 595.276 x 841.890 points.
    [Fact]
    public void Pages_have_their_exact_size()
    {
        Assert.Equal([(612.0, 792.0)], Poppler.PageSizes(Pdf(PaperSettings.Default, Note("a"))));
        var (width, height) = Poppler.PageSizes(Pdf(PaperSettings.Default with { Page = PageSize.A4 }, Note("a")))[0];
        Assert.Equal(595.276, width, 2);
        Assert.Equal(841.890, height, 2);
    }

    [Fact]
    public void A_line_of_100_mm_is_100_mm_on_paper()
    {
        var pdf = Pdf(PaperSettings.Default, new DrawingBlock(new Drawing("", "", 120, 60, [new Box(10, 10, 100, 40, Pen.None, Fill.Ink)])));
        var page = Poppler.Render(pdf, 300)[0];
        var row = Enumerable.Range(0, page.Height).Max(y => Enumerable.Range(0, page.Width).Count(x => page.GetPixel(x, y).Green < 20));
        // The head's rule is longer than the box but thinner; a column through the box's middle gives its height.
        var middle = (int)((12 + 60) / 25.4 * 300);
        var tall = Enumerable.Range(200, page.Height - 400).Count(y => page.GetPixel(middle, y).Green < 20);
        Assert.InRange(tall, 471, 474 + 12);
        Assert.InRange(row, 1181 - 2, page.Width);
    }

    [Fact]
    public void Every_row_of_a_long_table_is_on_some_page_under_its_headings()
    {
        var rows = Enumerable.Range(1, 300).Select(i => (IReadOnlyList<string>)[$"row{i}", "x"]).ToList();
        var pdf = Pdf(PaperSettings.Default, new TableBlock("All", ["Which", "What"], rows));
        var text = Poppler.WordsOf(pdf);
        foreach (var row in rows)
            Assert.Contains($"{row[0]} ", text, StringComparison.Ordinal);
        var pages = Poppler.PageSizes(pdf).Count;
        Assert.InRange(pages, 2, 20);
        Assert.Equal(pages, text.Split("Which").Length - 1);
        Assert.Contains($"page {pages} of {pages}", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Odd_characters_print_without_harm()
    {
        const string Odd = "½ ⅔ Ø ≈ → \u0007 \uD800 \U0001F6A2 ż";
        var text = Poppler.WordsOf(Pdf(PaperSettings.Default, Note(Odd)));
        foreach (var letter in "½⅔Ø≈→ż")
            Assert.Contains(letter, text);
    }

    [Fact]
    public void Each_sheet_starts_on_a_page_of_its_own_and_is_told()
    {
        var sheets = Enumerable.Range(1, 3).Select(i => new Sheet("t", $"s{i}", "f", [Note("a")])).ToList();
        var told = new List<int>();
        var pdf = PdfSheets.Write("t", sheets, PaperSettings.Default, new Told(told));
        Assert.Equal(3, Poppler.PageSizes(pdf).Count);
        Assert.Equal([1, 2, 3], told);
    }

    private static NoteBlock Note(string text) => new(text);

    private static byte[] Pdf(PaperSettings settings, params Block[] blocks) =>
        PdfSheets.Write("t", [new Sheet("Kind", "Subject", "foot", blocks)], settings);

    private sealed class Told(List<int> counts) : IProgress<int>
    {
        public void Report(int value) => counts.Add(value);
    }
}
