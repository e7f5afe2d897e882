using CutShop.Shop.Tests.Orders;
using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Jobs;

public sealed class JobReleaseTests
{
    [Fact]
    public async Task A_draft_taken_in_waits_for_its_release_and_is_released_once()
    {
        using var shop = new DeskShop();
        await shop.Intake.TakeInAsync(await shop.StartAsync(SmallJobs.FourPosts()), 1, "test", DeskShop.Cancel);
        Assert.Null(shop.Jobs.Find("LQ-3001")!.ReleasedAt);
        Assert.Equal(ReleaseOutcome.Done, await shop.Release.ReleaseAsync("LQ-3001", "test", DeskShop.Cancel));
        var after = shop.Dump();
        Assert.Equal(ReleaseOutcome.DoneBefore, await shop.Release.ReleaseAsync("LQ-3001", "test", DeskShop.Cancel));
        Assert.Equal(after, shop.Dump());
        Assert.Equal(ReleaseOutcome.NoSuchJob, await shop.Release.ReleaseAsync("LQ-0", "test", DeskShop.Cancel));
    }

    [Fact]
    public async Task Rope_waits_to_be_planned_only_once_its_job_is_released_and_not_when_it_is_cancelled()
    {
        using var shop = new DeskShop();
        var plans = new PlanShelf(shop.Database);
        await shop.Intake.TakeInAsync(await shop.StartAsync(SmallJobs.FourPosts()), 1, "test", DeskShop.Cancel);
        Assert.Empty(plans.Waiting());
        await shop.Release.ReleaseAsync("LQ-3001", "test", DeskShop.Cancel);
        Assert.Single(plans.Waiting());
        await shop.Release.CancelAsync("LQ-3001", "a reason", "test", DeskShop.Cancel);
        Assert.Empty(plans.Waiting());
    }

    [Fact]
    public async Task Cancelling_ends_what_waits_and_makes_what_was_cut_or_drilled_surplus()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        await shop.CutAsync("A-top-1");
        await shop.DrillAsync("A3");
        Assert.Equal(new WorkDone(Waiting: 1, Cut: 1, ToDrill: 3, Drilled: 1), shop.Release.WorkOf("LQ-3001"));

        Assert.Equal(ReleaseOutcome.NoReason, await shop.Release.CancelAsync("LQ-3001", " ", "test", DeskShop.Cancel));
        Assert.Equal(ReleaseOutcome.Done, await shop.Release.CancelAsync("LQ-3001", "the pier was sold", "test", DeskShop.Cancel));
        Assert.Equal(ReleaseOutcome.DoneBefore, await shop.Release.CancelAsync("LQ-3001", "again", "test", DeskShop.Cancel));

        Assert.Equal(["surplus", "cancelled"], shop.Jobs.Find("LQ-3001")!.Pieces.Select(piece => piece.State));
        Assert.Equal(["cancelled", "cancelled", "surplus", "cancelled"], shop.All<string>("SELECT state FROM drill_tickets ORDER BY id"));
        Assert.Equal(ReleaseOutcome.Cancelled, await shop.Release.ReleaseAsync("LQ-3001", "test", DeskShop.Cancel));
        Assert.Equal("the pier was sold", shop.Jobs.Find("LQ-3001")!.CancelReason);
        Assert.Contains("cancelled, 2 made and now surplus", new HistoryShelf(shop.Database).Of("job", 1).Select(line => line.After));
    }

    [Fact]
    public async Task A_release_is_taken_back_while_nothing_is_begun_and_not_after()
    {
        using var shop = new DeskShop();
        var plans = new PlanShelf(shop.Database);
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        Assert.True(shop.Release.CanTakeBack("LQ-3001"));
        Assert.Equal(ReleaseOutcome.Done, await shop.Release.TakeBackAsync("LQ-3001", "test", DeskShop.Cancel));
        Assert.Equal(ReleaseOutcome.DoneBefore, await shop.Release.TakeBackAsync("LQ-3001", "test", DeskShop.Cancel));
        Assert.Null(shop.Jobs.Find("LQ-3001")!.ReleasedAt);
        Assert.Empty(plans.Waiting());
        Assert.False(shop.Release.CanTakeBack("LQ-3001"));
        Assert.Equal("release taken back", shop.Jobs.History("LQ-3001")[0].What);

        await shop.Release.ReleaseAsync("LQ-3001", "test", DeskShop.Cancel);
        Assert.Single(plans.Waiting());
        await shop.DrillAsync("A3");
        Assert.False(shop.Release.CanTakeBack("LQ-3001"));
        var before = shop.Dump();
        Assert.Equal(ReleaseOutcome.Begun, await shop.Release.TakeBackAsync("LQ-3001", "test", DeskShop.Cancel));
        Assert.Equal(ReleaseOutcome.NoSuchJob, await shop.Release.TakeBackAsync("LQ-0", "test", DeskShop.Cancel));
        Assert.Equal(before, shop.Dump());
    }

    [Fact]
    public async Task Cancelling_is_all_or_nothing_whichever_statement_breaks()
    {
        using var shop = new DeskShop();
        await shop.ReleasedJobAsync(SmallJobs.FourPosts());
        var statements = await shop.BreakEachStatementAsync(() => shop.Release.CancelAsync("LQ-3001", "a reason", "test", DeskShop.Cancel));
        // The job and its history, tickets of both kinds, and the history of 6.
        Assert.Equal(2 + 2 + 6, statements);
        Assert.NotNull(shop.Jobs.Find("LQ-3001")!.CancelledAt);
    }
}
