using System.Text;

namespace CutShop.Shop.Tests.Benches;

/// <summary>What a job's rope weighs in its parcels, and when the next one is begun.</summary>
public sealed class SplitParcelTests : IDisposable
{
    private readonly PlannedShop _shop = new();
    private readonly List<PieceCode> _codes = [];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => _shop.Dispose();

    /// <summary>The takeoff's weight is that of the cut length; what was measured weighs its share of it.</summary>
    [Fact]
    public async Task A_parcel_weighs_what_its_rope_does_by_the_length_that_was_measured()
    {
        await CutAsync("78", "77 1/2");
        var asked = _shop.Shop.Jobs.Find("LQ-1")!.Takeoff.Pieces[0].WeightLb!.Value;
        Assert.Equal(0, Parcel.WeightOf(1));
        await PackAsync(0);
        Assert.Equal(asked * 78 / 77.5, Parcel.WeightOf(1)!.Value, 9);
        await PackAsync(1);
        Assert.Equal(asked * (78 + 77.5) / 77.5, Parcel.WeightOf(1)!.Value, 9);
        PlannedShop.AssertDone(await _shop.Packing.UnpackAsync(_codes[0], "Eva", _shop.Key(), Cancel));
        Assert.Equal(asked, Parcel.WeightOf(1)!.Value, 9);
    }

    [Fact]
    public async Task Over_the_shop_s_limit_a_piece_goes_into_the_next_parcel_and_one_alone_always_fits()
    {
        await CutAsync("77 1/2", "77 1/2");
        await LimitAsync("3");
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", _codes[0], "Eva", _shop.Key(), Cancel));
        var refused = await _shop.Packing.PackAsync("LQ-1", _codes[1], "Eva", _shop.Key(), Cancel);
        Assert.Matches(@"^A-top-1 weighs 2\.\d lb: with it the rope of parcel 1 weighs [45]\.\d lb, over 3 lb\. Begin the next parcel", refused.Problem);
        Assert.Equal(TicketStates.Cut, Parcel.Pieces[1].State);

        PlannedShop.AssertDone(await _shop.Packing.BeginParcelAsync("LQ-1", 1, "Eva", _shop.Key(), Cancel));
        await LimitAsync("1");
        PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", _codes[1], "Eva", _shop.Key(), Cancel));
        Assert.Equal([1, 2], Parcel.Pieces.Select(piece => piece.Parcel));
        Assert.Equal(2, Parcel.Parcels);
        PlannedShop.AssertDone(await _shop.Packing.CloseAsync("LQ-1", asItIs: true, "Eva", _shop.Key(), Cancel));
        Assert.Empty(_shop.Shop.Database.Read(session => StatesAgainstHistory.Of(session).ToList()));
    }

    [Fact]
    public async Task Without_a_limit_everything_goes_into_one_parcel()
    {
        await CutAsync("77 1/2", "77 1/2");
        await PackAsync(0);
        await PackAsync(1);
        Assert.Equal([1, 1], Parcel.Pieces.Select(piece => piece.Parcel));
    }

    [Fact]
    public async Task A_parcel_is_begun_once_something_is_in_the_last_and_taken_back_while_it_is_empty()
    {
        await CutAsync("77 1/2", "77 1/2");
        Assert.Equal("Parcel 1 is empty: put something in before the next one is begun.", (await BeginAsync(1)).Problem);
        Assert.Equal("Parcel 1 is not the last one, or something is in it.", (await BackAsync(1)).Problem);
        await PackAsync(0);
        PlannedShop.AssertDone(await BeginAsync(1));
        Assert.Equal("Parcel 2 is empty: put something in before the next one is begun.", (await BeginAsync(1)).Problem);
        PlannedShop.AssertDone(await BackAsync(2));
        Assert.Equal(1, Parcel.Parcels);
        PlannedShop.AssertDone(await BeginAsync(1));
        await PackAsync(1);
        Assert.Equal("Parcel 2 is not the last one, or something is in it.", (await BackAsync(2)).Problem);
    }

    [Theory]
    [InlineData("0", "no", "6", "ParcelLb")]
    [InlineData("2001", "no", "6", "ParcelLb")]
    [InlineData("50 lb", "no", "6", "ParcelLb")]
    [InlineData("", "maybe", "6", "Salt")]
    [InlineData("", "no", "61", "ReSetMonths")]
    [InlineData("", "no", "", "ReSetMonths")]
    public async Task A_setting_that_will_not_do_is_named_and_nothing_is_stored(string pounds, string salt, string months, string field)
    {
        var problem = Assert.Single(await new SendingSettingsShelf(_shop.Shop.Database).SetAsync(new(pounds, salt, months), "Ada", Cancel));
        Assert.Equal(field, problem.Field);
        Assert.StartsWith("accepted: ", problem.Text, StringComparison.Ordinal);
        Assert.Equal(SendingSettings.Default, new SendingSettingsShelf(_shop.Shop.Database).Current);
    }

    [Fact]
    public async Task Settings_are_kept_and_an_empty_limit_is_none()
    {
        var shelf = new SendingSettingsShelf(_shop.Shop.Database);
        Assert.Empty(await shelf.SetAsync(new("50", "yes", "0"), "Ada", Cancel));
        Assert.Equal(new SendingSettings(50, IsForSalt: true, 0), shelf.Current);
        Assert.Empty(await shelf.SetAsync(new(" ", "no", "12"), "Ada", Cancel));
        Assert.Equal(new SendingSettings(ParcelLb: null, IsForSalt: false, 12), shelf.Current);
    }

    private JobParcel Parcel => _shop.Packing.Find("LQ-1")!;

    private Task<BenchAnswer> BeginAsync(int parcel) => _shop.Packing.BeginParcelAsync("LQ-1", parcel, "Eva", _shop.Key(), Cancel);

    private Task<BenchAnswer> BackAsync(int parcel) => _shop.Packing.TakeParcelBackAsync("LQ-1", parcel, "Eva", _shop.Key(), Cancel);

    private async Task PackAsync(int piece) => PlannedShop.AssertDone(await _shop.Packing.PackAsync("LQ-1", _codes[piece], "Eva", _shop.Key(), Cancel));

    private async Task LimitAsync(string pounds) => Assert.Empty(await new SendingSettingsShelf(_shop.Shop.Database).SetAsync(new(pounds, "no", "6"), "Ada", Cancel));

    /// <summary>Takes in a job of two straight pieces of 77 1/2 in, each cut to what was measured.</summary>
    private async Task CutAsync(params string[] measured)
    {
        await _shop.HangAsync("50 ft");
        var job = JobFileReader.Read(Encoding.UTF8.GetBytes(
            """
            { "number": "LQ-1", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
              "lines": [ { "mark": "A",
                "posts": [ { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                           { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
                "sections": [ { "clear": "72 in" } ],
                "rows": [ { "mark": "low", "height": "18 in", "sag": "0 in", "start": "stopped", "finish": "stopped" },
                          { "mark": "top", "height": "36 in", "sag": "0 in", "start": "stopped", "finish": "stopped" } ] } ] }
            """)).Job!;
        await _shop.Shop.Intake.TakeInAsync(job, "Ada", cancel: Cancel);
        _codes.AddRange(_shop.Shop.Jobs.Find("LQ-1")!.Codes);
        await _shop.PlanAsync();
        foreach (var (code, length) in _codes.Zip(measured))
            await _shop.FinishAsync(code, PlannedShop.Inches(length));
    }
}
