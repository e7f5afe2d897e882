using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Benches;

/// <summary>The coil in hand ends, is bad or is not there: the books are set right, and the piece gets another coil.</summary>
public sealed class CutCoilTroubleTests : IDisposable
{
    private static readonly PlanBudget Budget = new(TimeSpan.FromSeconds(10), UseSolver: false);

    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CutBench Bench => _shop.Cut;

    [Theory]
    [InlineData("0", "used up")]
    [InlineData("30", "in stock")]
    public async Task A_coil_that_ends_is_set_right_and_its_plan_is_made_anew_from_the_others(string left, string state)
    {
        var code = await AtTheBenchAsync();
        Assert.Contains("is enough", (await Bench.CoilEndsAsync(code, Inches("101 3/8"), "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Bench.CoilEndsAsync(code, Inches(left), "Cai", _shop.Key(), Cancel));
        var coil = _shop.Shop.Stock.Find("K0001")!;
        Assert.Equal((state, Inches(left)), (coil.State, coil.Left));
        Assert.Equal(("waiting", 0L, "K0001"), (Bench.Find(code)!.State, Bench.Find(code)!.Steps, Bench.Find(code)!.Coil));
        await MendAsync();
        Assert.Equal("K0002", Bench.Find(code)!.Coil);
        Assert.Empty(new StalePlans(_shop.Shop.Database).Stale());
        AssertDone(await Bench.NextAsync("Cai", _shop.Key(), Cancel));
        Assert.Empty(_shop.Missing());
        // A wrong tap is set right by counting the coil.
        Assert.True((await _shop.Shop.Stock.AdjustAsync("K0001", Inches("200"), "a wrong tap", "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.Equal(("in stock", Inches("200")), (_shop.Shop.Stock.Find("K0001")!.State, _shop.Shop.Stock.Find("K0001")!.Left));
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task Rope_that_another_cutter_has_cut_off_a_coil_that_ends_is_still_taken_in()
    {
        await _shop.HangAsync("20 ft");
        var (first, second) = (await _shop.TakeInAsync("LQ-1", "100"), await _shop.TakeInAsync("LQ-2", "90"));
        await _shop.PlanAsync();
        AssertDone(await Bench.TakeAsync(first, "Cai", _shop.Key(), Cancel));
        await _shop.CutOffAsync(first);
        AssertDone(await Bench.TakeAsync(second, "Dov", _shop.Key(), Cancel));
        AssertDone(await Bench.CoilEndsAsync(second, Length.Zero, "Dov", _shop.Key(), Cancel));
        AssertDone(await Bench.MeasureAsync(first, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Length.Zero, _shop.Shop.Stock.Find("K0001")!.Left);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_bad_stretch_is_scrap_and_the_piece_stays_where_the_coil_still_gives_it()
    {
        var code = await AtTheBenchAsync();
        AssertDone(await Bench.TickAsync(code, CutStep.Mark, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.BadStretchAsync(code, Inches("36"), "Cai", _shop.Key(), Cancel));
        var work = Bench.Find(code)!;
        Assert.Equal(("at the bench", 0L, Inches("240") - Inches("36")), (work.State, work.Steps, _shop.Shop.Stock.Find("K0001")!.Left));
        Assert.Contains("cannot be bad", (await Bench.BadStretchAsync(code, Inches("204 1/64"), "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Bench.BadStretchAsync(code, Inches("104"), "Cai", _shop.Key(), Cancel));
        // 100 in are left; the piece takes 101 3/8.
        Assert.Equal("waiting", Bench.Find(code)!.State);
        await MendAsync();
        Assert.Equal("K0002", Bench.Find(code)!.Coil);
        Assert.Equal(Inches("140").Nanometres, _shop.Shop.Database.Read(session => session.Value<long>("SELECT sum(nm) FROM rope_uses WHERE kind = 'scrap'")));
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_coil_that_is_not_found_is_off_the_rack_until_it_is_found()
    {
        var code = await AtTheBenchAsync();
        AssertDone(await Bench.CoilNotFoundAsync(code, "Cai", _shop.Key(), Cancel));
        Assert.Equal("retired", _shop.Shop.Stock.Find("K0001")!.State);
        await MendAsync();
        Assert.Equal("K0002", Bench.Find(code)!.Coil);
        Assert.True((await _shop.Shop.Stock.FoundAsync("K0001", "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.False((await _shop.Shop.Stock.FoundAsync("K0001", "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.Equal(("in stock", Length.Foot * 20), (_shop.Shop.Stock.Find("K0001")!.State, _shop.Shop.Stock.Find("K0001")!.Left));
        Assert.Empty(_shop.Shop.Database.Read(session => ShopCheck.OfRows(session).ToList()));
    }

    [Fact]
    public async Task A_coil_that_another_cutter_has_is_not_missing_and_the_cutter_is_named()
    {
        await _shop.HangAsync("20 ft");
        var (first, second) = (await _shop.TakeInAsync("LQ-1", "100"), await _shop.TakeInAsync("LQ-2", "90"));
        await _shop.PlanAsync();
        AssertDone(await Bench.TakeAsync(first, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.TakeAsync(second, "Dov", _shop.Key(), Cancel));
        Assert.Equal("Coil K0001 is at the bench of Cai.", (await Bench.CoilNotFoundAsync(second, "Dov", _shop.Key(), Cancel)).Problem);
    }

    [Fact]
    public async Task Nothing_is_done_about_the_coil_of_a_piece_that_is_cut_off()
    {
        var code = await AtTheBenchAsync();
        await _shop.CutOffAsync(code);
        foreach (var answer in new[]
        {
            await Bench.CoilEndsAsync(code, Length.Zero, "Cai", _shop.Key(), Cancel),
            await Bench.BadStretchAsync(code, Length.Inch, "Cai", _shop.Key(), Cancel),
            await Bench.CoilNotFoundAsync(code, "Cai", _shop.Key(), Cancel),
        })
            Assert.StartsWith("By its steps the piece is already cut", answer.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_is_made_anew_covers_what_it_covered_and_no_other_piece()
    {
        var code = await AtTheBenchAsync();
        var late = await _shop.TakeInAsync("LQ-9", "50");
        AssertDone(await Bench.CoilNotFoundAsync(code, "Cai", _shop.Key(), Cancel));
        await MendAsync();
        Assert.Null(Bench.Find(late)!.Coil);
        Assert.Equal("K0002", Bench.Find(code)!.Coil);
        // The plan it was asked of is replaced: the same again does nothing.
        Assert.False((await _shop.Desk.MendAsync(1, Budget, "Cai", Cancel)).IsDone);
    }

    [Theory]
    [InlineData("ends")]
    [InlineData("ends and some is left")]
    [InlineData("bad")]
    [InlineData("all bad")]
    [InlineData("not found")]
    public async Task What_was_said_of_a_coil_by_a_slip_is_taken_back_and_its_books_are_as_before(string said)
    {
        var code = await AtTheBenchAsync();
        AssertDone(said switch
        {
            "ends" => await Bench.CoilEndsAsync(code, Length.Zero, "Cai", _shop.Key(), Cancel),
            "ends and some is left" => await Bench.CoilEndsAsync(code, Inches("30"), "Cai", _shop.Key(), Cancel),
            "bad" => await Bench.BadStretchAsync(code, Inches("36"), "Cai", _shop.Key(), Cancel),
            "all bad" => await Bench.BadStretchAsync(code, Inches("240"), "Cai", _shop.Key(), Cancel),
            _ => await Bench.CoilNotFoundAsync(code, "Cai", _shop.Key(), Cancel),
        });
        Assert.True(Bench.CanTakeCoilBack("K0001"));
        var answer = await Bench.TakeCoilBackAsync("K0001", "Cai", _shop.Key(), Cancel);
        AssertDone(answer);
        Assert.Equal("K0001", answer.Outcome);
        Assert.Equal(("in stock", Length.Foot * 20), (_shop.Shop.Stock.Find("K0001")!.State, _shop.Shop.Stock.Find("K0001")!.Left));
        Assert.Empty(_shop.Missing());
        Assert.Empty(_shop.Shop.Database.Read(session => ShopCheck.OfRows(session).ToList()));
        // Once taken back there is nothing more to take back.
        Assert.False(Bench.CanTakeCoilBack("K0001"));
        Assert.Equal(
            "There is nothing to take back of coil K0001: something else was done with it since.",
            (await Bench.TakeCoilBackAsync("K0001", "Cai", _shop.Key(), Cancel)).Problem);
    }

    [Fact]
    public async Task What_was_said_of_a_coil_stays_once_something_else_was_done_with_it()
    {
        var code = await AtTheBenchAsync();
        AssertDone(await Bench.BadStretchAsync(code, Inches("36"), "Cai", _shop.Key(), Cancel));
        Assert.True((await _shop.Shop.Stock.AdjustAsync("K0001", Inches("200"), "counted", "Ada", _shop.Key(), Cancel)).IsDone);
        Assert.False((await Bench.TakeCoilBackAsync("K0001", "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.False((await Bench.TakeCoilBackAsync("K0099", "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.Equal(Inches("200"), _shop.Shop.Stock.Find("K0001")!.Left);
    }

    public void Dispose() => _shop.Dispose();

    private async Task MendAsync() =>
        Assert.Empty((await _shop.Desk.MendAsync(Assert.Single(new StalePlans(_shop.Shop.Database).Stale()).PlanId, Budget, "Cai", Cancel)).Problems);

    private async Task<PieceCode> AtTheBenchAsync()
    {
        await _shop.HangAsync("20 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await _shop.HangAsync("50 ft");
        AssertDone(await Bench.TakeAsync(code, "Cai", _shop.Key(), Cancel));
        Assert.Equal("K0001", Bench.Find(code)!.Coil);
        return code;
    }
}
