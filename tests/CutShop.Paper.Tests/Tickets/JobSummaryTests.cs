using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Tickets;

public sealed class JobSummaryTests
{
    [Fact]
    public void The_rope_totals_are_the_sums_of_the_pieces()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var table = Table(JobSummary.Of(takeoff, PaperSettings.Default), "Rope to have in stock");
        Assert.Equal(2, table.Rows.Count);
        var polypropylene = takeoff.Pieces.Where(p => !p.Rope.IsNatural).Aggregate(Length.Zero, (sum, p) => sum + p.Cut);
        Assert.Contains(LengthText.FeetInches(polypropylene), table.Rows[0][2].Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Equal(["4", "1"], table.Rows.Select(row => row[1]));
    }

    // By hand. Line A: each row has two stopped ends or one and a knot, two corner screws, and a line screw at each bored
    // line post. top: 1 end, 2 corner, 2 line (A2, A4); low: 2 ends, 2 corner, 1 line (A2), 2 on the wrap at A4. The pier:
    // 3 on three turns at P1, 1 line at P2, 2 on two turns at P3, 1 end at P4.
    [Fact]
    public void The_screws_to_pick_are_all_the_screws()
    {
        var table = Table(JobSummary.Of(SampleJobs.Takeoff(SampleJobs.LanternQuay), PaperSettings.Default), "Screws to pick");
        Assert.Equal(5 + 7 + 7, table.Rows.Sum(row => int.Parse(row[1], System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void A_summary_has_codes_warnings_plan_elevations_and_the_word_on_guards()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var sheet = JobSummary.Of(takeoff, PaperSettings.Default, new Dictionary<string, PieceCode> { ["A-top-1"] = SampleJobs.Code });
        var text = HtmlSheets.Article(sheet);
        foreach (var said in new[] { "Lantern Quay boardwalk", "2027-03-12", "3333-3333-3332", "Plan, seen from above", "Line A, elevation", "Line Pier, elevation", "not a guard and not fall protection", "Not for structural design" })
            Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.NotEmpty(takeoff.Warnings);
        Assert.Equal(takeoff.Warnings.Select(w => w.Text).Distinct(), Table(sheet, "Look at these before cutting").Rows.Select(row => row[1]));
    }

    [Fact]
    public void A_warning_that_many_places_share_stands_once_with_the_first_of_them()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LongLine(12).Replace("\"sag\": \"4 in\"", "\"sag\": \"20 in\"", StringComparison.Ordinal));
        var deep = takeoff.Warnings.Where(warning => warning.Code == "deep-sag").ToList();
        Assert.Equal(11, deep.Count);
        var row = Assert.Single(Table(JobSummary.Of(takeoff, PaperSettings.Default), "Look at these before cutting").Rows, row => row[1] == deep[0].Text);
        Assert.Equal("L1-L2/top, L2-L3/top, L3-L4/top, L4-L5/top, L5-L6/top, L6-L7/top and 5 more", row[0]);
    }

    [Fact]
    public void A_list_that_is_too_long_for_paper_says_how_much_is_left_out()
    {
        // A bored corner at every post: each section is a piece.
        var json = SampleJobs.LongLine(2200).Replace("\"height\": \"42 in\" }", "\"height\": \"42 in\", \"turn\": \"90 left\" }", StringComparison.Ordinal);
        var table = Table(JobSummary.Of(SampleJobs.Takeoff(json), PaperSettings.Default), "Pieces");
        Assert.Equal(JobSummary.MostRows + 1, table.Rows.Count);
        Assert.StartsWith("and ", table.Rows[^1][0], StringComparison.Ordinal);
    }

    private static TableBlock Table(Sheet sheet, string caption) => sheet.Blocks.OfType<TableBlock>().Single(t => t.Caption == caption);
}
