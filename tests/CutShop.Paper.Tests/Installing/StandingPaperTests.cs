using CutShop.Testing.Jobs;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Installing;

/// <summary>The paper of posts that stand and of posts that are set out: what is bored where, by hand.</summary>
public sealed class StandingPaperTests
{
    private static readonly PaperSettings Spanish = PaperSettings.Default with { Text = PaperText.Spanish };

    private static readonly JobTakeoff Takeoff = JobTakeoff.Of(SmallJobs.StandingArc("LQ-77"), ShopTables.Standard);

    private static JobPaper Job => new(Takeoff, Codes, new Dictionary<string, CutPlace>(), PaperSettings.Default);

    private static IReadOnlyList<PieceCode> Codes => [.. Takeoff.Pieces.Select(_ => PieceCode.Draw())];

    [Fact]
    public void The_bench_has_the_ticket_of_the_one_post_that_the_shop_drills_and_a_list_of_the_others()
    {
        var sheets = Job.Sheets(PaperKind.DrillTickets).ToList();
        Assert.Equal(["Post A9", "Posts bored on site"], sheets.Select(sheet => sheet.Subject));
        Assert.Contains("A1, A2, A3, A4, A5, A6, A7, A8", HtmlSheets.Article(sheets[1]), StringComparison.Ordinal);
        // A job of nothing but such posts still has paper that says so.
        var all = JobTakeoff.Of(SmallJobs.OnePiece("LQ-78", more: "\"boring\": \"site\","), ShopTables.Standard);
        Assert.Equal("Posts bored on site", Assert.Single(DrillTicket.All(all, PaperSettings.Default)).Subject);
    }

    /// <summary>By hand: the walk climbs 6 in on 72, so that a bore through 5 1/2 in climbs 5.5 / 12 = 0.458, 7/16 in to the sixteenth; its marks lie 0.229 in from the middle.</summary>
    [Fact]
    public void The_drilling_sheet_tells_each_bore_and_each_hole_that_is_there()
    {
        var sheet = Assert.Single(Site(PaperSettings.Default), sheet => sheet.Title == "Site drilling sheet");
        var tables = sheet.Blocks.OfType<TableBlock>().ToList();
        var second = tables.Single(table => table.Caption.StartsWith("Post A2,", StringComparison.Ordinal));
        Assert.Equal(2, second.Rows.Count);
        var there = second.Rows[0];
        Assert.Equal(["", "top", "35 1/2 in (901.7 mm) above ground · 6 1/2 in (165.1 mm) from the top", "", "1 5/8 in (41.3 mm) across", "The hole is there: do not bore."], there.Select(Plain));
        var low = second.Rows[1].Select(Plain).ToList();
        Assert.Equal(("☐", "low"), (low[0], low[1]));
        Assert.Contains("toward A1: 17 3/4 in", low[2], StringComparison.Ordinal);
        Assert.Contains("toward A3: 18 1/4 in", low[2], StringComparison.Ordinal);
        Assert.Matches(@"^4\.8° up toward A3, 7/16 in .* over the width of the post; along the bisector, 8\.6° off each section$", low[3]);
        Assert.StartsWith("threaded Forstner bit 1 5/8 in", low[4], StringComparison.Ordinal);
        Assert.Matches("^through: .*2 7/8 in .* deep from each face, to the middle$", low[5]);
        Assert.DoesNotContain(tables, table => table.Caption.StartsWith("Post A9", StringComparison.Ordinal));
        Assert.Equal(8, tables.Count(table => table.Caption.StartsWith("Screw holes of post", StringComparison.Ordinal)));
    }

    [Fact]
    public void It_has_the_steps_and_the_dangers_of_a_drill_in_the_hand()
    {
        var words = Poppler.WordsOf(PdfSheets.Write("t", [.. Site(PaperSettings.Default)], PaperSettings.Default));
        foreach (var said in new[] { "Clamp a guide to the post", "from both faces to the middle", "field preservative", "both hands", "Eye protection", "side handle", "never burn the waste", "in the ground", "Pass a piece of the rope" })
            Assert.Contains(said, words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_set_out_sheet_gives_each_post_by_two_tapes_the_string_and_the_bisector()
    {
        var sheet = Assert.Single(Site(PaperSettings.Default), sheet => sheet.Title == "Set-out sheet");
        var rows = sheet.Blocks.OfType<TableBlock>().Single().Rows.Select(row => row.Select(Plain).ToList()).ToList();
        Assert.Equal(9, rows.Count);
        // The chords of two and of six steps of 17.2539 degrees on 240 in: 142.379 and 378.0.
        Assert.Equal("A1: 11' 10 3/8\" (3616 mm)", rows[2][1]);
        Assert.Equal("A9: 31' 5\" (9576 mm)", rows[2][2]);
        Assert.EndsWith("right", rows[2][4], StringComparison.Ordinal);
        Assert.StartsWith("6' 0\"", rows[2][5], StringComparison.Ordinal);
        // 24 sin(8.627 degrees) = 3.6 in.
        Assert.Equal("turns 17.25° left; 24 in (610 mm) along, 3 5/8 in (91 mm) off", rows[2][6]);
        Assert.Equal("along the section", rows[0][6]);
        Assert.Single(sheet.Blocks.OfType<DrawingBlock>());
    }

    [Fact]
    public void Both_speak_spanish_and_metric()
    {
        var metric = Spanish with { Units = UnitsFirst.Millimetres };
        var words = Poppler.WordsOf(PdfSheets.Write("t", [.. Site(metric)], metric));
        foreach (var said in new[] { "Hoja de replanteo", "Hoja de perforación en obra", "901.7 mm", "1829 mm", "610 mm", "conservante", "cada uno con dos cintas" })
            Assert.Contains(said, words, StringComparison.Ordinal);
        foreach (var english in new[] { " the ", " post ", " from ", " string " })
            Assert.DoesNotContain(english, words, StringComparison.Ordinal);
    }

    private static IEnumerable<Sheet> Site(PaperSettings settings) =>
        new SitePaper(Takeoff, Codes, new HashSet<string>(), settings).Sheets().Where(sheet => sheet.Anchor!.StartsWith("set-out-", StringComparison.Ordinal) || sheet.Anchor.StartsWith("bores-", StringComparison.Ordinal));

    private static string Plain(string cell) => cell.Replace('\u00A0', ' ').Replace("≈ ", "", StringComparison.Ordinal).Replace('\n', ' ');
}
