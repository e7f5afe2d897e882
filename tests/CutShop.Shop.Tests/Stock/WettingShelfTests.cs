using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Stock;

/// <summary>Natural rope in water: figures are worked by hand, shares as 1 - after / before.</summary>
public sealed class WettingShelfTests : IDisposable
{
    private static readonly RopeKind Manila = new(RopeMaterial.Manila, LengthText.Parse("1 1/2 in").OrThrow(), RopeKind.ThreeStrand);
    private static readonly RopeKind Preshrunk = Manila with { IsPreshrunk = true };
    private static readonly PlanBudget Budget = new(TimeSpan.FromSeconds(10), UseSolver: false);

    private readonly ShopOnDisk _shop = new();
    private int _key;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private WettingShelf Wetting => new(_shop.Database);

    private CutPlanDesk Desk => new(_shop.Database);

    private PlanShelf Plans => new(_shop.Database);

    private CutBench Bench => new(_shop.Database);

    [Fact]
    public async Task A_coil_that_was_soaked_is_preshrunk_and_its_ledger_has_what_it_lost()
    {
        await HangAsync(Manila, "600 ft");
        Assert.True((await Wetting.PreshrinkAsync("K0001", Feet(600), Feet(525), "Ada", "p1", Cancel)).IsDone);
        Assert.True((await Wetting.PreshrinkAsync("K0001", Feet(600), Feet(525), "Ada", "p1", Cancel)).IsDone);
        var coil = _shop.Stock.Find("K0001")!;
        Assert.Equal((Preshrunk, Feet(600), Feet(525), Feet(75), true), (coil.Kind, coil.Whole, coil.Left, coil.Shrunk, coil.IsUntouched));
        Assert.Equal("1 1/2 in manila, three-strand, preshrunk", coil.Kind.ToString());
        Assert.Equal([("shrunk", Feet(75))], Ledger());
        Assert.Equal(("soaked and dried", "600' 0\"", "525' 0\""), Told(1));
        Assert.Empty(Findings());
    }

    [Fact]
    public async Task Where_the_books_say_another_length_than_is_measured_before_it_is_soaked_they_are_corrected()
    {
        await HangAsync(Manila, "600 ft");
        Assert.True((await Wetting.PreshrinkAsync("K0001", Feet(590), Feet(520), "Ada", "p1", Cancel)).IsDone);
        Assert.Equal([("correction", Feet(10)), ("shrunk", Feet(70))], Ledger());
        Assert.Equal("measured before it was soaked", new HistoryShelf(_shop.Database).Of("coil", 1)[^2].Reason);
        Assert.StartsWith("left: 531", (await _shop.Stock.AdjustAsync("K0001", Feet(531), "found more", "Ada", "a1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Empty(Findings());
    }

    [Fact]
    public async Task Soaking_is_taken_back_with_all_of_its_rope_until_something_is_cut()
    {
        await HangAsync(Manila, "600 ft");
        await Wetting.PreshrinkAsync("K0001", Feet(600), Feet(525), "Ada", "p1", Cancel);
        Assert.True((await Wetting.UndoPreshrinkAsync("K0001", "Ada", "u1", Cancel)).IsDone);
        Assert.True((await Wetting.UndoPreshrinkAsync("K0001", "Ada", "u1", Cancel)).IsDone);
        var coil = _shop.Stock.Find("K0001")!;
        Assert.Equal((Manila, Feet(600), Length.Zero), (coil.Kind, coil.Left, coil.Shrunk));
        Assert.Null(Wetting.Of(coil).Together);
        Assert.Empty(Findings());

        await Wetting.PreshrinkAsync("K0001", Feet(600), Feet(525), "Ada", "p2", Cancel);
        await _shop.Stock.AdjustAsync("K0001", Feet(520), "frayed", "Ada", "a1", Cancel);
        Assert.StartsWith("Coil K0001 cannot be new again", (await Wetting.UndoPreshrinkAsync("K0001", "Ada", "u2", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_coil_that_came_in_preshrunk_was_not_soaked_here()
    {
        await HangAsync(Preshrunk, "500 ft");
        Assert.StartsWith("Coil K0001 was not soaked here", (await Wetting.UndoPreshrinkAsync("K0001", "Ada", "u1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Contains("preshrunk already", (await Wetting.PreshrinkAsync("K0001", Feet(500), Feet(450), "Ada", "p1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("polypropylene", "600 ft", "525 ft", "coil:")]
    [InlineData("manila", "601 ft", "525 ft", "length before:")]
    [InlineData("manila", "0 ft", "525 ft", "length before:")]
    [InlineData("manila", "600 ft", "600 ft", "length after:")]
    [InlineData("manila", "600 ft", "300 ft", "length after:")]
    [InlineData("manila", "600 ft", "0 ft", "length after:")]
    public async Task What_cannot_be_is_refused_by_its_name_for_a_coil_and_for_a_sample(string material, string before, string after, string field)
    {
        await HangAsync(Manila with { Material = Rope.Materials[material] }, "600 ft");
        var (first, then) = (LengthText.Parse(before).OrThrow(), LengthText.Parse(after).OrThrow());
        Assert.StartsWith(field, (await Wetting.PreshrinkAsync("K0001", first, then, "Ada", "p1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.StartsWith(field, (await Wetting.KeepSampleAsync("K0001", first, then, "Ada", "s1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, _shop.Count("shrinkings"));
        Assert.Equal(Feet(600), _shop.Stock.Find("K0001")!.Left);
    }

    [Fact]
    public async Task Only_natural_rope_comes_in_preshrunk()
    {
        var answer = await _shop.Stock.ReceiveAsync(new(Preshrunk with { Material = RopeMaterial.Nylon }, "L1", Feet(10), ""), "Ada", "r1", Cancel);
        Assert.StartsWith("preshrunk: nylon", answer.Problem?.ToString(), StringComparison.Ordinal);
    }

    // 10 ft to 8 ft 9 in loses 12.5 %; with 20 ft to 17 ft, 30 ft became 25 ft 9 in: 14.1667 %, to a tenth 14.2 %.
    [Fact]
    public async Task Samples_of_a_lot_count_by_their_lengths_and_drafts_are_offered_what_the_lot_in_stock_loses()
    {
        await HangAsync(Manila, "600 ft", "M-1");
        await HangAsync(Manila, "600 ft", "M-1");
        await HangAsync(Manila, "600 ft", "M-2");
        await HangAsync(Manila with { Colour = "tarred" }, "600 ft", "M-3");
        Assert.Null(Wetting.Offer(Manila.AsRope));
        Assert.True((await Wetting.KeepSampleAsync("K0001", Feet(10), LengthText.Parse("8 ft 9 in").OrThrow(), "Ada", "s1", Cancel)).IsDone);
        Assert.Equal(("M-1", "12.5%"), Offered());
        await Wetting.KeepSampleAsync("K0002", Feet(20), Feet(17), "Ada", "s2", Cancel);
        Assert.Equal(("M-1", "14.2%"), Offered());
        Assert.Equal(["12.5%", "15%"], Wetting.Of(_shop.Stock.Find("K0002")!).Measured.Select(one => one.Loses.ToString()));

        await Wetting.KeepSampleAsync("K0003", Feet(10), Feet(9), "Ada", "s3", Cancel);
        Assert.Equal(("M-2", "10%"), Offered());
        await _shop.Stock.RetireAsync("K0003", "mildew", "Ada", "x1", Cancel);
        Assert.Equal(("M-1", "14.2%"), Offered());

        var wrong = Wetting.Of(_shop.Stock.Find("K0001")!).Measured[1].Id;
        Assert.StartsWith("sample:", (await Wetting.TakeSampleBackAsync("K0001", wrong, "Ada", "b0", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.True((await Wetting.TakeSampleBackAsync("K0002", wrong, "Ada", "b1", Cancel)).IsDone);
        Assert.Equal(("M-1", "12.5%"), Offered());
        Assert.Null(Wetting.Offer(new Rope(RopeMaterial.Nylon, Manila.Diameter)));
        Assert.Null(Wetting.Offer(Manila.AsRope with { Colour = "tarred" }));
        Assert.Equal(Feet(600), _shop.Stock.Find("K0001")!.Left);
        Assert.Empty(Findings());

        (string, string) Offered() => Wetting.Offer(Manila.AsRope) is { } offer ? (offer.Lot, offer.Loses.ToString()) : default;
    }

    // 12.5 % of what was, of 87.5 % that is left: 1 / 7, to a tenth 14.3 %.
    [Fact]
    public async Task A_draft_of_the_rope_is_offered_what_its_lot_loses()
    {
        await HangAsync(Manila, "600 ft", "M-1");
        await Wetting.KeepSampleAsync("K0001", Feet(10), LengthText.Parse("8 ft 9 in").OrThrow(), "Ada", "s1", Cancel);
        var previews = new DraftPreviews(_shop.Database, new ShopTablesShelf(_shop.Database, ShopTables.Standard));
        var form = SmallJobs.FourPosts();
        Assert.False(previews.Of(form).DeskNotes.ContainsKey(DraftPreview.LosesField));
        var note = Assert.Single(previews.Of(form with { Rope = form.Rope with { Material = "manila" } }).DeskNotes[DraftPreview.LosesField]);
        Assert.Equal("Lot M-1 loses 12.5% of its length, as this shop measured it (measurements: 1). Added to the net length, that is 14.3%.", note.Text);
    }

    [Fact]
    public async Task Preshrunk_jobs_are_cut_from_preshrunk_coils_and_others_from_new_ones()
    {
        await HangAsync(Manila, "50 ft", "new");
        await HangAsync(Preshrunk, "50 ft", "old");
        await TakeInAsync("LQ-1", "preshrunk");
        await TakeInAsync("LQ-2", "trimmed");
        await TakeInAsync("LQ-3", "hung-long");
        Assert.Equal([(Manila, 2L), (Preshrunk, 1L)], Plans.Waiting().Select(rope => (rope.Kind, rope.Pieces)).OrderBy(rope => rope.Pieces == 1));
        await PlanAsync(Manila);
        await PlanAsync(Preshrunk);
        Assert.Equal(["old", "new", "new"], ((string[])["LQ-1", "LQ-2", "LQ-3"]).Select(number => _shop.Jobs.Find(number)!.Pieces[0].Place!.Lot));
        Assert.Empty(Findings());
    }

    [Fact]
    public async Task Where_only_the_other_rope_is_on_hand_the_plan_says_so()
    {
        await BuyAsync("");
        await HangAsync(Manila, "50 ft");
        await TakeInAsync("LQ-1", "preshrunk");
        var answer = await Desk.DraftAsync(Preshrunk, dueBy: null, Budget, "Ada", cancel: Cancel);
        Assert.False(answer.IsDone);
        Assert.Equal(
            "No coil of 1 1/2 in manila, three-strand, preshrunk is on hand, only 50' 0\" of new rope. Soak and dry a coil first, and enter its length before and after on the coil's page.",
            answer.Problems[0].ToString());
        await Wetting.PreshrinkAsync("K0001", Feet(50), Feet(44), "Ada", "p1", Cancel);
        await PlanAsync(Preshrunk);
        await TakeInAsync("LQ-2", "trimmed");
        answer = await Desk.DraftAsync(Manila, dueBy: null, Budget, "Ada", cancel: Cancel);
        Assert.StartsWith("No coil of 1 1/2 in manila, three-strand is on hand, only 44' 0\" of preshrunk rope.", answer.Problems[0].ToString(), StringComparison.Ordinal);
    }

    // A coil of 600 ft that loses 12.5 % has 525 ft once it is dry.
    [Fact]
    public async Task A_coil_to_buy_for_preshrunk_rope_is_planned_with_what_is_left_of_it_once_it_is_dry()
    {
        await BuyAsync("600 ft");
        await TakeInAsync("LQ-1", "preshrunk");
        var answer = await Desk.DraftAsync(Preshrunk, dueBy: null, Budget, "Ada", cancel: Cancel);
        Assert.Equal(Feet(525), Assert.Single(Plans.Find(answer.PlanId)!.Coils).Start);
    }

    [Fact]
    public async Task Pieces_that_wait_lose_their_place_on_a_coil_that_is_soaked_and_a_coil_at_the_bench_is_not_soaked()
    {
        await HangAsync(Manila, "50 ft");
        await TakeInAsync("LQ-1", "trimmed");
        await PlanAsync(Manila);
        var code = _shop.Jobs.Find("LQ-1")!.Codes[0];
        Assert.True((await Bench.TakeAsync(code, "Cai", "t1", Cancel)).IsDone);
        Assert.StartsWith("Coil K0001 is at the bench", (await Wetting.PreshrinkAsync("K0001", Feet(50), Feet(44), "Ada", "p1", Cancel)).Problem?.ToString(), StringComparison.Ordinal);
        Assert.True((await Bench.HandBackAsync(code, "Cai", "h1", Cancel)).IsDone);
        Assert.True((await Wetting.PreshrinkAsync("K0001", Feet(50), Feet(44), "Ada", "p2", Cancel)).IsDone);
        Assert.Null(_shop.Jobs.Find("LQ-1")!.Pieces[0].Place);
        Assert.Empty(Findings());
    }

    [Fact]
    public async Task An_offcut_of_a_preshrunk_coil_is_preshrunk()
    {
        await HangAsync(Manila, "50 ft");
        await Wetting.PreshrinkAsync("K0001", Feet(50), Feet(44), "Ada", "p1", Cancel);
        await TakeInAsync("LQ-1", "preshrunk");
        await PlanAsync(Preshrunk);
        Assert.True((await Bench.RecordCutAsync(_shop.Jobs.Find("LQ-1")!.Codes[0], "Cai", "c1", Cancel)).IsDone);
        Assert.Equal(("K0002", Preshrunk), (_shop.Stock.InHand()[0].Mark, _shop.Stock.InHand()[0].Kind));
        Assert.Empty(Findings());
    }

    [Fact]
    public async Task Construction_and_colour_keep_ropes_apart()
    {
        var black = Manila with { Construction = "plaited", Colour = "black" };
        await HangAsync(Manila, "50 ft", "plain");
        await HangAsync(black, "50 ft", "black");
        await TakeInAsync("LQ-1", "trimmed", "\"construction\": \"plaited\", \"colour\": \"black\",");
        await TakeInAsync("LQ-2", "trimmed");
        await PlanAsync(black);
        await PlanAsync(Manila);
        Assert.Equal(["black", "plain"], ((string[])["LQ-1", "LQ-2"]).Select(number => _shop.Jobs.Find(number)!.Pieces[0].Place!.Lot));
        var none = await Desk.DraftAsync(Manila with { Colour = "black" }, dueBy: null, Budget, "Ada", cancel: Cancel);
        Assert.Contains("1 1/2 in manila, three-strand, black", none.Problems[0].ToString(), StringComparison.Ordinal);
        Assert.Equal(["plaited", "three-strand"], _shop.Stock.WordsUsed().Constructions);
        Assert.Equal(["black"], _shop.Stock.WordsUsed().Colours);
        Assert.Empty(Findings());
    }

    [Fact]
    public async Task Pieces_that_ask_for_nothing_may_be_cut_from_rope_of_any_construction_and_colour_and_no_others()
    {
        var black = Manila with { Construction = "plaited", Colour = "black" };
        await HangAsync(black, "50 ft");
        await TakeInAsync("LQ-1", "trimmed");
        var draft = await Desk.DraftAsync(Manila, dueBy: null, Budget, "Ada", cutFrom: black, cancel: Cancel);
        Assert.True((await Desk.AcceptAsync(draft.PlanId, "Ada", Cancel)).IsDone);
        Assert.Equal("K0001", _shop.Jobs.Find("LQ-1")!.Pieces[0].Place!.Coil);
        Assert.True((await Desk.MendAsync(draft.PlanId, Budget, "Ada", Cancel)).IsDone);
        var refused = await Desk.DraftAsync(black, dueBy: null, Budget, "Ada", cutFrom: Manila, cancel: Cancel);
        Assert.Contains("cannot be cut from", refused.Problems[0].ToString(), StringComparison.Ordinal);
        Assert.False((await Desk.DraftAsync(Manila, dueBy: null, Budget, "Ada", cutFrom: black with { IsPreshrunk = true }, cancel: Cancel)).IsDone);
    }

    public void Dispose() => _shop.Dispose();

    private static Length Feet(int feet) => Length.Foot * feet;

    private Task<StockAnswer> HangAsync(RopeKind kind, string length, string lot = "L1") =>
        _shop.Stock.ReceiveAsync(new(kind, lot, LengthText.Parse(length).OrThrow(), "rack 1"), "Ada", $"k{++_key}", Cancel);

    private async Task TakeInAsync(string number, string manner, string ofRope = "") => Assert.Equal(
        IntakeOutcome.TakenIn,
        await _shop.Intake.TakeInAsync(
            SmallJobs.OnePiece(number, material: "manila", ofRope: ofRope, allowances: $$"""{ "wetting": { "loses": "12.5%", "manner": "{{manner}}" } }"""), "Ada", cancel: Cancel));

    private async Task PlanAsync(RopeKind kind)
    {
        var draft = await Desk.DraftAsync(kind, dueBy: null, Budget, "Ada", cancel: Cancel);
        Assert.Empty(draft.Problems);
        Assert.True((await Desk.AcceptAsync(draft.PlanId, "Ada", Cancel)).IsDone);
    }

    private async Task BuyAsync(string lengths) => Assert.Empty(
        await new CuttingSettingsShelf(_shop.Database).SetCuttingAsync(new("1/8 in", "1/4 in", "1 in", "36 in", lengths), "Ada", Cancel));

    private IEnumerable<(string, Length)> Ledger() =>
        _shop.Database.Read(session => session.All<(string, Length)>("SELECT kind, nm FROM rope_uses ORDER BY id"));

    private (string, string, string) Told(long coil)
    {
        var line = new HistoryShelf(_shop.Database).Of("coil", coil)[^1];
        return (line.What, line.Before, line.After);
    }

    private List<CheckFinding> Findings() => _shop.Database.Read(session => StockBalance.Of(session).Concat(StatesAgainstHistory.Of(session)).Concat(StoredCounts.Of(session)).ToList());
}
