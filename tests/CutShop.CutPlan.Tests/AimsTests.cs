using CsCheck;
using CutShop.Testing.CutPlans;

namespace CutShop.CutPlan.Tests;

public sealed class AimsTests
{
    private static readonly PlanBudget Enough = new(TimeSpan.FromSeconds(20));

    [Fact]
    public void A_small_plan_is_as_good_as_the_best_of_all_assignments_and_says_so()
    {
        Requests.Small.Sample(
            request =>
            {
                var best = EveryAssignment.Best(request);
                var result = CutPlanner.Plan(request, Enough, null, () => false, default);
                if (best is null)
                {
                    Assert.Null(result.Plan);
                    Assert.NotEmpty(result.Problems);
                    return;
                }
                Assert.Equal(best, result.Plan?.Aims);
                Assert.Equal("proved best", result.Plan!.Proof.ToString());
            },
            iter: 600, seed: "0000KOIGhvTm", threads: 1);
    }

    [Fact]
    public void The_solver_alone_is_as_good_as_the_best_of_all_assignments()
    {
        Requests.Small.Where(request => request.Coils.Count > 0).Sample(
            request =>
            {
                var onHand = request with { StandardLengths = [] };
                var task = new PlanSheet(onHand, [.. onHand.Pieces]).Stock.With([]);
                if (task.Coils.Length == 0)
                    return;
                var bounds = new AimBounds(task, null);
                var (cuts, isImpossible) = SolverSearch.Run(task, null, bounds, new(TimeSpan.FromSeconds(20), default), _ => { });
                var best = EveryAssignment.Best(onHand);
                Assert.Equal(best is null, isImpossible);
                if (cuts is null)
                    return;
                var stubs = onHand.Coils.Where(coil => coil.IsOffcut && coil.Left <= onHand.Allowances.FirstTrim).ToList();
                Assert.Empty(stubs);
                Assert.Equal(best, task.AimsOf(cuts));
                Assert.True(PlanProof.Of(task.AimsOf(cuts), bounds.Below(task.AimsOf(cuts))).IsBest);
            },
            iter: 60, seed: "0000KOIGhvTm", threads: 1);
    }

    [Fact]
    public void No_bound_is_better_than_the_best_of_all_assignments()
    {
        Requests.Small.Sample(
            request =>
            {
                var onHand = request with { StandardLengths = [] };
                if (EveryAssignment.Best(onHand) is not { } best)
                    return;
                var task = new PlanSheet(onHand, [.. onHand.Pieces]).Stock.With([]);
                var bound = new AimBounds(task, new(task, CoilReach.Of(task)!, new(TimeSpan.FromSeconds(20), default))).Below(best);
                Assert.True(bound <= best, $"{bound} is not a bound on {best}");
            },
            iter: 600, seed: "0000KOIGhvTm", threads: 1);
    }

    [Fact]
    public void A_plan_is_never_worse_than_best_fit_decreasing()
    {
        var compared = 0;
        Requests.Medium.Sample(
            request =>
            {
                if (BestFitDecreasing.Aims(request) is not { } rule)
                    return;
                compared++;
                var plan = CutPlanner.Plan(request, new(TimeSpan.FromMilliseconds(60), UseSolver: false)).Plan;
                Assert.NotNull(plan);
                Assert.True(plan.Aims <= rule, $"{plan.Aims} is worse than {rule}");
            },
            iter: 150, seed: "0000KOIGhvTm", threads: 1);
        Assert.True(compared > 50);
    }

    [Fact]
    public void The_order_in_which_pieces_and_coils_are_given_does_not_matter()
    {
        Requests.Small.Sample(
            request =>
            {
                var turned = request with { Pieces = [.. request.Pieces.Reverse()], Coils = [.. request.Coils.Reverse()] };
                var (plan, other) = (CutPlanner.Plan(request, Enough).Plan, CutPlanner.Plan(turned, Enough).Plan);
                Assert.Equal(plan?.Aims, other?.Aims);
            },
            iter: 100, seed: "0000KOIGhvTm", threads: 1);
    }
}
