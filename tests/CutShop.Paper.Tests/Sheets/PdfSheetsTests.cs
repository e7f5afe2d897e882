using CutShop.Testing.Rendering;

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

    [Fact]
    public void Two_things_beside_each_other_start_at_one_height_and_what_follows_clears_both()
    {
        var steps = new StepsBlock("Left", [.. Enumerable.Range(1, 6).Select(i => $"step{i}")]);
        var text = Poppler.TextOf(Pdf(PaperSettings.Default, new SideBySideBlock(steps, new CautionsBlock("Right", ["care"])), Note("after"))).Split('\n').ToList();
        Assert.Contains(text, line => line.Contains("Left", StringComparison.Ordinal) && line.Contains("Right", StringComparison.Ordinal));
        Assert.True(text.FindIndex(line => line.Contains("after", StringComparison.Ordinal)) > text.FindIndex(line => line.Contains("step6", StringComparison.Ordinal)));
    }

    [Fact]
    public void Two_things_that_are_longer_than_a_page_follow_one_another_and_lose_nothing()
    {
        var steps = new StepsBlock("Left", [.. Enumerable.Range(1, 120).Select(i => $"step{i}")]);
        var pdf = Pdf(PaperSettings.Default, new SideBySideBlock(steps, new CautionsBlock("Right", ["care"])));
        var text = Poppler.WordsOf(pdf);
        foreach (var i in Enumerable.Range(1, 120))
            Assert.Contains($"step{i} ", text, StringComparison.Ordinal);
        Assert.Contains("care", text, StringComparison.Ordinal);
    }

    // A letter page has 232 mm between head and foot: 190 mm leave room for the smaller drawing only.
    [Fact]
    public void A_drawing_is_taken_as_large_as_the_page_has_room_for()
    {
        DrawingBlock Sized(params double[] heights) => new(Named(heights[0])) { Smaller = heights.Skip(1).Select(Named) };
        var pdf = Pdf(PaperSettings.Default, new DrawingBlock(Named(190)), Sized(60, 30, 10));
        Assert.Single(Poppler.PageSizes(pdf));
        Assert.Contains("tall30", Poppler.WordsOf(pdf), StringComparison.Ordinal);
        var next = Pdf(PaperSettings.Default, new DrawingBlock(Named(190)), Sized(120, 60));
        Assert.Equal(2, Poppler.PageSizes(next).Count);
        Assert.Contains("tall120", Poppler.WordsOf(next), StringComparison.Ordinal);
    }

    private static Drawing Named(double height) => new("", "", 100, height, [new DrawnText(new(0, 5), $"tall{height}", 3)]);

    private static NoteBlock Note(string text) => new(text);

    private static byte[] Pdf(PaperSettings settings, params Block[] blocks) =>
        PdfSheets.Write("t", [new Sheet("Kind", "Subject", "foot", blocks)], settings);

    private sealed class Told(List<int> counts) : IProgress<int>
    {
        public void Report(int value) => counts.Add(value);
    }
}
