using CutShop.Shop.Tests.Benches;
using CutShop.Shop.Tests.Orders;
using CutShop.Testing.Jobs;
using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Site;

public sealed class SiteReportsTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private SiteReports Reports => new(_shop.Shop.Database);

    [Fact]
    public async Task A_report_sent_twice_is_one_report()
    {
        var code = await PackedAsync();
        var first = await SendAsync(code, "r");
        Assert.Equal(first, await SendAsync(code, "r"));
        var report = Assert.Single(Reports.Open());
        Assert.Equal(("LQ-1", "A-top-1", "too-short", "by a hand"), (report.Job, report.Run, report.Kind, report.Note));
        Assert.True(report.CanBeCutAgain);
    }

    [Fact]
    public async Task The_desk_takes_so_many_open_reports_of_a_piece_and_no_more()
    {
        var code = await PackedAsync();
        for (var i = 0; i < SiteReports.MostOpenOfAPiece; i++)
            Assert.Equal(SiteOutcome.Done, (await SendAsync(code, $"r{i}")).Outcome);
        Assert.Equal(SiteOutcome.TooManyReports, (await SendAsync(code, "more")).Outcome);
        AssertDone(await Reports.CloseAsync(Reports.Open()[0].Id, "seen", "Jory", _shop.Key(), Cancel));
        Assert.Equal(SiteOutcome.Done, (await SendAsync(code, "more")).Outcome);
    }

    [Fact]
    public async Task Cut_again_a_new_piece_waits_in_the_old_ones_place_and_the_old_label_says_so()
    {
        var code = await PackedAsync();
        var report = (await SendAsync(code, "r")).Id;
        var answer = await Reports.ReCutAsync(report, "Jory", "again", Cancel);
        AssertDone(answer);
        var newCode = PieceCode.Parse(answer.Outcome).OrThrow();
        Assert.NotEqual(code, newCode);

        var job = _shop.Shop.Jobs.Find("LQ-1")!;
        Assert.Equal((newCode, "waiting"), (job.Pieces.Single().Code, job.Pieces.Single().State));
        Assert.Equal((code, "surplus"), (job.Dropped.Single().Code, job.Dropped.Single().State));
        var old = new PieceShelf(_shop.Shop.Database).Find(code)!;
        Assert.Equal((LabelState.NoLongerWanted, true), (old.Label, old.IsCutAgain));
        Assert.Equal(newCode, Reports.Find(report)!.ReCut);
        // The new piece is made as the old one was, and the old one's ticket stays.
        Assert.Equal(_shop.Shop.Jobs.Ticket(code)!.Work!.Piece.Cut, _shop.Shop.Jobs.Ticket(newCode)!.Work!.Piece.Cut);
        Assert.False(_shop.Packing.Find("LQ-1")!.IsReady);

        // Sent again it is answered as then, and a second re-cut of the same report is refused.
        Assert.Equal(answer.Outcome, (await Reports.ReCutAsync(report, "Jory", "again", Cancel)).Outcome);
        Assert.False((await Reports.ReCutAsync(report, "Jory", "another", Cancel)).IsDone);
        Assert.Single(_shop.Shop.Jobs.Find("LQ-1")!.Dropped);
    }

    [Fact]
    public async Task A_re_cut_is_counted_with_its_reason_its_rope_is_scrap_and_no_inch_is_lost()
    {
        var code = await PackedAsync();
        AssertDone(await Reports.ReCutAsync((await SendAsync(code, "r")).Id, "Jory", "again", Cancel));
        var board = new ShopBoard(_shop.Shop.Database).Now();
        Assert.Equal(("A-top-1", "on site: too short"), (Assert.Single(board.ReCuts).What, board.ReCuts[0].Reason));
        Assert.Equal((Length.Zero, Inches("100")), (board.Lots.Single().Pieces, board.Lots.Single().Scrap));
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task The_new_piece_is_planned_cut_and_packed_like_any_other()
    {
        var code = await PackedAsync();
        var answer = await Reports.ReCutAsync((await SendAsync(code, "r")).Id, "Jory", "again", Cancel);
        var newCode = PieceCode.Parse(answer.Outcome).OrThrow();
        Assert.True((await _shop.PlanAsync()).IsDone);
        await _shop.FinishAsync(newCode, Inches("100"));
        AssertDone(await _shop.Packing.PackAsync("LQ-1", newCode, "Cai", _shop.Key(), Cancel));
        Assert.Equal("packed", _shop.Shop.Jobs.Find("LQ-1")!.Pieces.Single().State);
        Assert.Empty(_shop.Missing());
        // The old one can go back into no parcel.
        Assert.False((await _shop.Packing.PackAsync("LQ-1", code, "Cai", _shop.Key(), Cancel)).IsDone);
    }

    [Fact]
    public async Task What_is_not_cut_yet_needs_no_second_ticket()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        var report = (await SendAsync(code, "r")).Id;
        Assert.False(Reports.Find(report)!.CanBeCutAgain);
        Assert.Equal("The piece A-top-1 is not cut yet, so it needs no new ticket.", (await Reports.ReCutAsync(report, "Jory", "again", Cancel)).Problem);
        Assert.Empty(_shop.Shop.Jobs.Find("LQ-1")!.Dropped);
    }

    [Fact]
    public async Task A_report_is_closed_once_with_a_note()
    {
        var report = (await SendAsync(await PackedAsync(), "r")).Id;
        Assert.Contains("Say why", (await Reports.CloseAsync(report, " ", "Jory", "c1", Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Reports.CloseAsync(report, "sent a splice", "Jory", "c2", Cancel));
        AssertDone(await Reports.CloseAsync(report, "sent a splice", "Jory", "c2", Cancel));
        Assert.False((await Reports.CloseAsync(report, "again", "Jory", "c3", Cancel)).IsDone);
        Assert.Empty(Reports.Open());
        Assert.Equal(("sent a splice", "Jory"), (Reports.Closed().Single().ClosingNote, Reports.Closed().Single().ClosedBy));
    }

    [Fact]
    public async Task Whichever_statement_of_a_re_cut_breaks_nothing_is_half_done()
    {
        using var shop = new DeskShop();
        var job = await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.CutAsync("A-top-1");
        var reports = new SiteReports(shop.Database);
        var report = (await reports.SendAsync(job.Codes[0], new(SiteReportKind.Damaged, "", null, null), "site", "r", cancel: Cancel)).Id;
        var statements = await shop.BreakEachStatementAsync(() => reports.ReCutAsync(report, "Jory", "again", Cancel));
        Assert.True(statements > 5);
        Assert.Single(shop.Jobs.Find(job.Number)!.Dropped);
    }

    public void Dispose() => _shop.Dispose();

    /// <summary>A job of one piece of 100 in, cut and packed.</summary>
    private async Task<PieceCode> PackedAsync()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("100"));
        AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Cai", _shop.Key(), Cancel));
        return code;
    }

    private Task<SiteReportAnswer> SendAsync(PieceCode code, string key) =>
        Reports.SendAsync(code, new(SiteReportKind.TooShort, "by a hand", Photo: null, At: null), "site", key, cancel: Cancel);
}
