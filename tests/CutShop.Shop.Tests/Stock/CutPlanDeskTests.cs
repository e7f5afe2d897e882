using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Stock;

public sealed class CutPlanDeskTests : IDisposable
{
    private static readonly RopeKind Poly = new(RopeMaterial.Polypropylene, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand);
    private static readonly PlanBudget Budget = new(TimeSpan.FromSeconds(10));

    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CutPlanDesk Desk => new(_shop.Database);

    private PlanShelf Plans => new(_shop.Database);

    private CutBench Bench => new(_shop.Database);

    [Fact]
    public async Task An_accepted_plan_gives_each_piece_its_coil_and_tape_marks()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        await TakeInAsync("LQ-2", "194 1/2 in");

        var answer = await DraftAsync();
        Assert.Equal("waiting", Piece("LQ-1").State);
        Assert.Null(Piece("LQ-1").Place);
        Assert.True((await Desk.AcceptAsync(answer.PlanId, "Ada", Cancel)).IsDone);

        // The pieces are 100 in and 200 in. By the default allowances: 1 in off the coil's end, the longer piece first,
        // 3/8 in of kerf and squaring after it.
        Assert.Equal(new PiecePlace("K0001", "L1", 1, Inches("1"), Inches("201")) { Plan = answer.PlanId }, Piece("LQ-2").Place);
        Assert.Equal(new PiecePlace("K0001", "L1", 2, Inches("201 3/8"), Inches("301 3/8")) { Plan = answer.PlanId }, Piece("LQ-1").Place);
        var plan = Plans.Find(answer.PlanId)!;
        Assert.Equal("accepted", plan.State);
        Assert.Equal("proved best", plan.Proof);
        // 600 - 301 3/8 - 3/8.
        Assert.Equal(Inches("298 1/4"), Assert.Single(plan.Coils).Offcut);
    }

    [Fact]
    public async Task A_cut_piece_takes_its_length_off_the_coil_and_the_rest_hangs_as_an_offcut_of_the_same_lot()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        await AcceptAsync();
        var code = Piece("LQ-1").Code;

        Assert.True((await Bench.RecordCutAsync(code, "Cai", "c1", Cancel)).IsDone);
        Assert.True((await Bench.RecordCutAsync(code, "Cai", "c1", Cancel)).IsDone);
        Assert.Equal($"The piece {code} is already cut.", (await Bench.RecordCutAsync(code, "Cai", "c2", Cancel)).Problem);

        Assert.Equal("used up", _shop.Stock.Find("K0001")!.State);
        var offcut = Assert.Single(_shop.Stock.InHand());
        // 600 - 1 - 100 - 3/8.
        Assert.Equal(("K0002", "K0001", "L1", Inches("498 5/8")), (offcut.Mark, offcut.From, offcut.Lot, offcut.Left));
        Assert.Equal("cut", Piece("LQ-1").State);
        Assert.Equal("K0001", Piece("LQ-1").Place!.Coil);
    }

    [Fact]
    public async Task What_is_left_under_the_keep_length_is_scrap()
    {
        await HangAsync("10 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        await AcceptAsync();
        Assert.True((await Bench.RecordCutAsync(Piece("LQ-1").Code, "Cai", "c1", Cancel)).IsDone);
        Assert.Empty(_shop.Stock.InHand());
        // 120 - 1 - 100 - 3/8 = 18 5/8, and the default keep length is 36 in.
        Assert.Equal(
            ("rest-scrapped", Inches("18 5/8"), Length.Zero),
            _shop.Database.Read(session => session.Value<(string, Length, Length)>("SELECT what, before_nm, after_nm FROM history WHERE subject = 'coil' ORDER BY id DESC LIMIT 1")));
    }

    [Fact]
    public async Task A_draft_is_refused_with_what_changed_when_a_coil_did()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        var draft = await DraftAsync();
        await _shop.Stock.AdjustAsync("K0001", Length.Foot * 40, "ten feet were frayed", "Ada", "a1", Cancel);
        var answer = await Desk.AcceptAsync(draft.PlanId, "Ada", Cancel);
        Assert.Equal(["Coil K0001 had 50' 0\" and now has 40' 0\"."], answer.Problems.Select(problem => problem.ToString()));
        Assert.Null(Piece("LQ-1").Place);
        Assert.Equal("draft", Plans.Find(draft.PlanId)!.State);
    }

    [Fact]
    public async Task Of_two_people_who_plan_at_once_the_second_is_told_of_the_first()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        var first = await DraftAsync();
        var second = await DraftAsync();
        Assert.True((await Desk.AcceptAsync(first.PlanId, "Ada", Cancel)).IsDone);
        Assert.Equal([$"Plan {first.PlanId} was accepted for this rope in the meantime."], (await Desk.AcceptAsync(second.PlanId, "Ben", Cancel)).Problems.Select(problem => problem.ToString()));
        Assert.True((await Desk.AcceptAsync(first.PlanId, "Ada", Cancel)).IsDone);
    }

    [Fact]
    public async Task A_plan_made_stale_by_the_bench_is_refused_and_a_new_one_leaves_what_was_cut()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        await TakeInAsync("LQ-2", "194 1/2 in");
        await AcceptAsync();
        var stale = await DraftAsync();
        await Bench.RecordCutAsync(Piece("LQ-2").Code, "Cai", "c1", Cancel);

        var refused = await Desk.AcceptAsync(stale.PlanId, "Ada", Cancel);
        // 600 - 1 - 200 - 3/8 = 398 5/8 in.
        Assert.Equal(["Coil K0001 had 50' 0\" and now has 33' 2 5/8\".", "Piece A-top-1 of LQ-2 is cut."], refused.Problems.Select(problem => problem.ToString()));

        var fresh = await DraftAsync();
        Assert.True((await Desk.AcceptAsync(fresh.PlanId, "Ada", Cancel)).IsDone);
        Assert.Equal(["LQ-1"], Plans.Find(fresh.PlanId)!.Pieces.Values.Select(piece => piece.Job));
        Assert.Equal(("cut", 1), (Piece("LQ-2").State, Piece("LQ-2").Place!.Position));
        Assert.Equal("replaced", Plans.List().Single(plan => plan.Id == fresh.PlanId - 2).State);
    }

    [Fact]
    public async Task Short_stock_is_bought_and_the_piece_waits_for_its_coil()
    {
        await TakeInAsync("LQ-1", "94 1/2 in");
        var answer = await DraftAsync();
        var coil = Assert.Single(Plans.Find(answer.PlanId)!.Coils);
        Assert.Equal(("buy 1", CoilKind.ToBuy, Length.Foot * 600), (coil.Coil, coil.Kind, coil.Start));
        Assert.True((await Desk.AcceptAsync(answer.PlanId, "Ada", Cancel)).IsDone);
        Assert.Null(Piece("LQ-1").Place);
        Assert.Contains("no coil yet", (await Bench.RecordCutAsync(Piece("LQ-1").Code, "Cai", "c1", Cancel)).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_piece_longer_than_any_coil_is_named_and_nothing_is_stored()
    {
        await new CuttingSettingsShelf(_shop.Database).SetCuttingAsync(new("1/8 in", "1/4 in", "1 in", "36 in", ""), "Ada", Cancel);
        await HangAsync("5 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        var answer = await DraftAsync();
        Assert.Contains(Piece("LQ-1").Code.Plain, Assert.Single(answer.Problems).ToString(), StringComparison.Ordinal);
        Assert.Equal(0, _shop.Count("cut_plans"));
    }

    [Fact]
    public async Task Only_pieces_due_in_the_window_are_planned()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in", "\"due\": \"2027-03-05\",");
        await TakeInAsync("LQ-2", "94 1/2 in", "\"due\": \"2027-03-12\",");
        var answer = await Desk.DraftAsync(Poly, new DateOnly(2027, 3, 5), Budget, "Ada", cancel: Cancel);
        Assert.Equal(["LQ-1"], Plans.Find(answer.PlanId)!.Pieces.Values.Select(piece => piece.Job));
        var none = await Desk.DraftAsync(Poly, new DateOnly(2027, 3, 1), Budget, "Ada", cancel: Cancel);
        Assert.Equal(["No pieces of 1 1/2 in polypropylene, three-strand that are due by 2027-03-01 are waiting."], none.Problems.Select(problem => problem.ToString()));
    }

    [Fact]
    public async Task Rope_of_another_material_is_never_planned_together()
    {
        await HangAsync("50 ft");
        await TakeInAsync("LQ-1", "94 1/2 in");
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-2", "94 1/2 in", material: "manila"), "Ada", cancel: Cancel);
        var answer = await DraftAsync();
        Assert.Equal(["LQ-1"], Plans.Find(answer.PlanId)!.Pieces.Values.Select(piece => piece.Job));
        Assert.Equal([RopeMaterial.Manila, RopeMaterial.Polypropylene], Plans.Waiting().Select(rope => rope.Kind.Material));
    }

    [Fact]
    public async Task A_one_lot_job_goes_on_in_the_lot_it_was_begun_in()
    {
        var manila = new RopeKind(RopeMaterial.Manila, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand);
        await _shop.Stock.ReceiveAsync(new(manila, "M-1", Length.Foot * 600, "rack 3"), "Ada", "m1", Cancel);
        await _shop.Intake.TakeInAsync(ShopOnDisk.Demo("lq-1043-beach-ramp.json"), "Ada", cancel: Cancel);
        var first = await Desk.DraftAsync(manila, dueBy: null, Budget, "Ada", cancel: Cancel);
        await Desk.AcceptAsync(first.PlanId, "Ada", Cancel);
        Assert.True((await Bench.RecordCutAsync(_shop.Jobs.Find("LQ-1043")!.Codes[0], "Cai", "c1", Cancel)).IsDone);

        // A length of another lot that the second piece, 37' 4 1/2" long, would use up: but for the lot it would be taken.
        await _shop.Stock.ReceiveAsync(new(manila, "M-2", LengthText.Parse("37' 5 7/8\"").OrThrow(), "rack 3"), "Ada", "m2", Cancel);
        var second = await Desk.DraftAsync(manila, dueBy: null, Budget, "Ada", cancel: Cancel);
        Assert.Equal(["M-1"], Plans.Find(second.PlanId)!.Coils.Where(coil => coil.Pieces.Count > 0).Select(coil => coil.Lot));
    }

    public void Dispose() => _shop.Dispose();

    private static Length Inches(string number) => LengthText.Parse(number + " in").OrThrow();

    private StoredPiece Piece(string job) => _shop.Jobs.Find(job)!.Pieces[0];

    private Task<StockAnswer> HangAsync(string length) =>
        _shop.Stock.ReceiveAsync(new(Poly, "L1", LengthText.Parse(length).OrThrow(), "rack 1"), "Ada", Guid.NewGuid().ToString(), Cancel);

    /// <summary>Takes in a job of one piece, 5 1/2 in longer than the clear width.</summary>
    private Task<IntakeOutcome> TakeInAsync(string number, string clear, string more = "") =>
        _shop.Intake.TakeInAsync(SmallJobs.OnePiece(number, clear, more), "Ada", cancel: Cancel);

    private Task<PlanAnswer> DraftAsync() => Desk.DraftAsync(Poly, dueBy: null, Budget, "Ada", cancel: Cancel);

    private async Task AcceptAsync() => Assert.True((await Desk.AcceptAsync((await DraftAsync()).PlanId, "Ada", Cancel)).IsDone);
}
