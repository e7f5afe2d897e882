using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Benches;

/// <summary>A finger slips at the cut bench: nothing is ruined, nobody is locked out, and it can be taken back.</summary>
public sealed class CutSlipsTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CutBench Bench => _shop.Cut;

    [Theory]
    // 100 in asked, 600 in on the coil, of which 1 in is trim and 3/8 in kerf and squaring.
    [InlineData("99 27/32", TapeReading.TooShort)]
    [InlineData("99 7/8", TapeReading.Good)]
    [InlineData("100 1/2", TapeReading.Good)]
    [InlineData("100 33/64", TapeReading.TooLong)]
    [InlineData("105", TapeReading.TooLong)]
    [InlineData("105 1/64", TapeReading.FarTooLong)]
    [InlineData("598 5/8", TapeReading.FarTooLong)]
    [InlineData("598 41/64", TapeReading.MoreThanCoil)]
    public async Task A_length_is_believed_within_5_percent_and_never_beyond_what_the_coil_gives(string measured, TapeReading reading)
    {
        var code = await _shop.OneCutOffAsync();
        Assert.Equal(reading, TapeReadings.Of(Bench.Find(code)!, BenchSettings.Default, Inches(measured)));
    }

    [Fact]
    public void A_long_piece_is_believed_within_a_foot() => Assert.Equal(Length.Foot, TapeReadings.Believed(Length.Foot * 40));

    [Fact]
    public async Task A_figure_in_millimetres_read_as_inches_is_never_stored_and_the_true_one_is_taken_after_it()
    {
        var code = await _shop.OneCutOffAsync();
        foreach (var isSure in new[] { false, true })
            Assert.StartsWith("Coil K0001 is in stock with", (await Bench.MeasureAsync(code, Inches("2540"), isSure, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        Assert.Null(Bench.Find(code)!.Longest);
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Inches("100"), Bench.Find(code)!.Measured);
    }

    [Fact]
    public async Task A_figure_ten_feet_too_long_is_asked_about_and_can_be_taken_back_even_when_it_was_said_to_be_sure()
    {
        var code = await _shop.OneCutOffAsync();
        Assert.StartsWith("18' 4\" is far from", (await Bench.MeasureAsync(code, Inches("220"), isSure: false, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        Assert.Null(Bench.Find(code)!.Longest);
        AssertDone(await Bench.MeasureAsync(code, Inches("220"), isSure: true, "Cai", _shop.Key(), Cancel));
        Assert.Equal((Inches("220"), CutStep.Measure), (Bench.Find(code)!.Longest!.Value, Bench.Find(code)!.LastDone!.Value));
        AssertDone(await Bench.UndoStepAsync(code, CutStep.Measure, "Cai", _shop.Key(), Cancel));
        Assert.Equal((null, CutStep.Cut), (Bench.Find(code)!.Longest, Bench.Find(code)!.LastDone!.Value));
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Length.Zero, Bench.LeftOver(code).Scrap);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_measure_is_taken_back_by_one_tap_and_its_coil_and_its_rest_are_as_before_it()
    {
        var code = await _shop.OneCutOffAsync();
        AssertDone(await Bench.MeasureAsync(code, Inches("100 1/2"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal("used up", _shop.Shop.Stock.Find("K0001")!.State);
        AssertDone(await Bench.UndoStepAsync(code, CutStep.Measure, "Cai", _shop.Key(), Cancel));
        var work = Bench.Find(code)!;
        Assert.Equal(("at the bench", "Cai", 2L, null, null), (work.State, work.ClaimedBy, work.Steps, work.Measured, work.Longest));
        Assert.Equal(("in stock", Length.Foot * 50), (_shop.Shop.Stock.Find("K0001")!.State, _shop.Shop.Stock.Find("K0001")!.Left));
        Assert.Equal("used up", _shop.Shop.Stock.Find("K0002")!.State);
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Inches("498 5/8"), Assert.Single(_shop.Shop.Stock.InHand()).Left);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task What_was_trimmed_off_is_still_known_after_the_measure_is_taken_back()
    {
        var code = await _shop.OneCutOffAsync();
        AssertDone(await Bench.MeasureAsync(code, Inches("103"), isSure: false, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.UndoStepAsync(code, CutStep.Measure, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Inches("103"), Bench.Find(code)!.Longest);
        AssertDone(await Bench.MeasureAsync(code, Inches("100 1/4"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Inches("2 3/4"), Bench.LeftOver(code).Scrap);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task The_length_of_a_finished_piece_is_measured_again_though_its_coil_was_cut_later_and_its_rest_is_in_use()
    {
        await _shop.HangAsync("50 ft");
        var (first, second) = (await _shop.TakeInAsync("LQ-1", "120"), await _shop.TakeInAsync("LQ-2", "100"));
        await _shop.PlanAsync();
        await _shop.FinishAsync(first, Inches("120 1/4"));
        await _shop.FinishAsync(second, Inches("100 1/4"));
        // The rest, K0002, is planned for another piece: it cannot be part of its coil again.
        await _shop.TakeInAsync("LQ-3", "90");
        await _shop.PlanAsync();
        var rest = _shop.Shop.Stock.Find("K0002")!.Left;
        foreach (var (code, length) in new[] { (first, "120"), (second, "100") })
        {
            Assert.False((await Bench.UndoAsync(code, "a slip", "Cai", _shop.Key(), Cancel)).IsDone);
            AssertDone(await Bench.MeasureAgainAsync(code, "Dov", _shop.Key(), Cancel));
            Assert.Equal(("at the bench", "Dov", 2L), (Bench.Find(code)!.State, Bench.Find(code)!.ClaimedBy, Bench.Find(code)!.Steps));
            AssertDone(await Bench.MeasureAsync(code, Inches(length), isSure: false, "Dov", _shop.Key(), Cancel));
            AssertDone(await Bench.TickAsync(code, CutStep.LabelAndTie, "Dov", _shop.Key(), Cancel));
            Assert.Equal(Inches(length), Bench.Find(code)!.Measured);
        }
        Assert.Equal(rest, _shop.Shop.Stock.Find("K0002")!.Left);
        Assert.Empty(_shop.Missing());
        Assert.Empty(_shop.Shop.Database.Read(session => ShopCheck.OfRows(session).ToList()));
    }

    [Fact]
    public async Task A_packed_piece_is_measured_again_once_it_is_out_of_its_parcel()
    {
        var code = await _shop.OnePieceAsync();
        await _shop.FinishAsync(code, Inches("100"));
        AssertDone(await _shop.Packing.PackAsync("LQ-1", code, "Eva", _shop.Key(), Cancel));
        Assert.Contains("Take it out of the parcel first", (await Bench.MeasureAgainAsync(code, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await _shop.Packing.UnpackAsync(code, "Eva", _shop.Key(), Cancel));
        AssertDone(await Bench.MeasureAgainAsync(code, "Cai", _shop.Key(), Cancel));
    }

    [Fact]
    public async Task Every_step_is_undone_one_by_one_and_the_ticket_can_be_handed_back_after_a_slip()
    {
        var code = await _shop.OneCutOffAsync();
        Assert.StartsWith("The rope is cut", (await Bench.HandBackAsync(code, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        Assert.StartsWith("A later step", (await Bench.UndoStepAsync(code, CutStep.Mark, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Bench.UndoStepAsync(code, CutStep.Cut, "Cai", _shop.Key(), Cancel));
        Assert.StartsWith("This step is already undone", (await Bench.UndoStepAsync(code, CutStep.Cut, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Bench.UndoStepAsync(code, CutStep.Mark, "Cai", _shop.Key(), Cancel));
        Assert.Null(Bench.Find(code)!.LastDone);
        AssertDone(await Bench.HandBackAsync(code, "Cai", _shop.Key(), Cancel));
        Assert.Equal("waiting", Bench.Find(code)!.State);
    }

    [Fact]
    public async Task Whoever_takes_a_ticket_over_can_take_back_all_that_was_done_on_it()
    {
        var code = await _shop.OneCutOffAsync();
        AssertDone(await Bench.MeasureAsync(code, Inches("220"), isSure: true, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.TakeOverAsync(code, "Ada", _shop.Key(), Cancel));
        foreach (var step in new[] { CutStep.Measure, CutStep.Cut, CutStep.Mark })
            AssertDone(await Bench.UndoStepAsync(code, step, "Ada", _shop.Key(), Cancel));
        AssertDone(await Bench.HandBackAsync(code, "Ada", _shop.Key(), Cancel));
        Assert.Equal(("waiting", null), (Bench.Find(code)!.State, Bench.Find(code)!.Longest));
    }

    [Fact]
    public async Task A_late_tap_of_a_second_tablet_is_told_that_the_step_is_done()
    {
        var code = await _shop.OneCutOffAsync();
        Assert.StartsWith("This step is already done", (await Bench.TickAsync(code, CutStep.Cut, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal("It is already measured, on this tablet or another: 8' 4\".", (await Bench.MeasureAsync(code, Inches("101"), isSure: true, "Cai", _shop.Key(), Cancel)).Problem);
        AssertDone(await Bench.TickAsync(code, CutStep.LabelAndTie, "Cai", _shop.Key(), Cancel));
        Assert.StartsWith("This step is already done", (await Bench.TickAsync(code, CutStep.LabelAndTie, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("frayed", true, false)]
    [InlineData("damaged", true, false)]
    [InlineData("the fox ate it", false, false)]
    [InlineData("the fox moved it", true, true)]
    [InlineData("wrong length", true, true)]
    public async Task Bad_rope_is_scrap_and_only_sound_rope_goes_back_to_the_rack(string reason, bool isSound, bool hangs)
    {
        await _shop.HangAsync("50 ft");
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "200");
        await _shop.PlanAsync();
        await _shop.FinishAsync(code, Inches("200"));
        AssertDone(await Bench.RejectAsync(code, reason, isSound, "Cai", _shop.Key(), Cancel));
        Assert.Equal(hangs, _shop.Shop.Stock.InHand().Any(coil => coil.From is not null && coil.Left == Inches("200")));
        Assert.Equal(hangs ? Length.Zero : Inches("200"), Bench.LeftOver(code).Scrap);
        Assert.Empty(_shop.Missing());
    }

    public void Dispose() => _shop.Dispose();
}
