using CutShop.Shop.Tests.Benches;
using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Site;

public sealed class InstalledMarksTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private InstalledMarks Site => new(_shop.Database);

    [Fact]
    public async Task A_piece_is_marked_and_unmarked_and_each_change_is_one_line_of_history()
    {
        var code = await CodeAsync();
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.Installed, "a")).Outcome);
        Assert.Equal(InstalledState.Installed, StateOf(code));
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.NotInstalled, "b")).Outcome);
        Assert.Equal(InstalledState.NotInstalled, StateOf(code));
        Assert.Equal(["not-installed>installed", "installed>not-installed"], History());
    }

    [Fact]
    public async Task A_tap_that_comes_twice_counts_once_even_after_the_mark_was_taken_off()
    {
        var code = await CodeAsync();
        await MarkAsync(code, InstalledState.Installed, "a");
        await MarkAsync(code, InstalledState.NotInstalled, "b");
        var again = await MarkAsync(code, InstalledState.Installed, "a");
        Assert.Equal((SiteOutcome.Done, InstalledState.Installed), (again.Outcome, again.State));
        Assert.Equal(InstalledState.NotInstalled, StateOf(code));
        Assert.Equal(2, History().Count);
    }

    [Fact]
    public async Task Two_phones_that_say_the_same_do_not_conflict()
    {
        var code = await CodeAsync();
        await MarkAsync(code, InstalledState.Installed, "a");
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.Installed, "b")).Outcome);
        Assert.Single(History());
    }

    /// <summary>A phone out of reach marks the piece at eight; another marks it and takes the mark off at nine; then the first comes back.</summary>
    [Fact]
    public async Task A_late_tap_does_not_undo_what_someone_said_after_it()
    {
        var code = await CodeAsync();
        var eight = _shop.Time.GetUtcNow();
        _shop.Time.Advance(TimeSpan.FromHours(1));
        await MarkAsync(code, InstalledState.Installed, "a");
        await MarkAsync(code, InstalledState.NotInstalled, "b");
        _shop.Time.Advance(TimeSpan.FromHours(1));
        var late = await MarkAsync(code, InstalledState.Installed, "c", eight);
        Assert.Equal((SiteOutcome.Conflict, InstalledState.NotInstalled), (late.Outcome, late.State));
        Assert.Equal(2, History().Count);
        // Whoever has seen that and taps again is believed.
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.Installed, "d")).Outcome);
    }

    [Fact]
    public async Task A_phones_taps_sent_late_and_in_order_all_count()
    {
        var code = await CodeAsync();
        var eight = _shop.Time.GetUtcNow();
        _shop.Time.Advance(TimeSpan.FromHours(3));
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.Installed, "a", eight)).Outcome);
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.NotInstalled, "b", eight.AddMinutes(1))).Outcome);
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.Installed, "c", eight.AddMinutes(2))).Outcome);
        Assert.Equal(InstalledState.Installed, StateOf(code));
    }

    [Fact]
    public async Task A_phone_whose_clock_is_fast_does_not_shut_others_out()
    {
        var code = await CodeAsync();
        await MarkAsync(code, InstalledState.Installed, "a", _shop.Time.GetUtcNow().AddDays(3));
        _shop.Time.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.NotInstalled, "b")).Outcome);
    }

    [Fact]
    public async Task A_piece_that_is_not_cut_is_marked_only_by_a_tap_that_is_sure_of_it_and_the_desk_sees_it()
    {
        var code = await CodeAsync();
        Assert.Equal(SiteOutcome.NotCut, (await MarkAsync(code, InstalledState.Installed, "a", isSure: false)).Outcome);
        Assert.Equal((InstalledState.NotInstalled, 0), (StateOf(code), History().Count));
        var reports = new SiteReports(_shop.Database);
        Assert.Empty(reports.HungUncut());
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.Installed, "a")).Outcome);
        Assert.Equal(("LQ-1", "A-top-1", code), reports.HungUncut().Select(piece => (piece.Job, piece.Run, piece.Code)).Single());
        // The mark is taken off without a question.
        Assert.Equal(SiteOutcome.Done, (await MarkAsync(code, InstalledState.NotInstalled, "b", isSure: false)).Outcome);
        Assert.Empty(reports.HungUncut());
    }

    [Fact]
    public async Task A_piece_that_is_cut_is_marked_at_once_unless_it_is_reported_as_too_short()
    {
        using var shop = new PlannedShop();
        await shop.HangAsync("50 ft");
        var code = await shop.TakeInAsync("LQ-1", "100");
        await shop.PlanAsync();
        await shop.FinishAsync(code, PlannedShop.Inches("100"));
        var (marks, reports) = (new InstalledMarks(shop.Shop.Database), new SiteReports(shop.Shop.Database));
        var id = (await reports.SendAsync(code, new(SiteReportKind.TooShort, "", Photo: null, At: null), "site", "r", cancel: Cancel)).Id;
        Assert.Equal([SiteReportKind.TooShort], new PieceShelf(shop.Shop.Database).Find(code)!.Reported);
        var tap = new InstalledTap(InstalledState.Installed, InstalledState.NotInstalled, At: null);
        Assert.Equal(SiteOutcome.ReportedShort, (await marks.MarkAsync(code, tap, "site", "a", Cancel)).Outcome);
        Assert.True((await reports.CloseAsync(id, "it fits after all", "Jory", "c", Cancel)).IsDone);
        Assert.Empty(new PieceShelf(shop.Shop.Database).FindLine(code)!.Pieces[0].Reported);
        Assert.Equal(SiteOutcome.Done, (await marks.MarkAsync(code, tap, "site", "a", Cancel)).Outcome);
        Assert.Empty(reports.HungUncut());
    }

    [Fact]
    public async Task A_code_that_no_piece_has_and_a_label_that_was_ended_change_nothing()
    {
        Assert.Equal(SiteOutcome.NoSuchPiece, (await MarkAsync(PieceCode.Draw(), InstalledState.Installed, "a")).Outcome);
        var code = await CodeAsync();
        Assert.True((await new LabelShelf(_shop.Database).ReplaceAsync(code, "lost", "Ada", "k", Cancel)).IsDone);
        Assert.Equal(SiteOutcome.LabelEnded, (await MarkAsync(code, InstalledState.Installed, "b")).Outcome);
        Assert.Equal(0, _shop.Count("installations"));
    }

    public void Dispose() => _shop.Dispose();

    private async Task<PieceCode> CodeAsync()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        return _shop.Jobs.Find("LQ-1")!.Codes[0];
    }

    private Task<InstalledAnswer> MarkAsync(PieceCode code, InstalledState wanted, string key, DateTimeOffset? at = null, bool isSure = true) => Site.MarkAsync(
        code, new(wanted, wanted == InstalledState.Installed ? InstalledState.NotInstalled : InstalledState.Installed, at, isSure), "site", key, Cancel);

    private InstalledState StateOf(PieceCode code) => new PieceShelf(_shop.Database).Find(code)!.State;

    private IReadOnlyList<string> History() => _shop.Database.Read(session =>
        session.All<string>("SELECT before || '>' || after FROM history WHERE subject = 'piece' ORDER BY id"));
}
