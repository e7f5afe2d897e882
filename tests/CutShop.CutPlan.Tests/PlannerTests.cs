using System.Globalization;
using CutShop.Testing.CutPlans;

namespace CutShop.CutPlan.Tests;

public sealed class PlannerTests
{
    private static readonly CutAllowances NoLoss = new(Length.Zero, Length.Zero, Length.Zero, Length.FromInches(36));

    [Fact]
    public void Marks_are_read_from_the_free_end_with_trim_kerf_and_squaring_in_their_places()
    {
        // By hand: trim 1; 60 to 61; cut 3/8; 40 from 61 3/8 to 101 3/8; cut 3/8: 101 3/4 used of 144, 42 1/4 left.
        var plan = Plan(new([Piece("A", 40), Piece("B", 60)], [Offcut("R1", 144)], [], CutAllowances.Default));
        var coil = Assert.Single(plan.Coils);
        Assert.Equal(
            [
                new("B", Length.FromInches(60), Length.Inch, Length.FromInches(61)),
                new CutPiece("A", Length.FromInches(40), Eighths(491), Eighths(811)),
            ],
            coil.Pieces);
        Assert.Equal(Eighths(338), coil.Offcut);
        Assert.Equal(Length.Zero, coil.Scrap);
    }

    [Fact]
    public void Less_scrap_comes_before_fewer_full_coils()
    {
        // The 80 in offcut would leave 30 in of scrap; the full coil leaves an offcut worth keeping.
        var plan = Plan(new([Piece("A", 50)], [Offcut("R1", 80), Full("C1", 600)], [], NoLoss));
        Assert.Equal("C1", Assert.Single(plan.Coils).Coil);
        Assert.Equal(new(Length.Zero, Length.Zero, 1, 2, Length.FromInches(550)), plan.Aims);
    }

    [Fact]
    public void An_untouched_full_coil_stays_closed_where_offcuts_do_without_scrap()
    {
        var plan = Plan(new([Piece("A", 50)], [Full("C1", 50), Offcut("R1", 100)], [], NoLoss));
        Assert.Equal("R1", Assert.Single(plan.Coils).Coil);
    }

    [Fact]
    public void Offcuts_are_used_up_before_a_longer_one_is_shortened()
    {
        var plan = Plan(new([Piece("A", 50), Piece("B", 60)], [Offcut("R1", 50), Offcut("R2", 60), Offcut("R3", 300)], [], NoLoss));
        Assert.Equal(["R1", "R2"], plan.Coils.Select(coil => coil.Coil));
        Assert.Equal(2, plan.OffcutsUsedUp);
        Assert.Equal(new(Length.Zero, Length.Zero, 0, 1, Length.FromInches(300)), plan.Aims);
    }

    [Fact]
    public void A_length_just_under_the_keep_length_is_scrap_and_one_at_it_is_kept()
    {
        var under = Plan(new([Piece("A", 50)], [Offcut("R1", 85)], [], NoLoss));
        Assert.Equal(Length.FromInches(35), under.Aims.Scrap);
        var at = Plan(new([Piece("A", 50)], [Offcut("R1", 86)], [], NoLoss));
        Assert.Equal(Length.FromInches(36), at.Coils[0].Offcut);
    }

    [Fact]
    public void A_shortage_is_bought_in_the_least_rope()
    {
        // 250 in are short: 300 in one coil, or 2 x 150; the longer coil is one coil fewer.
        var plan = Plan(new(
            [Piece("A", 100), Piece("B", 100), Piece("C", 50), Piece("D", 100)], [Offcut("R1", 100)],
            [Length.FromInches(600), Length.FromInches(300), Length.FromInches(150)], NoLoss));
        Assert.Equal([Length.FromInches(300)], plan.ToBuy);
        Assert.Equal(["R1", "buy 1"], plan.Coils.Select(coil => coil.Coil));
        Assert.True(plan.Proof.IsBest);
    }

    [Fact]
    public void Nothing_is_bought_where_the_coils_on_hand_do()
    {
        var plan = Plan(new([Piece("A", 100)], [Full("C1", 100)], [Length.FromInches(600)], NoLoss));
        Assert.Empty(plan.ToBuy);
    }

    [Fact]
    public void Coils_bought_together_are_one_lot_and_not_a_lot_on_hand()
    {
        var pieces = Enumerable.Range(1, 4).Select(n => Piece($"A{n}", 90) with { OneLotJob = "A" }).ToList();
        var plan = Plan(new(pieces, [Full("C1", 190)], [Length.FromInches(200)], NoLoss));
        Assert.Equal(["buy 1", "buy 2"], plan.Coils.Select(coil => coil.Coil));
    }

    [Fact]
    public void Pieces_due_after_the_window_are_left_waiting()
    {
        var friday = new DateOnly(2026, 11, 27);
        var late = Piece("B", 50) with { Due = friday.AddDays(1) };
        var plan = Plan(new([Piece("A", 50) with { Due = friday }, late, Piece("C", 10)], [Full("C1", 600)], [], NoLoss, DueBy: friday));
        Assert.Equal([late], plan.NotDue);
        Assert.Equal(["A", "C"], plan.Coils.SelectMany(coil => coil.Pieces).Select(piece => piece.Code));
    }

    [Fact]
    public void Nothing_due_is_a_plan_that_cuts_nothing()
    {
        var plan = Plan(new([], [Offcut("R1", 50), Full("C1", 600)], [], NoLoss));
        Assert.Empty(plan.Coils);
        Assert.Equal(new(Length.Zero, Length.Zero, 0, 1, Length.FromInches(50)), plan.Aims);
    }

    [Fact]
    public void Pieces_that_fill_their_coils_to_the_nanometre_leave_nothing()
    {
        var odd = Length.FromNanometres(1_234_567_891);
        var plan = Plan(new(
            [new("A", odd), new("B", odd + Length.FromNanometres(1))],
            [new("R1", "lot", odd + odd + Length.FromNanometres(1), IsOffcut: true)], [], NoLoss));
        Assert.Equal(new(Length.Zero, Length.Zero, 0, 0, Length.Zero), plan.Aims);
        Assert.True(plan.Proof.IsBest);
    }

    [Fact]
    public void Two_offcuts_that_want_the_same_piece_cannot_both_be_used_up()
    {
        // Only the 50 in piece fills a 50 in offcut; the 110 in offcut takes 50 and 60, or nothing that comes out even.
        var request = new CutRequest(
            [Piece("A", 50), Piece("B", 60), Piece("C", 70)],
            [Offcut("R1", 50), Offcut("R2", 50), Offcut("R3", 110), Full("C1", 600)], [], NoLoss);
        var task = new PlanSheet(request, [.. request.Pieces]).Stock.With([]);
        Assert.Equal(1, UsedUpTogether.Most(task, CoilReach.Of(task)!, new(TimeSpan.FromSeconds(20), default)));
    }

    [Fact]
    public void Tight_stock_where_the_plain_rules_leave_a_piece_over_is_cut_by_the_fullest_coils()
    {
        int[] pieces = [44, 43, 31, 30, 26, 26];
        var request = new CutRequest(
            [.. pieces.Select((inches, n) => Piece($"P{n}", inches))], [Offcut("R1", 100), Offcut("R2", 100)], [], NoLoss);
        var task = new PlanSheet(request, [.. request.Pieces]).Stock.With([]);
        // By hand: 44 + 30 + 26 and 43 + 31 + 26 are 100 each. The rule pairs 44 with 43 and has 26 left over.
        Assert.Null(TightestFit.Of(task, []));
        Assert.NotNull(FullestFit.Of(task, [], null));
    }

    [Fact]
    public void Sixty_pieces_are_proved_best()
    {
        var plan = Plan(ShopCases.Drawn(seed: 1, pieces: 60, fullCoils: 3, offcuts: 12));
        Assert.Equal("proved best", plan.Proof.ToString());
        Assert.Equal(Length.Zero, plan.Aims.Scrap);
    }

    [Fact]
    public void An_absent_solver_is_said_and_a_plan_is_given()
    {
        var result = CutPlanner.Plan(Stubborn(), new(TimeSpan.FromSeconds(1)), null, () => false, default);
        Assert.True(result.Plan?.SolverAbsent);
        Assert.Equal(16, result.Plan!.Coils.Sum(coil => coil.Pieces.Count));
        Assert.NotEqual(PlanMethod.Solver, result.Plan.Method);
    }

    [Fact]
    public void A_solver_that_is_not_wanted_is_not_called_absent()
    {
        var result = CutPlanner.Plan(Stubborn(), new(TimeSpan.FromSeconds(1), UseSolver: false), null, () => false, default);
        Assert.False(result.Plan?.SolverAbsent);
    }

    [Fact]
    public void A_plan_that_is_not_proved_says_how_far_its_bound_is()
    {
        var result = CutPlanner.Plan(Stubborn(), new(TimeSpan.FromSeconds(1), UseSolver: false));
        var plan = result.Plan!;
        Assert.Equal(PlanAim.Scrap, plan.Proof.FirstOpen);
        Assert.Equal(plan.Aims.Scrap, plan.Proof.LengthGap);
        Assert.Equal($"within {plan.Aims.Scrap} of the bound on scrap", plan.Proof.ToString());
    }

    [Fact]
    public void A_cancelled_search_gives_the_best_plan_so_far()
    {
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        var result = CutPlanner.Plan(Stubborn(), new(TimeSpan.FromMinutes(10)), null, cancelled.Token);
        Assert.Equal(16, result.Plan?.Coils.Sum(coil => coil.Pieces.Count));
    }

    [Fact]
    public void A_search_cancelled_while_the_solver_runs_ends_with_the_best_plan_so_far()
    {
        using var cancelled = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        var result = CutPlanner.Plan(Stubborn(), new(TimeSpan.FromMinutes(10)), null, cancelled.Token);
        Assert.Equal(16, result.Plan?.Coils.Sum(coil => coil.Pieces.Count));
    }

    [Fact]
    public void Progress_only_ever_tells_of_better_plans_and_ends_with_the_plan_given()
    {
        var told = new Told();
        var result = CutPlanner.Plan(ShopCases.Drawn(seed: 3, pieces: 60, fullCoils: 3, offcuts: 12), PlanBudget.Default, told);
        Assert.NotEmpty(told.All);
        Assert.All(told.All.Zip(told.All.Skip(1)), pair => Assert.True(pair.Second.Best < pair.First.Best));
        Assert.Equal(result.Plan?.Aims, told.All[^1].Best);
    }

    [Fact]
    public void Words_and_figures_are_the_same_in_any_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new("ar-SA");
            var result = CutPlanner.Plan(new([Piece("A", 700)], [Full("C1", 600)], [], CutAllowances.Default));
            Assert.Equal("piece A of 58' 4\" needs 58' 5 3/8\" with its cut, after the first trim; the longest coil, on hand or to buy, is 50' 0\"", result.Problems[0].Text);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>Pieces that never come out even: each leaves scrap on its coil, and quick rules cannot prove that.</summary>
    private static CutRequest Stubborn() => new(
        [.. Enumerable.Range(1, 16).Select(n => Piece($"P{n}", 40 + n))],
        [.. Enumerable.Range(1, 16).Select(n => Offcut($"R{n}", 60 + n))],
        [], CutAllowances.Default);

    private static RopePlan Plan(CutRequest request)
    {
        var result = CutPlanner.Plan(request);
        Assert.Empty(result.Problems);
        return result.Plan!;
    }

    private static WaitingPiece Piece(string code, int inches) => new(code, Length.FromInches(inches));

    private static Coil Offcut(string id, int inches) => new(id, "lot 1", Length.FromInches(inches), IsOffcut: true);

    private static Coil Full(string id, int inches) => new(id, "lot 1", Length.FromInches(inches), IsOffcut: false);

    private static Length Eighths(long eighths) => Length.FromSixtyFourths(8 * eighths);
}
