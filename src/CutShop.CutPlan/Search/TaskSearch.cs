namespace CutShop.CutPlan.Search;

/// <summary>Searches one task: quick rules, our own search, every plan where pieces are few, then the solver for what is open.</summary>
internal sealed class TaskSearch
{
    private const int FewPieces = 12;
    private const int FullestDraws = 1_000;

    private readonly CutTask _task;
    private readonly int[][]? _start;
    private readonly bool _withSolver;
    private readonly SearchClock _clock;
    private readonly Action<FoundPlan> _progress;
    private readonly AimBounds _bounds;
    private readonly CoilReach[]? _reach;
    private int[][]? _best;
    private PlanMethod _method;

    /// <summary>A search of one task.</summary>
    /// <param name="task">The task.</param>
    /// <param name="start">A plan to start from, or null.</param>
    /// <param name="withSolver">Whether the solver package may be used.</param>
    /// <param name="clock">Time.</param>
    /// <param name="progress">Told each better plan.</param>
    public TaskSearch(CutTask task, int[][]? start, bool withSolver, SearchClock clock, Action<FoundPlan> progress)
    {
        (_task, _start, _withSolver, _clock, _progress) = (task, start, withSolver, clock, progress);
        _reach = CoilReach.Of(task);
        _bounds = new(task, _reach is null ? null : new(task, _reach, clock.AtMost(clock.Left / 10)));
    }

    private bool IsProved => _best is not null && PlanProof.Of(_task.AimsOf(_best), _bounds.Below(_task.AimsOf(_best))).IsBest;

    /// <summary>The best plan, or whether it is proved that there is none.</summary>
    public (FoundPlan? Plan, bool IsImpossible) Run()
    {
        if (_task.Coils.Sum(coil => coil.Room) < _task.Demand)
            return (null, true);
        var lots = LotChoices.Of(_task);
        if (lots.Count == 0)
            return (null, true);
        QuickRules(lots);
        OwnSearch(lots);
        Fullest(lots);
        if (!IsProved && _task.Kinds.Sum(kind => kind.Count) <= FewPieces)
        {
            var every = new EveryPlan(_task, _best, _clock);
            if (every.Best is not null)
                Offer(every.Best, PlanMethod.OwnSearch);
            if (every.IsComplete && _best is null)
                return (null, true);
            if (every.IsComplete)
                _bounds.ProveBest(_task.AimsOf(_best!));
        }
        var isImpossible = false;
        if (_withSolver && !IsProved && !_clock.IsUp)
        {
            (var cuts, isImpossible) = SolverSearch.Run(_task, _best, _bounds, _clock, cuts => Offer(cuts, PlanMethod.Solver));
            if (cuts is not null)
                Offer(cuts, PlanMethod.Solver);
        }
        return (_best is null ? null : Found(), isImpossible);
    }

    private FoundPlan Found()
    {
        var aims = _task.AimsOf(_best!);
        return new(_task, _best!, aims, _bounds.Below(aims), _method);
    }

    private void QuickRules(List<int[]> lots)
    {
        Offer(_start, PlanMethod.QuickRule);
        foreach (var choice in lots)
        {
            Offer(TightestFit.Of(_task, choice), PlanMethod.QuickRule);
            Offer(TightestFit.LongestCoilFirst(_task, choice), PlanMethod.QuickRule);
        }
    }

    private void OwnSearch(List<int[]> lots)
    {
        if (_reach is null || _bounds.NoScrap is not { } bound)
            return;
        foreach (var steps in (int[])[CoilFilling.FewSteps, CoilFilling.ManySteps])
        {
            // Without time for all choices of lots, each gets its share.
            for (var choice = 0; choice < lots.Count && !IsProved && !_clock.IsUp; choice++)
            {
                var share = _clock.AtMost(_clock.Left * (_withSolver ? 0.4 : 0.8) / (lots.Count - choice));
                var search = new NoScrapSearch(_task, _reach, bound, steps, share);
                Offer(search.Find(lots[choice], _best is null ? null : _task.AimsOf(_best)), PlanMethod.OwnSearch);
                if (search.LongestProved is { } longest)
                    _bounds.Prove(PlanAim.LongestOffcut, longest);
            }
        }
    }

    /// <summary>Where scrap is left, coils cut as full as may be, in orders drawn from seeds.</summary>
    private void Fullest(List<int[]> lots)
    {
        if (_reach is null || _best is not null && _task.AimsOf(_best).Scrap == Takeoff.Lengths.Length.Zero)
            return;
        var clock = _clock.AtMost(_clock.Left / 10);
        for (var draw = 0; draw < FullestDraws && !clock.IsUp; draw++)
            Offer(FullestFit.Of(_task, lots[draw % lots.Count], draw < lots.Count ? null : new Random(draw)), PlanMethod.OwnSearch);
    }

    private void Offer(int[][]? cuts, PlanMethod method)
    {
        if (cuts is null || (_best is not null && _task.AimsOf(cuts) >= _task.AimsOf(_best)))
            return;
        (_best, _method) = (cuts, method);
        _progress(Found());
    }
}
