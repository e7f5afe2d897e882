using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Benches;

/// <summary>A label is scanned at the cut bench: the right one does the step, a wrong one changes nothing.</summary>
public sealed class CutScansTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CutBench Bench => _shop.Cut;

    [Theory]
    [InlineData("K0001", CutScan.RightCoil)]
    [InlineData("HTTPS://SHOP.EXAMPLE/STOCK/K0001", CutScan.RightCoil)]
    [InlineData("k0001", CutScan.RightCoil)]
    [InlineData("K0002", CutScan.OtherCoil)]
    [InlineData("LQ-1 A-top-1", CutScan.LabelNotDue)]
    [InlineData("LQ-2 A-top-1", CutScan.OtherPiece)]
    [InlineData("LQ-1 A1", CutScan.NotKnown)]
    [InlineData("K0009", CutScan.NotKnown)]
    public async Task Each_label_is_told_from_the_one_that_is_wanted(string text, CutScan expected)
    {
        var code = await AtTheBenchAsync();
        Assert.Equal(expected, Bench.Look(Bench.Find(code)!, text).Is);
        var before = _shop.Shop.Count("history");
        var answer = await Bench.ScanAsync(code, text, "Cai", _shop.Key(), Cancel);
        Assert.Equal((expected == CutScan.RightCoil, expected == CutScan.RightCoil), (answer.IsDone, Bench.Find(code)!.IsCoilSeen));
        Assert.Equal(expected == CutScan.RightCoil ? 1 : 0, _shop.Shop.Count("history") - before);
        Assert.Equal(0, Bench.Find(code)!.Steps);
    }

    [Fact]
    public async Task At_the_last_step_the_piece_s_own_label_ends_it_and_no_other_does_and_the_history_says_scan_or_tap()
    {
        var code = await AtTheBenchAsync();
        await _shop.CutOffAsync(code);
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.False((await Bench.ScanAsync(code, "LQ-2 A-top-1", "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.Equal("at the bench", Bench.Find(code)!.State);
        AssertDone(await Bench.ScanAsync(code, $"HTTPS://SHOP.EXAMPLE/P/{code.Plain}", "Cai", _shop.Key(), Cancel));
        Assert.Equal("cut", Bench.Find(code)!.State);
        Assert.Equal(
            ["pull and mark, tapped", "prepare the ends and cut, tapped", "measured 8' 4\"", "label, coil and tie, scanned", "finished"],
            new JobFeed(_shop.Shop.Database).ChangesSince(0, 1000).Where(change => change.Code.StartsWith("cut-", StringComparison.Ordinal) && change.Code != "cut-from")
                .Select(change => change.What));
    }

    [Fact]
    public async Task A_coil_that_was_scanned_is_scanned_anew_for_the_next_cutter()
    {
        var code = await AtTheBenchAsync();
        AssertDone(await Bench.ScanAsync(code, "K0001", "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.HandBackAsync(code, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.TakeAsync(code, "Dov", _shop.Key(), Cancel));
        Assert.False(Bench.Find(code)!.IsCoilSeen);
    }

    public void Dispose() => _shop.Dispose();

    private async Task<PieceCode> AtTheBenchAsync()
    {
        await _shop.HangAsync("20 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.TakeInAsync("LQ-2", "100");
        await _shop.PlanAsync();
        await _shop.HangAsync("50 ft");
        AssertDone(await Bench.TakeAsync(code, "Cai", _shop.Key(), Cancel));
        Assert.Equal("K0001", Bench.Find(code)!.Coil);
        return code;
    }
}
