using CutShop.Shop.Tests.Benches;
using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Stock;

public sealed class SurplusShelfTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private SurplusShelf Surplus => new(_shop.Shop.Database);

    [Fact]
    public async Task A_piece_of_a_cancelled_job_hangs_as_an_offcut_of_its_lot_and_its_ticket_is_cancelled()
    {
        var code = await SurplusAsync();
        var piece = Assert.Single(Surplus.All());
        Assert.Equal(new(code, "LQ-1", "A-top-1", Poly, "lot 7", Inches("100 1/4")), piece);

        var answer = await Surplus.HangUpAsync(code, "Ada", "the key", Cancel);
        Assert.Equal(answer, await Surplus.HangUpAsync(code, "Ada", "the key", Cancel));
        var offcut = _shop.Shop.Stock.Find(answer.Mark)!;
        Assert.Equal((Inches("100 1/4"), "lot 7", "K0001", "rack 1"), (offcut.Left, offcut.Lot, offcut.From, offcut.Place));
        Assert.Equal(("cancelled", null), (_shop.Cut.Find(code)!.State, _shop.Cut.Find(code)!.Measured));
        Assert.Empty(Surplus.All());
        Assert.Equal($"piece: \"{code}\"; accepted: the code of a surplus piece", (await Surplus.HangUpAsync(code, "Ada", _shop.Key(), Cancel)).Problem?.ToString());
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_surplus_piece_that_is_thrown_away_is_scrap_in_the_ledger()
    {
        var code = await SurplusAsync();
        var hanging = _shop.Shop.Stock.InHand();
        Assert.True((await Surplus.ScrapAsync(code, "Ada", _shop.Key(), Cancel)).IsDone);
        Assert.Empty(Surplus.All());
        Assert.Equal(hanging, _shop.Shop.Stock.InHand());
        Assert.Equal(Inches("100 1/4"), _shop.Cut.LeftOver(code).Scrap);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_piece_that_is_wanted_is_no_surplus_and_neither_is_one_that_was_never_cut()
    {
        await _shop.HangAsync("50 ft");
        var wanted = await _shop.TakeInAsync("LQ-1", "100");
        var never = await _shop.TakeInAsync("LQ-2", "90");
        await _shop.PlanAsync();
        await _shop.FinishAsync(wanted, Inches("100"));
        await new JobRelease(_shop.Shop.Database).CancelAsync("LQ-2", "no longer wanted", "Ada", Cancel);
        Assert.Empty(Surplus.All());
        foreach (var code in new[] { wanted, never })
            Assert.False((await Surplus.HangUpAsync(code, "Ada", _shop.Key(), Cancel)).IsDone);
        Assert.Equal("cut", _shop.Cut.Find(wanted)!.State);
    }

    public void Dispose() => _shop.Dispose();

    private async Task<PieceCode> SurplusAsync()
    {
        await _shop.HangAsync("50 ft", "lot 7");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("100 1/4"));
        await new JobRelease(_shop.Shop.Database).CancelAsync("LQ-1", "no longer wanted", "Ada", Cancel);
        return code;
    }
}
