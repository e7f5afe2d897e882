namespace CutShop.CutPlan.Search;

/// <summary>Cuts coils to the sums their roles ask for, shortest coil first, going back where the pieces left do not add up.</summary>
internal sealed class CoilFilling
{
    /// <summary>Steps that nearly always do where there is a filling.</summary>
    public const int FewSteps = 100;

    /// <summary>Steps after which a filling is given up.</summary>
    public const int ManySteps = 3_000;

    private readonly CutTask _task;
    private readonly CoilReach[] _reach;
    private readonly CoilRoles _roles;
    private readonly int[]? _lots;
    private readonly SearchClock _clock;
    private readonly int[] _order;
    private readonly HashSet<int> _exact;
    private readonly int[] _kinds;
    private readonly int[] _left;
    private readonly int[][] _cuts;
    private readonly int _fillsACoil;
    private readonly int _mostSteps;
    private int _steps;

    /// <summary>A filling.</summary>
    /// <param name="task">The task.</param>
    /// <param name="reach">Reach of each coil.</param>
    /// <param name="roles">What each coil is for.</param>
    /// <param name="lots">Lot of each job that wants one; null leaves lots out of account.</param>
    /// <param name="chance">Shuffles which pieces are taken first; null takes the longest.</param>
    /// <param name="fillsACoil">Ways of cutting a coil to one sum that are tried before going back.</param>
    /// <param name="mostSteps">Steps before the filling is given up.</param>
    /// <param name="clock">Time.</param>
    public CoilFilling(CutTask task, CoilReach[] reach, CoilRoles roles, int[]? lots, Random? chance, int fillsACoil, int mostSteps, SearchClock clock)
    {
        (_task, _reach, _roles, _lots, _fillsACoil, _mostSteps, _clock) = (task, reach, roles, lots, fillsACoil, mostSteps, clock);
        _exact = [.. roles.Exact];
        _order = [.. roles.Exact.Concat(roles.Shorten).OrderBy(c => task.Coils[c].Room)];
        _kinds = [.. Enumerable.Range(0, task.Kinds.Length)];
        chance?.Shuffle(_kinds);
        _left = task.AllPieces();
        _cuts = task.NoCuts();
    }

    /// <summary>True where a failure means that there is no such filling.</summary>
    public bool IsExhaustive { get; private set; } = true;

    /// <summary>Counts by coil and kind, or null where no filling was found.</summary>
    /// <param name="mostMissed">How much less than the most, all together, may be cut from the coils to shorten; in nanometres.</param>
    public int[][]? Fill(long mostMissed) => From(0, mostMissed / _task.Grid) ? _cuts : null;

    private bool From(int at, long mayMiss)
    {
        if (at == _order.Length)
            return _roles.Carrier == CoilRoles.NoCarrier || Carry();
        if (++_steps > _mostSteps || _clock.IsUp)
        {
            IsExhaustive = false;
            return false;
        }
        var c = _order[at];
        var (coil, isExact) = (_task.Coils[c], _exact.Contains(c));
        var most = (int)((isExact ? coil.Room : _reach[c].Most) / _task.Grid);
        var least = isExact ? most : (int)Math.Max(0, most - mayMiss);
        var reach = ReachOf(coil.Lot, most);
        for (var sum = most; sum >= least; sum--)
        {
            if (!reach.Has(sum))
                continue;
            var fills = 0;
            foreach (var counts in reach.Fills(sum, _task.Kinds.Length))
            {
                if (++fills > _fillsACoil)
                {
                    IsExhaustive = false;
                    break;
                }
                Take(c, counts);
                if (From(at + 1, mayMiss - (most - sum)))
                    return true;
                PutBack(c, counts);
            }
            if (_steps > _mostSteps)
                return false;
        }
        return false;
    }

    private Reach ReachOf(int lot, int most)
    {
        var kinds = _kinds.Where(k => _left[k] > 0 && MayBe(k, lot) && _task.Kinds[k].Need / _task.Grid <= most).ToArray();
        return new(kinds, [.. kinds.Select(k => (int)(_task.Kinds[k].Need / _task.Grid))], [.. kinds.Select(k => _left[k])], most);
    }

    private bool MayBe(int kind, int lot) => _lots is null || _task.Kinds[kind].Job < 0 || _lots[_task.Kinds[kind].Job] == lot;

    private bool Carry()
    {
        var coil = _task.Coils[_roles.Carrier];
        var used = 0L;
        for (var k = 0; k < _left.Length; k++)
        {
            if (_left[k] == 0)
                continue;
            if (!MayBe(k, coil.Lot))
                return false;
            used += _left[k] * _task.Kinds[k].Need;
        }
        var left = coil.Room - used;
        if (left < 0 || _task.IsScrap(left) || (used == 0 && coil.IsFull))
            return false;
        _left.CopyTo(_cuts[_roles.Carrier], 0);
        return true;
    }

    private void Take(int coil, int[] counts)
    {
        for (var k = 0; k < counts.Length; k++)
        {
            _left[k] -= counts[k];
            _cuts[coil][k] = counts[k];
        }
    }

    private void PutBack(int coil, int[] counts)
    {
        for (var k = 0; k < counts.Length; k++)
        {
            _left[k] += counts[k];
            _cuts[coil][k] = 0;
        }
    }
}
