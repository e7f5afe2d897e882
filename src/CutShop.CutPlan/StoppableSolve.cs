using System.Globalization;
using Google.OrTools.Sat;

namespace CutShop.CutPlan;

/// <summary>One run of the constraint solver on one thread, seeded, that ends with the clock or when cancelled.</summary>
internal sealed class StoppableSolve(SearchClock clock) : IDisposable
{
    private readonly CpSolver _solver = new();

    /// <summary>Runs the model.</summary>
    public CpSolverStatus Run(CpModel model, CpSolverSolutionCallback? onBetter = null)
    {
        var seconds = Math.Max(clock.Left.TotalSeconds, 0.001).ToString(CultureInfo.InvariantCulture);
        _solver.StringParameters = $"num_workers:1,random_seed:1,max_time_in_seconds:{seconds}";
        using var stop = clock.Cancelled.Register(_solver.StopSearch);
        return _solver.Solve(model, onBetter);
    }

    /// <summary>The value of a variable in the solution found.</summary>
    public long Value(IntVar variable) => _solver.Value(variable);

    /// <summary>The bound proved on the objective.</summary>
    public double Bound => _solver.BestObjectiveBound;

    /// <inheritdoc/>
    public void Dispose() => _solver.Dispose();
}
