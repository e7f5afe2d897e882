using CutShop.Paper.Tests.Samples;
using CutShop.Testing;

namespace CutShop.Paper.Tests;

/// <summary>The shop's paper as somebody looked at it and approved it: a change that nobody meant shows here.</summary>
public sealed class ApprovedPaperTests
{
    private static readonly JobTakeoff Takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);

    private static readonly PaperSettings Settings = PaperSettings.Default;

    [Fact]
    public void A_cut_ticket() => Check(
        "cut-ticket.html",
        CutTicket.Of(JobHead.Of(Takeoff.Job), Takeoff.Pieces[0], Settings, SampleJobs.Code, new CutPlace("PP-15-07", 3, Length.FromInches(400), Length.FromInches(557))));

    [Fact]
    public void A_drill_ticket_of_a_corner() => Check("drill-ticket.html", DrillTicket.All(Takeoff, Settings).ElementAt(2));

    [Fact]
    public void A_quote() => Check("quote.html", QuoteSheet.Of("Lantern Quay Rope", "1 Quay Road\nLantern Quay", Quotes.QuoteSheetTests.Figures, SampleJobs.Takeoff(SampleJobs.TwoPosts()), Settings));

    [Fact]
    public void An_elevation_with_a_corner_a_slope_and_a_wrap() => Check("elevation.svg", Elevation.Of(Takeoff, Takeoff.Job.Lines[0], Settings).First());

    [Fact]
    public void A_plan() => Check("plan.svg", Plan.Of(Takeoff, Settings)[0]);

    [Fact]
    public void A_label() => Check(
        "label.svg", LabelDrawing.Of(PieceLabel.Of("https://shop.example", Takeoff.Job, Takeoff.Pieces[0], SampleJobs.Code).OrThrow(), LabelStock.Default, Settings).OrThrow());

    private static void Check(string name, Sheet sheet) => Approved.Check(name, LineByLine(HtmlSheets.Article(sheet)));

    private static void Check(string name, Drawing drawing) => Approved.Check(name, LineByLine(SvgDrawing.Write(drawing)));

    /// <summary>An element a line, so that a difference is short.</summary>
    private static string LineByLine(string markup) => markup.Replace("><", ">\n<", StringComparison.Ordinal);
}
