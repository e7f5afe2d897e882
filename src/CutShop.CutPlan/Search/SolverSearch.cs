using Google.OrTools.Sat;

namespace CutShop.CutPlan.Search;

/// <summary>
/// Asks the constraint solver for one aim after another, from the first that is not proved: each answer is held while the
/// next aim is sought. The best plan known is its hint, and stays the answer where the solver has none better.
/// </summary>
internal sealed class SolverSearch
{
    private readonly CutTask _task;
    private readonly AimBounds _bounds;
    private readonly SearchClock _clock;
    private readonly Action<int[][]> _better;
    private readonly SolverModel _model;
    private PlanAims? _bestAims;

    private SolverSearch(CutTask task, int[][]? best, AimBounds bounds, SearchClock clock, Action<int[][]> better)
    {
        (_task, _bounds, _clock, _better) = (task, bounds, clock, better);
        _model = new(task);
        Best = best;
        _bestAims = best is null ? null : task.AimsOf(best);
    }

    private int[][]? Best { get; set; }

    private bool IsImpossible { get; set; }

    /// <summary>Searches until all aims are proved or time is up.</summary>
    /// <param name="task">The task.</param>
    /// <param name="best">The best plan known, or null.</param>
    /// <param name="bounds">Told what is proved.</param>
    /// <param name="clock">Time.</param>
    /// <param name="better">Told each better plan.</param>
    /// <returns>The best plan; null, with whether it is proved that there is none, where none was found.</returns>
    public static (int[][]? Best, bool IsImpossible) Run(CutTask task, int[][]? best, AimBounds bounds, SearchClock clock, Action<int[][]> better)
    {
        var search = new SolverSearch(task, best, bounds, clock, better);
        foreach (var aim in Enum.GetValues<PlanAim>())
        {
            if (!search.Settle(aim))
                break;
        }
        return (search.Best, search.IsImpossible);
    }

    /// <summary>Seeks one aim and holds the answer; false where there is nothing more to seek.</summary>
    private bool Settle(PlanAim aim)
    {
        if (_bestAims is { } known && known.Compare(_bounds.Below(known), aim) <= 0)
        {
            _model.Hold(aim, known);
            return true;
        }
        if (_clock.IsUp)
            return false;
        var held = _bestAims;
        _model.Seek(aim, Best);
        using var solve = new StoppableSolve(_clock.AtMost(_clock.Left * (aim == PlanAim.LongestOffcut ? 1 : 0.6)));
        using var watch = new EachBetter(_model, Offer);
        var status = solve.Run(_model.Model, watch);
        if (status == CpSolverStatus.Infeasible)
        {
            IsImpossible = Best is null;
            return false;
        }
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
            Offer(_model.Cuts(solve.Value));
        if (_bestAims is not { } best)
            return false;
        if (status == CpSolverStatus.Optimal)
            _bounds.Prove(aim, best);
        else if (held is not null || status == CpSolverStatus.Feasible)
            _bounds.Prove(aim, _model.AtBound(aim, best, solve.Bound));
        _model.Hold(aim, best);
        return true;
    }

    private void Offer(int[][] cuts)
    {
        var aims = _task.AimsOf(cuts);
        if (_bestAims is { } best && aims >= best)
            return;
        (Best, _bestAims) = (cuts, aims);
        _better(cuts);
    }

    private sealed class EachBetter(SolverModel model, Action<int[][]> offer) : CpSolverSolutionCallback
    {
        public override void OnSolutionCallback() => offer(model.Cuts(Value));
    }
}
