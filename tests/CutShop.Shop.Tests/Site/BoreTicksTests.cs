using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Site;

public sealed class BoreTicksTests : IDisposable
{
    private static readonly BoreMark Top = new("A1", "top", 1);

    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_bore_is_ticked_and_the_tick_taken_back_and_the_desk_sees_both()
    {
        var code = await TakeInAsync();
        Assert.Equal((15, 0), Counted());
        Assert.Equal(SiteOutcome.Done, (await TickAsync(code, Top, true, "a")).Outcome);
        Assert.Equal((15, 1), Counted());
        Assert.Contains(Top, new PieceShelf(_shop.Database).FindLine(code)!.Bored);
        // A post has a tick for each row, and each label of the line will do.
        Assert.Equal(SiteOutcome.Done, (await TickAsync(_shop.Jobs.Find("LQ-77")!.Codes[1], Top with { Row = "low" }, true, "b")).Outcome);
        Assert.Equal((15, 2), Counted());
        Assert.Equal(SiteOutcome.Done, (await TickAsync(code, Top, false, "c")).Outcome);
        Assert.Equal((15, 1), Counted());
        Assert.Equal([
                "A1: bore 1 of row top ticked on site: not-bored>bored",
                "A1: bore 1 of row low ticked on site: not-bored>bored",
                "A1: bore 1 of row top ticked on site: bored>not-bored",
            ], History());
    }

    [Fact]
    public async Task A_tap_that_comes_twice_counts_once_even_after_the_tick_was_taken_back()
    {
        var code = await TakeInAsync();
        await TickAsync(code, Top, true, "a");
        await TickAsync(code, Top, false, "b");
        var again = await TickAsync(code, Top, true, "a");
        Assert.Equal((SiteOutcome.Done, true), (again.Outcome, again.IsBored));
        Assert.Equal(((15, 0), 2), (Counted(), History().Count));
    }

    [Fact]
    public async Task A_late_tap_does_not_undo_what_someone_said_after_it_and_two_that_say_the_same_do_not_conflict()
    {
        var code = await TakeInAsync();
        var eight = _shop.Time.GetUtcNow();
        _shop.Time.Advance(TimeSpan.FromHours(1));
        await TickAsync(code, Top, true, "a");
        Assert.Equal(SiteOutcome.Done, (await TickAsync(code, Top, true, "b")).Outcome);
        await TickAsync(code, Top, false, "c");
        _shop.Time.Advance(TimeSpan.FromHours(1));
        var late = await TickAsync(code, Top, true, "d", eight);
        Assert.Equal((SiteOutcome.Conflict, false), (late.Outcome, late.IsBored));
        Assert.Equal(2, History().Count);
    }

    [Fact]
    public async Task Only_a_bore_that_is_made_on_site_can_be_ticked()
    {
        var code = await TakeInAsync();
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var other = _shop.Jobs.Find("LQ-1")!.Codes[0];
        // The hole that is there, the post that the shop drills, a row and a post that there are not, and a job whose posts the shop drills.
        foreach (var (label, bore) in new[] { (code, new BoreMark("A2", "top", 1)), (code, new("A9", "top", 1)), (code, new("A1", "top", 2)), (code, new("A1", "mid", 1)), (code, new("B1", "top", 1)), (other, Top) })
            Assert.Equal((bore, SiteOutcome.NoSuchBore), (bore, (await TickAsync(label, bore, true, $"{bore}")).Outcome));
        Assert.Equal(SiteOutcome.NoSuchPiece, (await TickAsync(PieceCode.Draw(), Top, true, "x")).Outcome);
        Assert.Equal(0, _shop.Count("site_bores"));
    }

    [Fact]
    public async Task Posts_bored_on_site_have_no_ticket_and_the_job_is_done_without_them()
    {
        var job = await StoredAsync("site");
        Assert.Equal(["A9"], new JobFeed(_shop.Database).DrillTickets("LQ-77").Select(ticket => ticket.Post));
        Assert.Equal(1, _shop.Count("drill_tickets"));
        Assert.Equal(["A9"], new PackingBench(_shop.Database).Find("LQ-77")!.Posts.Select(post => post.Mark));
        var drill = new DrillBench(_shop.Database);
        Assert.True((await drill.NextAsync("Dov", "n", Cancel)).IsDone);
        Assert.Equal(0, drill.Waiting());
        Assert.Equal(8, job.SitePosts.Count);
        Assert.Empty(_shop.Database.Read(session => ShopCheck.OfRows(session).ToList()));
    }

    [Fact]
    public async Task A_change_of_who_bores_takes_tickets_away_and_gives_them_back()
    {
        await StoredAsync("shop");
        Assert.Equal(9, new JobFeed(_shop.Database).DrillTickets("LQ-77").Count);
        await ChangeAsync(SmallJobs.StandingArc("LQ-77"));
        Assert.Equal(["A9"], new JobFeed(_shop.Database).DrillTickets("LQ-77").Select(ticket => ticket.Post));
        Assert.Equal((15, 0), Counted());
        await ChangeAsync(SmallJobs.StandingArc("LQ-77", "shop"));
        Assert.Equal(9, new JobFeed(_shop.Database).DrillTickets("LQ-77").Count);
        Assert.Empty(_shop.Jobs.Find("LQ-77")!.SitePosts);
    }

    [Fact]
    public async Task A_change_of_one_row_leaves_the_ticks_of_the_other()
    {
        var code = await TakeInAsync();
        await TickAsync(code, Top, true, "a");
        await TickAsync(code, Top with { Row = "low" }, true, "b");
        await ChangeAsync(SmallJobs.StandingArc("LQ-77", low: "20 in"));
        Assert.Equal((15, 1), Counted());
        Assert.Equal([Top], new PieceShelf(_shop.Database).FindLine(_shop.Jobs.Find("LQ-77")!.Codes[0])!.Bored);
    }

    public void Dispose() => _shop.Dispose();

    private async Task<StoredJob> StoredAsync(string boring)
    {
        await _shop.Intake.TakeInAsync(SmallJobs.StandingArc("LQ-77", boring), "Ada", cancel: Cancel);
        await new JobRelease(_shop.Database).ReleaseAsync("LQ-77", "Ada", Cancel);
        return _shop.Jobs.Find("LQ-77")!;
    }

    private async Task<PieceCode> TakeInAsync() => (await StoredAsync("site")).Codes[0];

    /// <summary>Gives the job another form, as an accepted change does.</summary>
    private async Task ChangeAsync(Job next) => await _shop.Database.WriteAsync(
        session =>
        {
            var (was, takeoff) = (StoredWork.Find(session, "LQ-77")!, JobTakeoff.Of(next, ShopTables.Standard));
            JobChanging.Store(session, was, takeoff, JobChange.ByDraft(was, takeoff, ShopTables.Standard), HistoryCodes.JobChanged, "Ada");
            return true;
        },
        Cancel);

    private Task<BoreAnswer> TickAsync(PieceCode code, BoreMark bore, bool wanted, string key, DateTimeOffset? at = null) =>
        new BoreTicks(_shop.Database).TickAsync(code, new(bore, wanted, Seen: !wanted, at), "site", key, Cancel);

    private (int Bores, int Bored) Counted() => (_shop.Jobs.Find("LQ-77")!.SitePosts.Sum(post => post.Bores), _shop.Jobs.Find("LQ-77")!.SitePosts.Sum(post => post.Bored));

    private IReadOnlyList<string> History() => [.. new JobFeed(_shop.Database).ChangesSince(0, 1000)
        .Where(change => change.Subject == "post").Select(change => $"{change.Mark}: {change.What}: {change.Before}>{change.After}")];
}
