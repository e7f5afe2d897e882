using CsCheck;

namespace CutShop.CutPlan.Tests;

public sealed class RopeIsConservedTests
{
    private static readonly PlanBudget Short = new(TimeSpan.FromMilliseconds(60), UseSolver: false);

    [Fact]
    public void Trim_pieces_cuts_and_what_is_left_are_the_coil()
    {
        ForPlans((request, plan) =>
        {
            foreach (var coil in plan.Coils)
            {
                var pieces = coil.Pieces.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);
                var cuts = coil.Pieces.Count * (request.Allowances.Kerf + request.Allowances.Squaring);
                Assert.Equal(coil.Start, request.Allowances.FirstTrim + pieces + cuts + coil.Scrap + coil.Offcut);
                Assert.False(coil.Left.IsNegative);
            }
        });
    }

    [Fact]
    public void Every_piece_is_cut_once()
    {
        ForPlans((request, plan) => Assert.Equal(
            request.Pieces.Select(piece => (piece.Code, piece.Cut)).Order(),
            plan.Coils.SelectMany(coil => coil.Pieces).Select(piece => (piece.Code, piece.Cut)).Order()));
    }

    [Fact]
    public void Tape_marks_run_on_from_the_first_trim_without_a_gap()
    {
        ForPlans((request, plan) =>
        {
            foreach (var coil in plan.Coils)
            {
                var mark = request.Allowances.FirstTrim;
                foreach (var piece in coil.Pieces)
                {
                    Assert.Equal(mark, piece.From);
                    Assert.Equal(piece.Cut, piece.To - piece.From);
                    mark = piece.To + request.Allowances.Kerf + request.Allowances.Squaring;
                }
                Assert.Equal(coil.Start - mark, coil.Left);
            }
        });
    }

    [Fact]
    public void A_job_that_wants_one_lot_gets_one()
    {
        var jobs = 0;
        ForPlans((request, plan) =>
        {
            var lots =
                from coil in plan.Coils
                from cut in coil.Pieces
                join piece in request.Pieces on cut.Code equals piece.Code
                where piece.OneLotJob is not null
                group coil.Lot by piece.OneLotJob;
            foreach (var job in lots)
            {
                jobs++;
                Assert.Single(job.Distinct());
            }
        });
        Assert.True(jobs > 20);
    }

    [Fact]
    public void The_aims_of_a_plan_are_what_its_coils_add_up_to()
    {
        ForPlans((request, plan) =>
        {
            var cut = plan.Coils.Select(coil => coil.Coil).ToHashSet();
            var rack = request.Coils.Where(coil => coil.IsOffcut && !cut.Contains(coil.Id)).Select(coil => coil.Left)
                .Concat(plan.Coils.Where(coil => coil.IsKept).Select(coil => coil.Left)).ToList();
            Assert.Equal(
                new PlanAims(
                    plan.ToBuy.Aggregate(Length.Zero, (sum, length) => sum + length),
                    plan.Coils.Aggregate(Length.Zero, (sum, coil) => sum + coil.Scrap),
                    plan.Coils.Count(coil => coil.Kind != CoilKind.Offcut),
                    rack.Count,
                    rack.DefaultIfEmpty(Length.Zero).Max()),
                plan.Aims);
        });
    }

    private static void ForPlans(Action<CutRequest, RopePlan> check)
    {
        var plans = 0;
        Requests.Medium.Sample(
            request =>
            {
                if (CutPlanner.Plan(request, Short).Plan is not { } plan)
                    return;
                plans++;
                check(request, plan);
            },
            iter: 60, seed: "0000KOIGhvTm", threads: 1);
        Assert.True(plans > 20);
    }
}
