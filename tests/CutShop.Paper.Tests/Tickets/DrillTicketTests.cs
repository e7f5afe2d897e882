using CutShop.Paper.Tests.Rendering;
using CutShop.Paper.Tests.Samples;
using CutShop.Takeoff;

namespace CutShop.Paper.Tests.Tickets;

public sealed class DrillTicketTests
{
    [Fact]
    public void A_ticket_says_everything_that_the_driller_needs()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.LanternQuay, "A2"));
        // By hand: bit 1 1/2 + 1/16; through 5 1/2 / 2 + 1/8 deep from each face; wall (5 1/2 - 1 9/16) / 2.
        foreach (var said in new[]
        {
            "Drill ticket", "Post A2", "LQ-1042", "square, 5 1/2 in (139.7 mm)", "42 in (1066.8 mm)", "1 9/16 in", "36 in", "914.4 mm",
            "6 in", "toward A1", "toward A3", "2 7/8 in", "1 31/32 in", "threaded Forstner bit", "stainless",
            "clamp the post", "Eye protection", "mask", "never burn",
        })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_figure_of_every_post_is_on_its_ticket_in_both_units()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        foreach (var work in PostWork.Of(takeoff))
        {
            var ticket = DrillTicket.Of(takeoff.Job, work, PaperSettings.Default);
            var text = Poppler.WordsOf(PdfSheets.Write("t", [ticket], PaperSettings.Default));
            var lengths = work.Drillings().SelectMany(d => new[] { d.Bore.Bit, d.Bore.Wall, d.Mark, d.MarkFromTop, d.Operation.Depth, d.Collar })
                .Concat(work.Fixings.SelectMany(f => new[] { f.Pilot, f.Counterbore, f.CounterboreDepth, f.ShankHole }).Where(l => l.IsPositive))
                .Append(work.Post.Across)
                .Append(work.Post.Height);
            foreach (var length in lengths)
            {
                Assert.Contains(LengthText.Inches(length, length.IsWhole(Length.FromSixtyFourths(1)) ? 64 : 16), text, StringComparison.Ordinal);
                Assert.Contains(LengthText.Millimetres(length), text, StringComparison.Ordinal);
            }
            var cells = ticket.Blocks.OfType<TableBlock>().SelectMany(table => table.Rows).SelectMany(row => row).ToHashSet();
            Assert.All(work.Fixings, fixing => Assert.Contains($"{fixing.Count} × {fixing.Screw}", cells));
        }
    }

    [Fact]
    public void A_rake_is_said_with_its_angle_and_its_way()
    {
        // atan(9 / 78) is 6.6 degrees.
        Assert.Contains("6.6° down toward A4", Poppler.WordsOf(Pdf(SampleJobs.LanternQuay, "A5")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrapped_post_has_nothing_to_drill_but_its_screws()
    {
        var text = Poppler.WordsOf(Pdf(SampleJobs.LanternQuay, "P3"));
        Assert.Contains("No bores in this post", text, StringComparison.Ordinal);
        Assert.Contains("around the post", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A1")]
    [InlineData("A2")]
    [InlineData("A3")]
    [InlineData("A4")]
    public void A_ticket_of_two_rows_fits_the_two_sides_of_a_page(string post) =>
        Assert.InRange(Poppler.PageSizes(Pdf(SampleJobs.LanternQuay, post)).Count, 1, 2);

    [Fact]
    public void A_post_with_many_bores_goes_on_over_more_pages_and_loses_none()
    {
        var pdf = Pdf(SampleJobs.ManyRows(40), "T2");
        Assert.InRange(Poppler.PageSizes(pdf).Count, 3, 60);
        var text = Poppler.TextOf(pdf);
        foreach (var row in Enumerable.Range(1, 40))
            Assert.Matches($@"(?m)^ *\d+ .*\br{row} +toward T1\b", text);
        Assert.Contains("(continued)", text, StringComparison.Ordinal);
    }

    private static byte[] Pdf(string json, string post)
    {
        var takeoff = SampleJobs.Takeoff(json);
        var work = PostWork.Of(takeoff).Single(w => w.Post.Mark == post);
        return PdfSheets.Write("t", [DrillTicket.Of(takeoff.Job, work, PaperSettings.Default)], PaperSettings.Default);
    }
}
