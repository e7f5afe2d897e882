using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Quotes;

public sealed class QuoteSheetTests
{
    internal static readonly QuoteFigures Figures = new(
        7,
        new(2026, 11, 25),
        new(2026, 12, 25),
        [new("Rope", "20 ft", "2.10", "42.00"), new("Boring", "2", "4.50", "9.00"), new("Cutting", "1", "3.00", "3.00"), new("Packing", "1", "12.00", "12.00"), new("Delivery", "1", "40.00", "40.00")],
        "106.00",
        "8 %",
        "8.48",
        "114.48");

    [Fact]
    public void A_quote_of_few_lines_is_two_pages_with_all_that_belongs_to_it()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.TwoPosts());
        foreach (var page in new[] { PageSize.Letter, PageSize.A4 })
        {
            var settings = PaperSettings.Default with { Page = page };
            var pdf = PdfSheets.Write("q", [QuoteSheet.Of("Lantern Quay Rope", "1 Quay Road\nLantern Quay", Figures, takeoff, settings)], settings);
            Assert.Equal(2, Poppler.PageSizes(pdf).Count);
            var words = Poppler.WordsOf(pdf);
            foreach (var said in new[] { "Quote 7", "114.48", "Delivery", "What is included", "not fall protection", "Line B, elevation", "Plan, seen from above", "2026-12-25" })
                Assert.Contains(said, words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_posts_that_were_reckoned_with_stand_on_the_quote_by_kind()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LongLine(5).Replace("\"L2\", \"shape\": \"square\", \"across\": \"5 1/2 in\"", "\"L2\", \"shape\": \"round\", \"across\": \"6 in\"", StringComparison.Ordinal));
        var sheet = HtmlSheets.Article(QuoteSheet.Of("", "", Figures, takeoff, PaperSettings.Default)).Replace('\u00A0', ' ');
        Assert.Contains("4 square, 5 1/2 in (139.7 mm) across and 42 in (1066.8 mm) above ground; 1 round, 6 in (152.4 mm) across", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("figures above", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void A_quote_of_posts_of_many_kinds_names_three_and_counts_the_rest()
    {
        var json = SampleJobs.LongLine(9);
        foreach (var i in Enumerable.Range(1, 9))
            json = json.Replace($"\"L{i}\", \"shape\": \"square\", \"across\": \"5 1/2 in\", \"height\": \"42 in\"", $"\"L{i}\", \"shape\": \"square\", \"across\": \"5 1/2 in\", \"height\": \"{41 + i} in\"", StringComparison.Ordinal);
        Assert.Contains("; 6 of other sizes.", HtmlSheets.Article(QuoteSheet.Of("", "", Figures, SampleJobs.Takeoff(json), PaperSettings.Default)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_quote_of_a_long_line_goes_on_over_more_pages_with_every_post()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LongLine(30));
        var pdf = PdfSheets.Write("q", [QuoteSheet.Of("", "", Figures, takeoff, PaperSettings.Default)], PaperSettings.Default);
        Assert.InRange(Poppler.PageSizes(pdf).Count, 2, 4);
        var words = Poppler.WordsOf(pdf);
        foreach (var i in Enumerable.Range(1, 30))
            Assert.Matches($@"\bL{i}\b", words);
    }
}
