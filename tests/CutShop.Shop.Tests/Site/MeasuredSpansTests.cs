using CutShop.Shop.Tests.Benches;
using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Site;

/// <summary>A straight rope of one section between two posts of 5 1/2 in: half a post at each end, so it is cut 5 1/2 in longer than its span.</summary>
public sealed class MeasuredSpansTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private MeasuredSpans Spans => new(_shop.Shop.Database);

    private SiteReports Reports => new(_shop.Shop.Database);

    [Fact]
    public async Task What_was_measured_last_stays_and_each_change_is_one_line_of_history()
    {
        var code = await _shop.TakeInAsync("LQ-1", "100");
        Assert.Null(Spans.Find(code));
        Assert.Equal(SiteOutcome.Done, await KeepAsync(code, "a", "96"));
        Assert.Equal(SiteOutcome.Done, await KeepAsync(code, "b", "96 1/2"));
        Assert.Equal(SiteOutcome.Done, await KeepAsync(code, "a", "96"));
        var asBuilt = Spans.Find(code)!;
        Assert.Equal((Inches("96 1/2"), Inches("102"), Inches("100")), (asBuilt.Clear[0], asBuilt.Cut, asBuilt.Piece.Cut));
        Assert.Equal(
            [("span of section 1 measured on site", Inches("94 1/2"), Inches("96")), ("span of section 1 measured on site", Inches("96"), Inches("96 1/2"))],
            new HistoryShelf(_shop.Shop.Database).Of("piece", 1).Select(line => (line.What, LengthText.Parse(line.Before).OrThrow(), LengthText.Parse(line.After).OrThrow())));
        // As planned again, nothing is kept.
        Assert.Equal(SiteOutcome.Done, await KeepAsync(code, "c", "94 1/2"));
        Assert.Null(Spans.Find(code));
    }

    [Fact]
    public async Task What_was_measured_earlier_and_comes_in_later_does_not_undo_it()
    {
        var code = await _shop.TakeInAsync("LQ-1", "100");
        var now = _shop.Shop.Time.GetUtcNow();
        Assert.Equal(SiteOutcome.Done, await KeepAsync(code, "a", "96", now));
        Assert.Equal(SiteOutcome.Done, await KeepAsync(code, "b", "95", now.AddHours(-1)));
        Assert.Equal(Inches("96"), Spans.Find(code)!.Clear[0]);
    }

    [Theory]
    [InlineData(0, "2400")]
    [InlineData(0, "47")]
    [InlineData(1, "96")]
    [InlineData(-1, "96")]
    public async Task A_span_that_the_piece_cannot_have_is_not_kept(int section, string clear)
    {
        var code = await _shop.TakeInAsync("LQ-1", "100");
        Assert.Equal(SiteOutcome.UnlikelySpan, await Spans.KeepAsync(code, new Dictionary<int, Length> { [section] = Inches(clear) }, at: null, "site", "a", Cancel));
        var report = new NewSiteReport(SiteReportKind.TooShort, "", Photo: null, At: null) { Clear = new Dictionary<int, Length> { [section] = Inches(clear) } };
        Assert.Equal(SiteOutcome.UnlikelySpan, (await Reports.SendAsync(code, report, "site", "r", cancel: Cancel)).Outcome);
        Assert.Equal(0, _shop.Shop.Count("measured_spans"));
        Assert.Empty(Reports.Open());
    }

    [Fact]
    public async Task Nothing_is_kept_of_a_label_that_no_longer_counts()
    {
        Assert.Equal(SiteOutcome.NoSuchPiece, await KeepAsync(PieceCode.Draw(), "a", "96"));
        var code = await _shop.TakeInAsync("LQ-1", "100");
        Assert.True((await new LabelShelf(_shop.Shop.Database).ReplaceAsync(code, "lost", "Ada", "k", Cancel)).IsDone);
        Assert.Equal(SiteOutcome.LabelEnded, await KeepAsync(code, "b", "96"));
    }

    [Fact]
    public async Task Cut_again_the_new_piece_is_cut_for_the_span_that_came_with_the_report()
    {
        var code = await PackedAsync();
        var report = new NewSiteReport(SiteReportKind.TooShort, "", Photo: null, At: null) { Clear = new Dictionary<int, Length> { [0] = Inches("96 1/2") } };
        var id = (await Reports.SendAsync(code, report, "site", "r", cancel: Cancel)).Id;
        var answer = await Reports.ReCutAsync(id, "Jory", "again", Cancel);
        AssertDone(answer);
        var next = PieceCode.Parse(answer.Outcome).OrThrow();

        // 96 1/2 in and half a post of 5 1/2 in at each end.
        var ticket = _shop.Shop.Jobs.Ticket(next)!.Work!.Piece;
        Assert.Equal((Inches("102"), Inches("96 1/2"), true), (ticket.Cut, ticket.Sections[0].Clear, ticket.IsAsMeasured));
        Assert.Equal(Inches("102"), _shop.Cut.Find(next)!.Cut);
        Assert.Equal(Inches("102"), _shop.Shop.Jobs.Find("LQ-1")!.Takeoff.Pieces[0].Cut);
        // The old ticket says what was cut then, and the new piece has its own spans.
        Assert.Equal((Inches("100"), false), (_shop.Shop.Jobs.Ticket(code)!.Work!.Piece.Cut, _shop.Shop.Jobs.Ticket(code)!.Work!.Piece.IsAsMeasured));
        Assert.Null(Spans.Find(next));
        Assert.Empty(_shop.Missing());
        Assert.Empty(_shop.WrongCounts());
        Assert.Empty(ShopCheck.Of(_shop.Shop.Place, _shop.Shop.Time));
        // By today's rules nothing is different: it was cut for the site on purpose.
        Assert.True(new JobChanging(_shop.Shop.Database, new(_shop.Shop.Database, ShopTables.Standard)).CompareWithRules("LQ-1")!.IsNothing);
    }

    [Fact]
    public async Task Cut_again_for_another_reason_without_a_measured_span_a_piece_is_as_it_was()
    {
        var code = await PackedAsync();
        var id = (await Reports.SendAsync(code, new(SiteReportKind.Damaged, "", Photo: null, At: null), "site", "r", cancel: Cancel)).Id;
        var next = PieceCode.Parse((await Reports.ReCutAsync(id, "Jory", "again", Cancel)).Outcome).OrThrow();
        Assert.Equal((Inches("100"), false), (_shop.Shop.Jobs.Ticket(next)!.Work!.Piece.Cut, _shop.Shop.Jobs.Ticket(next)!.Work!.Piece.IsAsMeasured));
    }

    public void Dispose() => _shop.Dispose();

    private async Task<PieceCode> PackedAsync()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("100"));
        AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Cai", _shop.Key(), Cancel));
        return code;
    }

    private Task<SiteOutcome> KeepAsync(PieceCode code, string key, string clear, DateTimeOffset? at = null) =>
        Spans.KeepAsync(code, new Dictionary<int, Length> { [0] = Inches(clear) }, at, "site", key, Cancel);
}
