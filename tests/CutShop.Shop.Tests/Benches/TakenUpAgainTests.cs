using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Benches;

/// <summary>A job that was cancelled and is taken up again, as its pieces and posts were when it was cancelled.</summary>
public sealed class TakenUpAgainTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private JobRelease Release => new(_shop.Shop.Database);

    [Fact]
    public async Task What_waited_waits_again_without_a_place_on_a_coil()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await CancelAsync();
        Assert.Equal(ReleaseOutcome.Done, await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel));
        Assert.Equal(ReleaseOutcome.DoneBefore, await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel));
        Assert.Equal(ReleaseOutcome.NoSuchJob, await Release.TakeUpAgainAsync("LQ-0", "Bo", Cancel));
        var job = _shop.Shop.Jobs.Find("LQ-1")!;
        Assert.Equal((false, true, ""), (job.CancelledAt is not null, job.ReleasedAt is not null, job.CancelReason));
        Assert.Equal(("waiting", (string?)null), (_shop.Cut.Find(code)!.State, _shop.Cut.Find(code)!.Coil));
        Assert.Equal(["waiting", "waiting"], DrillStates());
        Assert.Equal(("taken up again", "3 to be made, 0 made already"), (_shop.Shop.Jobs.History("LQ-1")[0].What, _shop.Shop.Jobs.History("LQ-1")[0].After));
        await _shop.PlanAsync();
        AssertDone(await _shop.Cut.NextAsync("Cai", _shop.Key(), Cancel));
        AssertSound();
    }

    [Fact]
    public async Task A_cut_piece_counts_again_and_a_packed_one_is_packed_again()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("100 1/4"));
        AssertDone(await new PackingBench(_shop.Shop.Database).PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        await CancelAsync();
        await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel);
        Assert.Equal(("cut", Inches("100 1/4")), (_shop.Cut.Find(code)!.State, _shop.Cut.Find(code)!.Measured!.Value));
        Assert.Empty(new SurplusShelf(_shop.Shop.Database).All());
        AssertSound();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_piece_whose_rope_went_to_the_rack_or_the_scrap_meanwhile_is_cut_anew(bool hungUp)
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("100"));
        await CancelAsync();
        var surplus = new SurplusShelf(_shop.Shop.Database);
        Assert.True((hungUp ? await surplus.HangUpAsync(code, "Ada", _shop.Key(), Cancel) : await surplus.ScrapAsync(code, "Ada", _shop.Key(), Cancel)).IsDone);
        await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel);
        Assert.Equal(("waiting", (Length?)null), (_shop.Cut.Find(code)!.State, _shop.Cut.Find(code)!.Measured));
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("100"));
        AssertSound();
    }

    [Fact]
    public async Task A_piece_that_was_cut_off_and_not_measured_goes_back_to_its_cutter()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        AssertDone(await _shop.Cut.TakeAsync(code, "Cai", _shop.Key(), Cancel));
        await _shop.CutOffAsync(code);
        await CancelAsync();
        await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel);
        Assert.Equal(("at the bench", "Cai"), (_shop.Cut.Find(code)!.State, _shop.Cut.Find(code)!.ClaimedBy));
        AssertSound();
    }

    [Fact]
    public async Task A_drilled_post_counts_again_one_with_some_holes_waits_with_them_and_a_spoiled_one_is_still_on_order()
    {
        var drill = new DrillBench(_shop.Shop.Database);
        await _shop.TakeInAsync("LQ-1", "100");
        await _shop.TakeInAsync("LQ-2", "100");
        await FinishPostAsync(drill, ("LQ-1", "A1"));
        AssertDone(await drill.TakeAsync(("LQ-1", "A2"), "Dov", _shop.Key(), Cancel));
        AssertDone(await drill.TickAsync(("LQ-1", "A2"), 1, "Dov", _shop.Key(), Cancel));
        await CancelAsync();
        await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel);
        Assert.Equal([("drilled", true), ("waiting", true)], new[] { "A1", "A2" }.Select(post => drill.Find(("LQ-1", post))!).Select(work => (work.State, work.Steps > 0)));

        AssertDone(await drill.TakeAsync(("LQ-2", "A1"), "Dov", _shop.Key(), Cancel));
        AssertDone(await drill.DamageAsync(("LQ-2", "A1"), "it split", "Dov", _shop.Key(), Cancel));
        await CancelAsync("LQ-2");
        await Release.TakeUpAgainAsync("LQ-2", "Bo", Cancel);
        Assert.Equal("re-ordered", drill.Find(("LQ-2", "A1"))!.State);
        AssertSound();
    }

    [Fact]
    public async Task A_job_cancelled_before_its_release_is_received_again()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        await Release.TakeBackAsync("LQ-1", "Bo", Cancel);
        await CancelAsync();
        await Release.TakeUpAgainAsync("LQ-1", "Bo", Cancel);
        Assert.Equal((null, null), (_shop.Shop.Jobs.Find("LQ-1")!.ReleasedAt, _shop.Shop.Jobs.Find("LQ-1")!.CancelledAt));
        AssertSound();
    }

    public void Dispose() => _shop.Dispose();

    private Task<ReleaseOutcome> CancelAsync(string job = "LQ-1") => Release.CancelAsync(job, "the pier was sold", "Bo", Cancel);

    private async Task FinishPostAsync(DrillBench drill, (string Job, string Post) post)
    {
        AssertDone(await drill.TakeAsync(post, "Dov", _shop.Key(), Cancel));
        while (drill.Find(post) is { IsFitDue: false } work)
            AssertDone(await drill.TickAsync(post, work.Next!.Value, "Dov", _shop.Key(), Cancel));
        AssertDone(await drill.FitsAsync(post, "Dov", _shop.Key(), Cancel));
    }

    private IReadOnlyList<string> DrillStates() => _shop.Shop.Database.Read(session => session.All<string>("SELECT state FROM drill_tickets ORDER BY id"));

    /// <summary>Every state is where the history leads, and all rope is accounted for.</summary>
    private void AssertSound()
    {
        Assert.Empty(_shop.Missing());
        Assert.Empty(_shop.Shop.Database.Read(session => StatesAgainstHistory.Of(session).ToList()));
    }
}
