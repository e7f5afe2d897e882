namespace CutShop.Shop.Tests.Benches;

/// <summary>When a job's rope is to be set again.</summary>
public sealed class ReSettingsTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private ReSettings ReSettings => new(_shop.Shop.Database);

    public void Dispose() => _shop.Dispose();

    // The shop's clock starts on 2027-02-01; reminders come after 6 months.
    [Fact]
    public async Task The_day_is_counted_from_the_closed_parcel_and_then_from_the_last_piece_that_is_up()
    {
        var code = await PackedAsync();
        Assert.Null(ReSettings.Find("LQ-1"));
        await CloseAsync();
        Assert.Equal((new DateOnly(2027, 8, 1), ReSettings.Packed), (ReSettings.Find("LQ-1")!.Due, ReSettings.Find("LQ-1")!.CountedFrom));
        _shop.Shop.Time.Advance(TimeSpan.FromDays(10));
        await InstallAsync(code);
        Assert.Equal((new DateOnly(2027, 8, 11), ReSettings.Installed), (ReSettings.Find("LQ-1")!.Due, ReSettings.Find("LQ-1")!.CountedFrom));
        // Opened and closed again, it still counts from when it was up.
        PlannedShop.AssertDone(await _shop.Packing.UnpackAsync(code, "Eva", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        await CloseAsync();
        Assert.Equal(ReSettings.Installed, ReSettings.Find("LQ-1")!.CountedFrom);
    }

    [Fact]
    public async Task It_is_due_from_its_day_on_until_it_is_done_or_put_off()
    {
        await PackedAsync();
        await CloseAsync();
        _shop.Shop.Time.Advance(new DateTimeOffset(2027, 7, 31, 12, 0, 0, TimeSpan.Zero) - _shop.Shop.Time.GetUtcNow());
        Assert.Empty(ReSettings.Due());
        _shop.Shop.Time.Advance(TimeSpan.FromDays(1));
        Assert.Equal("LQ-1", Assert.Single(ReSettings.Due()).Job);

        PlannedShop.AssertDone(await ChooseAsync("2027-11-01"));
        Assert.Empty(ReSettings.Due());
        _shop.Shop.Time.Advance(TimeSpan.FromDays(100));
        Assert.Single(ReSettings.Due());
        PlannedShop.AssertDone(await ReSettings.DoneAsync("LQ-1", "Ada", _shop.Key(), Cancel));
        Assert.Empty(ReSettings.Due());
        Assert.NotNull(ReSettings.Find("LQ-1")!.DoneAt);
    }

    [Fact]
    public async Task A_day_that_somebody_chose_or_that_is_done_is_left_alone()
    {
        var code = await PackedAsync();
        PlannedShop.AssertDone(await ChooseAsync("2028-01-15"));
        await CloseAsync();
        await InstallAsync(code);
        Assert.Equal((new DateOnly(2028, 1, 15), ReSettings.Chosen), (ReSettings.Find("LQ-1")!.Due, ReSettings.Find("LQ-1")!.CountedFrom));
        PlannedShop.AssertDone(await ReSettings.DoneAsync("LQ-1", "Ada", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await _shop.Packing.UnpackAsync(code, "Eva", _shop.Key(), Cancel));
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        await CloseAsync();
        Assert.NotNull(ReSettings.Find("LQ-1")!.DoneAt);
    }

    [Fact]
    public async Task A_shop_that_wants_no_reminders_gets_none()
    {
        Assert.Empty(await new SendingSettingsShelf(_shop.Shop.Database).SetAsync(new("", "no", "0"), "Ada", Cancel));
        await PackedAsync();
        await CloseAsync();
        Assert.Null(ReSettings.Find("LQ-1"));
        Assert.Equal("Job LQ-1 has no day on which its rope is to be set again.", (await ReSettings.DoneAsync("LQ-1", "Ada", _shop.Key(), Cancel)).Problem);
    }

    [Theory]
    [InlineData("2027-01-31")]
    [InlineData("soon")]
    [InlineData("")]
    public async Task A_day_that_is_past_or_no_day_is_refused_with_what_is_accepted(string typed)
    {
        await PackedAsync();
        Assert.Equal($"\"{typed}\" is no day from today on; accepted: a day such as 2027-03-01.", (await ChooseAsync(typed)).Problem);
        Assert.Null(ReSettings.Find("LQ-1"));
    }

    [Fact]
    public async Task What_is_sent_twice_counts_once()
    {
        await PackedAsync();
        foreach (var _ in new[] { 1, 2 })
            PlannedShop.AssertDone(await ReSettings.ChooseAsync("LQ-1", "2027-09-01", "Ada", "one key", Cancel));
        foreach (var _ in new[] { 1, 2 })
            PlannedShop.AssertDone(await ReSettings.DoneAsync("LQ-1", "Ada", "another key", Cancel));
        Assert.Equal(
            ["rope set again", "rope is to be set again on 2027-09-01"],
            _shop.Shop.Jobs.History("LQ-1").Select(line => line.What).Where(what => what.Contains("set", StringComparison.Ordinal)));
    }

    private Task<BenchAnswer> ChooseAsync(string day) => ReSettings.ChooseAsync("LQ-1", day, "Ada", _shop.Key(), Cancel);

    private async Task CloseAsync() => PlannedShop.AssertDone(await _shop.Packing.CloseAsync("LQ-1", asItIs: true, "Eva", _shop.Key(), Cancel));

    private async Task InstallAsync(PieceCode code) => Assert.Equal(
        SiteOutcome.Done,
        (await new InstalledMarks(_shop.Shop.Database).MarkAsync(code, new(InstalledState.Installed, InstalledState.NotInstalled, At: null), "site", _shop.Key(), Cancel)).Outcome);

    private async Task<PieceCode> PackedAsync()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "77 1/2");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, PlannedShop.Inches("77 1/2"));
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        return code;
    }
}
