using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Benches;

/// <summary>Every tap at the drill can be taken back, and posts that are alike are one tap once the first was gone through.</summary>
public sealed class DrillStepsTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task One_tap_ticks_all_holes_that_are_drilled_without_turning_the_post()
    {
        // A line post of two rows: two bores from each face, then two screw holes.
        var (bench, mark) = (await FivePostsAsync(), ("LQ-4", "A2"));
        PlannedShop.AssertDone(await bench.TakeAsync(mark, "Dov", _shop.Key(), Cancel));
        Assert.Contains("cannot be ticked now", (await bench.TickAsync(mark, 4, "Dov", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        PlannedShop.AssertDone(await bench.TickAsync(mark, 2, "Dov", _shop.Key(), Cancel));
        Assert.Equal((2L, 6L), (bench.Find(mark)!.Steps, bench.Find(mark)!.All));
        PlannedShop.AssertDone(await bench.TickAsync(mark, 4, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.UntickAsync(mark, 4, "Dov", _shop.Key(), Cancel));
        Assert.Equal(2L, bench.Find(mark)!.Steps);
    }

    [Fact]
    public async Task A_late_tap_from_a_second_tablet_changes_nothing_and_says_so_plainly()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        var (bench, mark) = (_shop.Drill, ("LQ-1", "A1"));
        PlannedShop.AssertDone(await bench.TakeAsync(mark, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.TickAsync(mark, 1, "Dov", _shop.Key(), Cancel));
        Assert.Equal("Drilling 1 is already done: it was ticked on another tablet.", (await bench.TickAsync(mark, 1, "Dov", _shop.Key(), Cancel)).Problem);
        PlannedShop.AssertDone(await bench.FitsAsync(mark, "Dov", _shop.Key(), Cancel));
        foreach (var late in new[] { await bench.FitsAsync(mark, "Dov", _shop.Key(), Cancel), await bench.TickAsync(mark, 2, "Dov", _shop.Key(), Cancel) })
            Assert.Equal("The post A1 is already drilled: Dov ticked it on another tablet.", late.Problem);
    }

    [Fact]
    public async Task A_step_is_undone_once_and_the_history_keeps_both()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        var (bench, mark) = (_shop.Drill, ("LQ-1", "A1"));
        PlannedShop.AssertDone(await bench.TakeAsync(mark, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.TickAsync(mark, 1, "Dov", _shop.Key(), Cancel));
        Assert.False((await bench.UntickAsync(mark, 1, "Eva", _shop.Key(), Cancel)).IsDone);
        PlannedShop.AssertDone(await bench.UntickAsync(mark, 1, "Dov", _shop.Key(), Cancel));
        Assert.Equal((0L, 1), (bench.Find(mark)!.Steps, bench.Find(mark)!.Next));
        Assert.Equal(
            "Another step was ticked or undone on another tablet: 0 of 2 are done now.", (await bench.UntickAsync(mark, 1, "Dov", _shop.Key(), Cancel)).Problem);
        Assert.Equal(["taken to the bench", "drilled a bore", "drilling step undone"], Told());
    }

    [Fact]
    public async Task A_post_tapped_by_mistake_goes_back_with_nothing_drilled()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        var (bench, mark) = (_shop.Drill, ("LQ-1", "A1"));
        PlannedShop.AssertDone(await bench.TakeAsync(mark, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.TickAsync(mark, 1, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.HandBackUndrilledAsync(mark, "Dov", _shop.Key(), Cancel));
        Assert.Equal(("waiting", 0L), (bench.Find(mark)!.State, bench.Find(mark)!.Steps));
        Assert.Equal(["taken to the bench", "drilled a bore", "drilling step undone", "handed back"], Told());
    }

    [Fact]
    public async Task A_post_that_was_not_spoiled_is_at_the_bench_again_as_far_as_it_was_and_no_damage_is_counted()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        var (bench, mark) = (_shop.Drill, ("LQ-1", "A1"));
        PlannedShop.AssertDone(await bench.TakeAsync(mark, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.TickAsync(mark, 1, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.DamageAsync(mark, "split", "Dov", _shop.Key(), Cancel));
        Assert.Equal(1, _shop.Shop.Count("damages"));
        PlannedShop.AssertDone(await bench.UndoDamageAsync(mark, "Dov", _shop.Key(), Cancel));
        var work = bench.Find(mark)!;
        Assert.Equal(("at the bench", "Dov", 1L, 0L), (work.State, work.ClaimedBy, work.Steps, work.Spoiled));
        Assert.Equal(0, _shop.Shop.Count("damages"));
        PlannedShop.AssertDone(await bench.DamageAsync(mark, "split", "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.NewPostAsync(mark, "Dov", _shop.Key(), Cancel));
        Assert.False((await bench.UndoDamageAsync(mark, "Dov", _shop.Key(), Cancel)).IsDone);
        Assert.Equal(1, _shop.Shop.Count("damages"));
    }

    [Fact]
    public async Task A_post_like_the_last_one_takes_one_tap_that_brings_the_next_one_like_it()
    {
        var bench = await FivePostsAsync();
        var (first, second) = (("LQ-4", "A2"), ("LQ-4", "A3"));
        PlannedShop.AssertDone(await bench.TakeAsync(second, "Dov", _shop.Key(), Cancel));
        Assert.Contains("step by step", (await bench.FitsLikeLastAsync(second, "Dov", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        PlannedShop.AssertDone(await bench.HandBackAsync(second, "Dov", _shop.Key(), Cancel));

        PlannedShop.AssertDone(await bench.TakeAsync(first, "Dov", _shop.Key(), Cancel));
        foreach (var step in bench.PostOf(bench.Find(first)!).Work!.Steps().Where(step => step.Drillings.Count > 0))
            PlannedShop.AssertDone(await bench.TickAsync(first, step.Last, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await bench.FitsAsync(first, "Dov", _shop.Key(), Cancel));
        Assert.Equal((3L, 1L), bench.Alike(bench.Find(second)!));

        // Eva has not drilled one; the drill that she stands at may be set otherwise.
        PlannedShop.AssertDone(await bench.TakeAsync(second, "Eva", _shop.Key(), Cancel));
        Assert.False((await bench.FitsLikeLastAsync(second, "Eva", _shop.Key(), Cancel)).IsDone);
        PlannedShop.AssertDone(await bench.HandBackAsync(second, "Eva", _shop.Key(), Cancel));

        PlannedShop.AssertDone(await bench.TakeAsync(second, "Dov", _shop.Key(), Cancel));
        var key = _shop.Key();
        var answers = new[] { await bench.FitsLikeLastAsync(second, "Dov", key, Cancel), await bench.FitsLikeLastAsync(second, "Dov", key, Cancel) };
        Assert.Equal(answers[0], answers[1]);
        Assert.Equal(("drilled", "Dov"), (bench.Find(second)!.State, bench.Find(second)!.DrilledBy));
        Assert.Equal(("LQ-4/A4", "A4"), (answers[0].Outcome, bench.Of("Dov")!.Post));
        Assert.Equal(new BenchAnswer(Said: null), await bench.FitsLikeLastAsync(("LQ-4", "A4"), "Dov", _shop.Key(), Cancel));
        Assert.Null(bench.Of("Dov"));
    }

    /// <summary>A line of five posts and two rows: three line posts that are alike between two ends.</summary>
    private async Task<DrillBench> FivePostsAsync()
    {
        await _shop.Shop.Intake.TakeInAsync(DraftReading.Of(SmallJobs.Posts(5, "LQ-4"), ShopTables.Standard).Takeoff!.Job, "Ada", cancel: Cancel);
        return _shop.Drill;
    }

    private IReadOnlyList<string> Told() =>
        [.. new HistoryShelf(_shop.Shop.Database).Of("drill ticket", 1).Select(line => line.What)];
}
