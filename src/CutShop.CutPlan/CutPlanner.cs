using CutShop.CutPlan.Search;

namespace CutShop.CutPlan;

/// <summary>
/// Plans which pieces of one rope are cut from which coils. The aims, in order: every piece that is due is cut; the least
/// rope bought; the least scrap; the fewest untouched full coils opened; the fewest lengths left on the rack; the longest
/// single offcut kept.
/// </summary>
/// <remarks>
/// Lengths are exact throughout. Every piece ends in a cut that takes kerf and squaring, the last of a coil too, since a
/// coil's far end is ragged; every coil that is cut loses the first trim. Coils bought together are one lot, which is to
/// be asked for when they are ordered, and not a lot that is on hand.
/// </remarks>
public static class CutPlanner
{
    /// <summary>The best plan that the time allows, with what is proved of it.</summary>
    /// <param name="request">Pieces, coils and allowances.</param>
    /// <param name="budget">Time, and whether the solver package may be used.</param>
    /// <param name="progress">Told each better plan; null where nobody watches.</param>
    /// <param name="cancelled">Ends the search early, with the best plan so far; it does not throw.</param>
    /// <returns>The plan, or the problems that stand in its way. Input is never an exception.</returns>
    public static CutPlanResult Plan(
        CutRequest request, PlanBudget? budget = null, IProgress<PlanProgress>? progress = null, CancellationToken cancelled = default) =>
        Plan(request, budget ?? PlanBudget.Default, progress, () => NativeSolver.IsPresent, cancelled);

    /// <summary>The same, with the answer to whether the native solver is there given from outside.</summary>
    internal static CutPlanResult Plan(
        CutRequest request, PlanBudget budget, IProgress<PlanProgress>? progress, Func<bool> solverIsPresent, CancellationToken cancelled)
    {
        ArgumentNullException.ThrowIfNull(request);
        var clock = new SearchClock(budget.Time, cancelled);
        var problems = RequestCheck.Of(request, budget);
        if (problems.Count > 0)
            return new(null, problems);
        var due = request.Pieces.Where(piece => request.DueBy is null || piece.Due is null || piece.Due <= request.DueBy).ToList();
        problems = RequestCheck.OfRoom(request, due);
        if (problems.Count > 0)
            return new(null, problems);
        var solverAbsent = budget.UseSolver && !solverIsPresent();
        var sheet = new PlanSheet(request, due);
        if (due.Count == 0)
            return new(sheet.Nothing(solverAbsent, clock.Spent), []);
        var end = PurchaseSearch.Run(sheet.Stock, budget.UseSolver && !solverAbsent, clock, progress is null ? null : Tell);
        if (end.Plan is null)
            return new(null, [end.IsImpossible ? PlanProblems.CannotBeCut() : PlanProblems.NoneFound()]);
        return new(sheet.Write(end.Plan, solverAbsent, clock.Spent), []);

        void Tell(FoundPlan plan) => progress.Report(new(clock.Spent, plan.Aims, PlanProof.Of(plan.Aims, plan.Bound)));
    }
}
