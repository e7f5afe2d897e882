
namespace CutShop.Shop.Tests.Benches;

/// <summary>What goes with a job's rope, and when its parcel is closed.</summary>
public sealed class ParcelTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _shop.Dispose();

    [Theory]
    [InlineData(8, 10, 1)]
    [InlineData(11, 10, 2)]
    [InlineData(40, 10, 4)]
    [InlineData(1, 1, 1)]
    [InlineData(3, 100, 3)]
    [InlineData(8, 0, 0)]
    public void Spare_screws_are_a_share_and_one_at_least_unless_the_shop_wants_none(int needed, int percent, int spare) =>
        Assert.Equal(spare, ParcelScrews.SpareOf(needed, percent));

    [Fact]
    public async Task A_parcel_holds_every_screw_of_its_stored_posts_and_the_spare_share_that_the_shop_has_set()
    {
        await CutAsync();
        var screws = Assert.Single(Parcel.Screws);
        var needed = _shop.Shop.Jobs.Find("LQ-1")!.Takeoff.Fixings.Sum(fixing => fixing.Count);
        Assert.Equal((needed, 1), (screws.Needed, screws.Spare));
        Assert.Empty(await new BenchSettingsShelf(_shop.Shop.Database).SetAsync(new("1/2 in", "1/8 in", "45", "10", "100"), "Ada", Cancel));
        Assert.Equal(2 * needed, Assert.Single(Parcel.Screws).All);
    }

    [Fact]
    public async Task A_parcel_with_posts_or_screws_missing_is_closed_only_by_who_says_so_and_one_with_rope_missing_by_nobody()
    {
        var code = await CutAsync();
        Assert.Equal("1 pieces of rope are not in the parcel: it cannot be closed yet.", (await CloseAsync(asItIs: true)).Problem);
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        Assert.Equal("Not in the parcel: 2 posts, 1 kinds of screws and hardware.", (await CloseAsync(asItIs: false)).Problem);
        Assert.Single(_shop.Packing.Open());
        PlannedShop.AssertDone(await CloseAsync(asItIs: true));
        Assert.True(Parcel is { IsReady: true, IsComplete: false });
        Assert.Empty(_shop.Packing.Open());
        Assert.Empty(Wrong());
    }

    [Fact]
    public async Task A_parcel_with_all_in_it_is_closed_without_a_question_and_open_again_when_something_is_taken_out()
    {
        var code = await CutAsync();
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        foreach (var post in Parcel.Posts)
        {
            Assert.Contains("once it is drilled", (await PutAsync(post.Mark)).Problem, StringComparison.Ordinal);
            await DrillAsync(post.Mark);
            PlannedShop.AssertDone(await PutAsync(post.Mark));
        }
        PlannedShop.AssertDone(await _shop.Packing.PutScrewsAsync("LQ-1", Parcel.Screws[0].Kind, isIn: true, "Eva", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await CloseAsync(asItIs: false));
        Assert.True(Parcel is { IsReady: true, IsComplete: true });
        PlannedShop.AssertDone(await _shop.Packing.PutPostAsync("LQ-1", "A1", isIn: false, "Eva", _shop.Key(), Cancel));
        Assert.True(Parcel is { IsReady: false, ClosedAt: null });
        Assert.Single(_shop.Packing.Open());
        Assert.Empty(Wrong());
    }

    [Fact]
    public async Task A_post_that_was_drilled_anew_after_it_went_in_is_put_in_again()
    {
        await CutAsync();
        await DrillAsync("A1");
        PlannedShop.AssertDone(await PutAsync("A1"));
        Assert.Equal("A1 is already in the parcel. Is this another one with the same label?", (await PutAsync("A1")).Problem);
        PlannedShop.AssertDone(await _shop.Drill.UndoAsync(("LQ-1", "A1"), "tapped by mistake", "Dov", _shop.Key(), Cancel));
        _shop.Shop.Time.Advance(TimeSpan.FromMinutes(1));
        await DrillAsync("A1");
        Assert.False(Parcel.Posts[0].IsIn);
        PlannedShop.AssertDone(await PutAsync("A1"));
        Assert.True(Parcel.Posts[0].IsIn);
    }

    [Fact]
    public async Task What_is_sent_twice_counts_once()
    {
        await CutAsync();
        var kind = Parcel.Screws[0].Kind;
        foreach (var _ in new[] { 1, 2 })
            PlannedShop.AssertDone(await _shop.Packing.PutScrewsAsync("LQ-1", kind, isIn: true, "Eva", "one key", Cancel));
        Assert.Equal($"{Parcel.Screws[0].Screw} is already in the parcel. Is this another one with the same label?",
            (await _shop.Packing.PutScrewsAsync("LQ-1", kind, isIn: true, "Eva", "another key", Cancel)).Problem);
    }

    private JobParcel Parcel => _shop.Packing.Find("LQ-1")!;

    private List<CheckFinding> Wrong() => _shop.Shop.Database.Read(session => StatesAgainstHistory.Of(session).ToList());

    private Task<BenchAnswer> CloseAsync(bool asItIs) => _shop.Packing.CloseAsync("LQ-1", asItIs, "Eva", _shop.Key(), Cancel);

    private Task<BenchAnswer> PutAsync(string mark) => _shop.Packing.PutPostAsync("LQ-1", mark, isIn: true, "Eva", _shop.Key(), Cancel);

    private async Task DrillAsync(string mark)
    {
        PlannedShop.AssertDone(await _shop.Drill.TakeAsync(("LQ-1", mark), "Dov", _shop.Key(), Cancel));
        var work = _shop.Drill.Find(("LQ-1", mark))!;
        for (var step = 1; step <= work.All; step++)
            PlannedShop.AssertDone(await _shop.Drill.TickAsync(("LQ-1", mark), step, "Dov", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await _shop.Drill.FitsAsync(("LQ-1", mark), "Dov", _shop.Key(), Cancel));
    }

    private async Task<PieceCode> CutAsync()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "77 1/2");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, PlannedShop.Inches("77 1/2"));
        return code;
    }
}
