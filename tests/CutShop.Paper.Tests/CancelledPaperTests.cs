using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests;

public sealed class CancelledPaperTests
{
    private static readonly Uri Address = new("https://shop.example");

    [Theory]
    [InlineData("en", "CANCELLED: do not cut, drill or send")]
    [InlineData("es", "CANCELADO: no cortar, perforar ni enviar")]
    public void Each_page_of_each_paper_of_a_cancelled_job_says_so(string language, string stamp)
    {
        var (cancelled, wanted) = (Paper(language, isCancelled: true), Paper(language, isCancelled: false));
        foreach (var kind in Enum.GetValues<PaperKind>())
        {
            var pages = PagesOf(cancelled.Pdf(kind));
            Assert.All(pages, page => Assert.Contains(stamp, page, StringComparison.Ordinal));
            Assert.Equal(cancelled.Sheets(kind).Count(), cancelled.Html(kind).Split($"<p class=\"stamp\">{stamp}</p>").Length - 1);
            Assert.DoesNotContain(stamp, wanted.Html(kind), StringComparison.Ordinal);
            Assert.All(PagesOf(wanted.Pdf(kind)), page => Assert.DoesNotContain(stamp, page, StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("en", "Job LQ-1042: CANCELLED")]
    [InlineData("es", "Trabajo LQ-1042: CANCELADO")]
    public void Each_label_of_a_cancelled_job_says_so(string language, string said)
    {
        var labels = PagesOf(Paper(language, isCancelled: true).Labels(Address, LabelStock.Default).OrThrow());
        Assert.NotEmpty(labels);
        Assert.All(labels, label => Assert.Contains(said, label, StringComparison.Ordinal));
    }

    private static JobPaper Paper(string language, bool isCancelled)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var settings = PaperSettings.Default with { Text = language == "es" ? PaperText.Spanish : PaperText.English };
        return new(takeoff, [.. takeoff.Pieces.Select(_ => SampleJobs.Code)], new Dictionary<string, CutPlace>(), settings) { IsCancelled = isCancelled };
    }

    private static string[] PagesOf(byte[] pdf) => Poppler.TextOf(pdf).Split('\f', StringSplitOptions.RemoveEmptyEntries);
}
