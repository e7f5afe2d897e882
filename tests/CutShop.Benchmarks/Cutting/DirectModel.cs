using CutShop.Testing.CutPlans;
using Google.OrTools.Sat;

namespace CutShop.Benchmarks.Cutting;

/// <summary>The plain way to ask a solver: how many of each size on each coil, and which coils are opened.</summary>
internal static class DirectModel
{
    /// <summary>Coils in the best solution found; those of best-fit decreasing where there is none.</summary>
    public static int Coils(PublishedInstance instance, int bestFit, SearchClock clock)
    {
        var model = new CpModel();
        var sizes = instance.Items.GroupBy(size => size).OrderByDescending(group => group.Key).ToList();
        var opened = Enumerable.Range(0, bestFit).Select(coil => model.NewBoolVar($"opened{coil}")).ToArray();
        var cut = sizes.Select(size => opened.Select((_, coil) =>
            model.NewIntVar(0, Math.Min(size.Count(), instance.Capacity / size.Key), $"cut{size.Key}_{coil}")).ToArray()).ToArray();
        for (var size = 0; size < sizes.Count; size++)
            model.Add(LinearExpr.Sum(cut[size]) == sizes[size].Count());
        for (var coil = 0; coil < bestFit; coil++)
        {
            model.Add(LinearExpr.WeightedSum(cut.Select(row => row[coil]), sizes.Select(size => size.Key)) <= instance.Capacity * opened[coil]);
            if (coil > 0)
                model.AddImplication(opened[coil], opened[coil - 1]);
        }
        model.Minimize(LinearExpr.Sum(opened));
        using var solve = new StoppableSolve(clock);
        var status = solve.Run(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? (int)opened.Sum(solve.Value) : bestFit;
    }
}
