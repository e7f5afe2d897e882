using CutShop.Testing.Fuzz;

namespace CutShop.Shop.Tests.Benches;

/// <summary>Screw holes are ticked like bores, after them, and none is lost where the post is finished in one tap.</summary>
public sealed class ScrewHolesTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _shop.Dispose();

    [Fact]
    public async Task A_ticket_has_as_many_screw_holes_as_the_takeoff_has_screws_that_are_not_driven_through_turns()
    {
        foreach (var file in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "demo"), "*.json"))
        {
            var job = JobFileReader.Read(await File.ReadAllBytesAsync(file, Cancel)).Job!;
            await _shop.Shop.Intake.TakeInAsync(job, "Ada", cancel: Cancel);
            var takeoff = JobTakeoff.Of(job, ShopTables.Standard);
            foreach (var post in takeoff.Bores.Select(bore => bore.Post.Mark).Distinct())
            {
                var work = _shop.Drill.Find((job.Number, post))!;
                Assert.Equal(takeoff.Bores.Where(bore => bore.Post.Mark == post).Sum(bore => bore.Operations.Count), work.Drillings);
                Assert.Equal(takeoff.Fixings.Count(fixing => fixing.Post.Mark == post && fixing.Face.Sight != FaceSight.Around), work.ScrewHoles);
            }
        }
    }

    [Fact]
    public async Task Screw_holes_are_ticked_after_the_bores_and_a_tick_sent_twice_counts_once()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        PlannedShop.AssertDone(await _shop.Drill.TakeAsync(("LQ-1", "A1"), "Dov", _shop.Key(), Cancel));
        Assert.Equal("Drilling 2 cannot be ticked now: 0 of 2 are done.", (await _shop.Drill.TickAsync(("LQ-1", "A1"), 2, "Dov", _shop.Key(), Cancel)).Problem);
        PlannedShop.AssertDone(await _shop.Drill.TickAsync(("LQ-1", "A1"), 1, "Dov", _shop.Key(), Cancel));
        var key = _shop.Key();
        for (var i = 0; i < 2; i++)
            PlannedShop.AssertDone(await _shop.Drill.TickAsync(("LQ-1", "A1"), 2, "Dov", key, Cancel));
        Assert.Equal((2L, (int?)null), (_shop.Drill.Find(("LQ-1", "A1"))!.Steps, _shop.Drill.Find(("LQ-1", "A1"))!.Next));
        PlannedShop.AssertDone(await _shop.Drill.FitsAsync(("LQ-1", "A1"), "Dov", _shop.Key(), Cancel));
        Assert.Equal(["taken to the bench", "drilled a bore", "drilled a screw hole", "drilled, the rope fits"], Told());
    }

    [Fact]
    public async Task A_post_that_is_finished_in_one_tap_has_its_screw_holes_ticked_and_the_history_says_so()
    {
        await _shop.TakeInAsync("LQ-1", "100");
        PlannedShop.AssertDone(await _shop.Drill.TakeAsync(("LQ-1", "A1"), "Dov", _shop.Key(), Cancel));
        Assert.False((await _shop.Drill.FitsAsync(("LQ-1", "A1"), "Dov", _shop.Key(), Cancel)).IsDone);
        PlannedShop.AssertDone(await _shop.Drill.TickAsync(("LQ-1", "A1"), 1, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await _shop.Drill.FitsAsync(("LQ-1", "A1"), "Dov", _shop.Key(), Cancel));
        Assert.Equal(("drilled", 2L, 2L), (_shop.Drill.Find(("LQ-1", "A1"))!.State, _shop.Drill.Find(("LQ-1", "A1"))!.Steps, _shop.Drill.Find(("LQ-1", "A1"))!.Done));
        Assert.Equal(["taken to the bench", "drilled a bore", "drilled, the rope fits, 1 screw hole with it"], Told());
    }

    private IReadOnlyList<string> Told() =>
        [.. new HistoryShelf(_shop.Shop.Database).Of("drill ticket", 1).Select(line => line.What)];
}
