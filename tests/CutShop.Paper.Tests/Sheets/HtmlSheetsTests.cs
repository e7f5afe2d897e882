using System.Xml.Linq;
using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Sheets;

public sealed class HtmlSheetsTests
{
    [Fact]
    public void A_sheet_is_well_formed_and_brings_neither_style_nor_script()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        Sheet[] sheets =
        [
            JobSummary.Of(takeoff, PaperSettings.Default),
            .. takeoff.Pieces.Select(piece => CutTicket.Of(JobHead.Of(takeoff.Job), piece, PaperSettings.Default)),
            .. DrillTicket.All(takeoff, PaperSettings.Default),
        ];
        foreach (var sheet in sheets)
        {
            var article = XDocument.Parse(HtmlSheets.Article(sheet)).Root!;
            Assert.DoesNotContain(article.DescendantsAndSelf(), e => e.Name.LocalName is "script" or "style" || e.Attribute("style") is not null);
            Assert.Equal(sheet.Subject, article.Element("header")!.Element("h1")!.Value);
        }
    }

    [Fact]
    public void A_nasty_mark_stays_a_mark_in_headings_and_pictures()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.TwoPosts(line: "<script>alert(1)"));
        var html = HtmlSheets.Article(JobSummary.Of(takeoff, PaperSettings.Default));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(XDocument.Parse(html).Descendants(), e => e.Name.LocalName == "title" && e.Value.Contains("Line <script>alert(1), elevation", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onload=\"alert(1)")]
    [InlineData("&lt;b&gt;'")]
    public void Words_from_a_job_stay_words(string nasty)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.TwoPosts(customer: nasty));
        var html = HtmlSheets.Article(JobSummary.Of(takeoff, PaperSettings.Default));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        var article = XDocument.Parse(html).Root!;
        Assert.Contains(article.Descendants("dd"), dd => dd.Value == nasty);
        Assert.DoesNotContain(article.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
    }

    [Fact]
    public void A_document_says_its_language_and_carries_its_print_styles()
    {
        var html = HtmlSheets.Document("Job <1>", [], PaperText.English);
        Assert.StartsWith("<!doctype html>\n<html lang=\"en\">", html, StringComparison.Ordinal);
        Assert.Contains("<title>Job &lt;1&gt;</title>", html, StringComparison.Ordinal);
        Assert.Contains("@media print", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_is_not_known_is_an_empty_box()
    {
        var sheet = new Sheet("t", "s", "f", [new FieldsBlock([new("Coil", null), new("Job", "LQ-1")])]);
        Assert.Contains("<dt>Coil</dt><dd class=\"blank\"></dd>", HtmlSheets.Article(sheet), StringComparison.Ordinal);
        Assert.Contains("<dt>Job</dt><dd>LQ-1</dd>", HtmlSheets.Article(sheet), StringComparison.Ordinal);
    }
}
