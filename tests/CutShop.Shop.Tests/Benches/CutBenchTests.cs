using static CutShop.Shop.Tests.Benches.PlannedShop;

namespace CutShop.Shop.Tests.Benches;

public sealed class CutBenchTests : IDisposable
{
    private readonly PlannedShop _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CutBench Bench => _shop.Cut;

    [Fact]
    public async Task The_next_piece_is_the_earliest_due_and_then_the_next_on_the_coil()
    {
        await _shop.HangAsync("50 ft");
        var late = await _shop.TakeInAsync("LQ-1", "100", "2027-03-09");
        var shorter = await _shop.TakeInAsync("LQ-2", "100", "2027-03-05");
        var longer = await _shop.TakeInAsync("LQ-3", "120", "2027-03-05");
        var never = await _shop.TakeInAsync("LQ-4", "130");
        await _shop.PlanAsync();
        var order = new List<PieceCode>();
        for (var i = 0; i < 4; i++)
        {
            order.Add((await NextAsync("Cai")).Code);
            AssertDone(await Bench.RecordCutAsync(order[^1], "Cai", _shop.Key(), Cancel));
        }
        // A coil's longer pieces are cut first.
        Assert.Equal([longer, shorter, late, never], order);
        Assert.Equal("No pieces are waiting to be cut.", (await Bench.NextAsync("Cai", _shop.Key(), Cancel)).Problem);
    }

    [Fact]
    public async Task Two_cutters_have_two_coils_and_each_goes_on_with_their_own()
    {
        await _shop.HangAsync("20 ft");
        await _shop.HangAsync("19 ft");
        foreach (var number in new[] { "LQ-1", "LQ-2", "LQ-3", "LQ-4" })
            await _shop.TakeInAsync(number, "100");
        await _shop.PlanAsync();
        var coils = new List<(string Who, string Coil)>();
        for (var round = 0; round < 2; round++)
        {
            var (cai, dov) = (await NextAsync("Cai"), await NextAsync("Dov"));
            coils.AddRange([("Cai", cai.Coil!), ("Dov", dov.Coil!)]);
            AssertDone(await Bench.RecordCutAsync(cai.Code, "Cai", _shop.Key(), Cancel));
            AssertDone(await Bench.RecordCutAsync(dov.Code, "Dov", _shop.Key(), Cancel));
        }
        // Two pairs: neither changed coils, and they never had the same.
        Assert.Equal(2, coils.Distinct().Count());
        Assert.Equal(2, coils.Select(pair => pair.Coil).Distinct().Count());
    }

    [Fact]
    public async Task A_piece_is_finished_step_by_step_and_a_step_out_of_turn_is_refused()
    {
        var code = await _shop.OnePieceAsync();
        AssertDone(await Bench.TakeAsync(code, "Cai", _shop.Key(), Cancel));
        Assert.Equal("Step 2 cannot be ticked now: 0 of 4 are done.", (await Bench.TickAsync(code, CutStep.Cut, "Cai", _shop.Key(), Cancel)).Problem);
        Assert.Equal($"The piece {code} is at the bench of Cai.", (await Bench.TickAsync(code, CutStep.Mark, "Dov", _shop.Key(), Cancel)).Problem);
        await _shop.CutOffAsync(code);
        Assert.Equal("Enter the measured length.", (await Bench.TickAsync(code, CutStep.Measure, "Cai", _shop.Key(), Cancel)).Problem);
        AssertDone(await Bench.MeasureAsync(code, Inches("100 1/4"), isSure: false, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.TickAsync(code, CutStep.LabelAndTie, "Cai", _shop.Key(), Cancel));
        var work = Bench.Find(code)!;
        Assert.Equal(("cut", Inches("100 1/4"), "Cai", null), (work.State, work.Measured!.Value, work.CutBy, work.ClaimedBy));
        // 600 - 1 of trim - 100 1/4 - 3/8 of kerf and squaring.
        Assert.Equal(Inches("498 3/8"), Assert.Single(_shop.Shop.Stock.InHand()).Left);
        Assert.Empty(_shop.Missing());
    }

    [Theory]
    [InlineData("99 7/8", true)]
    [InlineData("99 27/32", false)]
    [InlineData("100 1/2", true)]
    public async Task A_piece_is_taken_as_long_as_the_tolerance_says(string measured, bool isTaken)
    {
        var code = await _shop.OneCutOffAsync();
        Assert.Equal(isTaken, (await Bench.MeasureAsync(code, Inches(measured), isSure: false, "Cai", _shop.Key(), Cancel)).IsDone);
        Assert.Equal(isTaken ? 3 : 2, Bench.Find(code)!.Steps);
    }

    [Fact]
    public async Task A_long_piece_is_trimmed_and_what_was_trimmed_off_is_scrap()
    {
        var code = await _shop.OneCutOffAsync();
        AssertDone(await Bench.MeasureAsync(code, Inches("103"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal((2L, Inches("103")), (Bench.Find(code)!.Steps, Bench.Find(code)!.Longest!.Value));
        AssertDone(await Bench.MeasureAsync(code, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        Assert.Equal(Inches("3"), UsedAs("scrap"));
        Assert.Equal(Inches("3"), Bench.LeftOver(code).Scrap);
        Assert.Equal(Inches("100"), UsedAs("piece"));
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_short_piece_hangs_as_an_offcut_of_its_lot_the_ticket_waits_again_and_the_plan_is_named_stale()
    {
        await _shop.HangAsync("17 ft", "lot 7");
        var first = await _shop.TakeInAsync("LQ-1", "100");
        var second = await _shop.TakeInAsync("LQ-2", "90");
        await _shop.PlanAsync();
        AssertDone(await Bench.TakeAsync(first, "Cai", _shop.Key(), Cancel));
        await _shop.CutOffAsync(first);
        Assert.StartsWith("Too short", (await Bench.MeasureAsync(first, Inches("99"), isSure: false, "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        Assert.Empty(_shop.Shop.Database.Read(session => session.All<long>("SELECT id FROM re_cuts")));
        Assert.Empty(new StalePlans(_shop.Shop.Database).Stale());

        AssertDone(await Bench.MeasureAsync(first, Inches("99"), isSure: true, "Cai", _shop.Key(), Cancel));
        var offcut = _shop.Shop.Stock.Find("K0002")!;
        Assert.Equal((Inches("99"), "lot 7", "K0001"), (offcut.Left, offcut.Lot, offcut.From));
        Assert.Equal([new("K0002", Inches("99"), "rack 1")], Bench.LeftOver(first).Offcuts);
        Assert.Equal(Length.Zero, Bench.LeftOver(first).Scrap);
        Assert.Empty(Bench.LeftOver(second).Offcuts);
        Assert.Equal(("waiting", 0L), (Bench.Find(first)!.State, Bench.Find(first)!.Steps));
        var stale = Assert.Single(new StalePlans(_shop.Shop.Database).Stale());
        // Left: 204 - 1 - 99 - 3/8 = 103 5/8; still to cut: 100 + 90 + 2 x 3/8.
        Assert.Equal(("accepted", "K0001", Inches("87 1/8")), (stale.State, stale.Coil, stale.Lacking));
        Assert.Equal("short by 1\"", _shop.Shop.Database.Read(session => session.Value<string>("SELECT reason FROM re_cuts")));
        Assert.Empty(_shop.Missing());

        // The rope for one of them is there; for the other a new plan is wanted.
        var again = await NextAsync("Cai");
        // The trim is made: 103 5/8 less kerf and squaring.
        Assert.Equal((first, Inches("103 1/4")), (again.Code, again.Most!.Value));
        Assert.Contains("No piece can be cut now", (await Bench.NextAsync("Dov", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        Assert.Equal("waiting", Bench.Find(second)!.State);
    }

    [Fact]
    public async Task An_undone_cut_gives_every_inch_back_to_its_coil_and_takes_the_rest_down()
    {
        var code = await _shop.OnePieceAsync();
        await _shop.FinishAsync(code, Inches("100"));
        Assert.Equal("used up", _shop.Shop.Stock.Find("K0001")!.State);
        // The rest: 600 - 1 of trim - 100 - 3/8 of kerf and squaring.
        Assert.Equal([new("K0002", Inches("498 5/8"), "rack 1")], Bench.LeftOver(code).Offcuts);
        AssertDone(await Bench.UndoAsync(code, "wrong ticket", "Cai", _shop.Key(), Cancel));
        Assert.Equal(("in stock", Inches("600")), (_shop.Shop.Stock.Find("K0001")!.State, _shop.Shop.Stock.Find("K0001")!.Left));
        Assert.Equal("used up", _shop.Shop.Stock.Find("K0002")!.State);
        Assert.Empty(Bench.LeftOver(code).Offcuts);
        Assert.Equal(Length.Zero, UsedAs("piece"));
        Assert.Equal(("waiting", null), (Bench.Find(code)!.State, Bench.Find(code)!.Measured));
        Assert.Empty(_shop.Missing());
        Assert.Equal("wrong ticket", _shop.Shop.Database.Read(session => session.Value<string>("SELECT reason FROM history WHERE what = 'undone'")));
        // It can be cut again as if nothing had been.
        await _shop.FinishAsync(code, Inches("100"));
        Assert.Equal(Inches("498 5/8"), Assert.Single(_shop.Shop.Stock.InHand()).Left);
    }

    [Fact]
    public async Task A_cut_is_undone_within_the_shift_only_and_with_a_reason()
    {
        var code = await _shop.OnePieceAsync();
        await _shop.FinishAsync(code, Inches("100"));
        Assert.StartsWith("Say why", (await Bench.UndoAsync(code, " ", "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        _shop.Shop.Time.Advance(TimeSpan.FromHours(10) + TimeSpan.FromMilliseconds(1));
        Assert.Contains("more than 10 hours ago", (await Bench.UndoAsync(code, "a slip", "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        Assert.Equal("cut", Bench.Find(code)!.State);
    }

    [Fact]
    public async Task Of_two_cuts_of_a_coil_the_later_is_undone_first()
    {
        await _shop.HangAsync("50 ft");
        var first = await _shop.TakeInAsync("LQ-1", "120");
        var second = await _shop.TakeInAsync("LQ-2", "100");
        await _shop.PlanAsync();
        await _shop.FinishAsync(first, Inches("120"));
        await _shop.FinishAsync(second, Inches("100"));
        Assert.Contains("Undo what came later first", (await Bench.UndoAsync(first, "a slip", "Cai", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        AssertDone(await Bench.UndoAsync(second, "a slip", "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.UndoAsync(first, "a slip", "Cai", _shop.Key(), Cancel));
        Assert.Equal(Length.Foot * 50, _shop.Shop.Stock.Find("K0001")!.Left);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_forgotten_ticket_goes_back_by_itself_and_one_that_is_cut_does_not()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        Assert.Equal(code, (await NextAsync("Cai")).Code);
        _shop.Shop.Time.Advance(TimeSpan.FromMinutes(45));
        Assert.False((await Bench.NextAsync("Dov", _shop.Key(), Cancel)).IsDone);
        _shop.Shop.Time.Advance(TimeSpan.FromMilliseconds(1));
        Assert.Equal(code, (await NextAsync("Dov")).Code);
        Assert.Equal("Dov", Bench.Find(code)!.ClaimedBy);

        await _shop.CutOffAsync(code, "Dov");
        Assert.StartsWith("The rope is cut", (await Bench.HandBackAsync(code, "Dov", _shop.Key(), Cancel)).Problem, StringComparison.Ordinal);
        _shop.Shop.Time.Advance(TimeSpan.FromDays(1));
        Assert.False((await Bench.NextAsync("Cai", _shop.Key(), Cancel)).IsDone);
        AssertDone(await Bench.TakeOverAsync(code, "Ada", _shop.Key(), Cancel));
        Assert.Equal(("Ada", 2L), (Bench.Find(code)!.ClaimedBy, Bench.Find(code)!.Steps));
    }

    [Fact]
    public async Task A_plan_made_while_a_piece_is_at_the_bench_leaves_its_rope_alone()
    {
        await _shop.HangAsync("50 ft");
        var first = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        await NextAsync("Cai");
        var second = await _shop.TakeInAsync("LQ-2", "90");
        Assert.Empty((await _shop.PlanAsync()).Problems);
        await _shop.CutOffAsync(first);
        AssertDone(await Bench.MeasureAsync(first, Inches("100"), isSure: false, "Cai", _shop.Key(), Cancel));
        // The rest stays on the coil, since the new plan cuts from it.
        Assert.Equal(Inches("498 5/8"), _shop.Shop.Stock.Find("K0001")!.Left);
        Assert.Equal("K0001", Bench.Find(second)!.Coil);
        Assert.Empty(_shop.Missing());
    }

    [Fact]
    public async Task A_job_cancelled_while_its_piece_is_cut_off_and_not_measured_takes_the_rope_off_the_books()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        AssertDone(await Bench.TakeAsync(code, "Cai", _shop.Key(), Cancel));
        await _shop.CutOffAsync(code);
        Assert.Equal(ReleaseOutcome.Done, await new JobRelease(_shop.Shop.Database).CancelAsync("LQ-1", "the pier was sold", "Bo", Cancel));
        var work = Bench.Find(code)!;
        Assert.Equal((TicketStates.Surplus, Inches("100")), (work.State, work.Measured!.Value));
        Assert.Empty(_shop.Missing());
        Assert.Equal(Inches("100").Nanometres, _shop.Shop.Database.Read(session => session.Value<long>("SELECT sum(nm) FROM rope_uses WHERE kind = 'piece'")));
    }

    [Fact]
    public async Task A_job_cancelled_before_the_cut_leaves_the_coil_whole()
    {
        await _shop.HangAsync("50 ft");
        var code = await _shop.TakeInAsync("LQ-1", "100");
        await _shop.PlanAsync();
        AssertDone(await Bench.TakeAsync(code, "Cai", _shop.Key(), Cancel));
        AssertDone(await Bench.TickAsync(code, CutStep.Mark, "Cai", _shop.Key(), Cancel));
        await new JobRelease(_shop.Shop.Database).CancelAsync("LQ-1", "the pier was sold", "Bo", Cancel);
        Assert.Equal(TicketStates.Cancelled, Bench.Find(code)!.State);
        Assert.Equal(0, _shop.Shop.Count("rope_uses"));
    }

    [Fact]
    public async Task A_coil_tells_what_is_yet_to_be_cut_from_it_until_it_is_cut()
    {
        await _shop.HangAsync("50 ft");
        var first = await _shop.TakeInAsync("LQ-1", "120", "2027-03-05");
        await _shop.TakeInAsync("LQ-2", "100");
        var planned = new PlannedCuts(_shop.Shop.Database);
        Assert.Empty(planned.Of("K0001"));
        await _shop.PlanAsync();
        Assert.Equal([("LQ-1", Inches("120")), ("LQ-2", Inches("100"))], planned.Of("K0001").Select(cut => (cut.Job, cut.Cut)));
        AssertDone(await Bench.RecordCutAsync(first, "Cai", _shop.Key(), Cancel));
        Assert.Equal("LQ-2", Assert.Single(planned.Of("K0001")).Job);
        Assert.Equal([Inches("100")], planned.ByCoil().Values);
    }

    public void Dispose() => _shop.Dispose();

    private async Task<CutWork> NextAsync(string who)
    {
        var answer = await Bench.NextAsync(who, _shop.Key(), Cancel);
        AssertDone(answer);
        return Bench.Find(PieceCode.Parse(answer.Outcome).OrThrow())!;
    }

    private Length UsedAs(string kind) => _shop.Shop.Database.Read(session => Length.FromNanometres(
        session.Value<long>("SELECT coalesce(sum(nm), 0) FROM rope_uses WHERE kind = @kind", new { kind })));
}
