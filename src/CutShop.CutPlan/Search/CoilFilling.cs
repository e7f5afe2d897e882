namespace CutShop.CutPlan;

/// <summary>Cuts coils to the sums their roles ask for, shortest coil first, going back where the pieces left do not add up.</summary>
internal sealed class CoilFilling
{
    private const int FillsACoil = 24;
    private const int MostSteps = 150;

    private readonly CutTask _task;
    private readonly CoilReach[] _reach;
    private readonly CoilRoles _roles;
    private readonly int[] _lots;
    private readonly SearchClock _clock;
    private readonly int[] _order;
    private readonly HashSet<int> _exact;
    private readonly int[] _kinds;
    private readonly int[] _left;
    private readonly int[][] _cuts;
    private int _steps;

    /// <summary>A filling; <paramref name="chance"/> shuffles which pieces are taken first, null takes the longest.</summary>
    public CoilFilling(CutTask task, CoilReach[] reach, CoilRoles roles, int[] lots, Random? chance, SearchClock clock)
    {
        (_task, _reach, _roles, _lots, _clock) = (task, reach, roles, lots, clock);
        _exact = [.. roles.Exact];
        _order = [.. roles.Exact.Concat(roles.Shorten).OrderBy(c => task.Coils[c].Room)];
        _kinds = [.. Enumerable.Range(0, task.Kinds.Length)];
        chance?.Shuffle(_kinds);
        _left = task.AllPieces();
        _cuts = task.NoCuts();
    }

    /// <summary>Counts by coil and kind, or null where no filling was found.</summary>
    public int[][]? Fill() => From(0) ? _cuts : null;

    private bool From(int at)
    {
        if (at == _order.Length)
            return Carry();
        if (++_steps > MostSteps || _clock.IsUp)
            return false;
        var c = _order[at];
        var (coil, isExact) = (_task.Coils[c], _exact.Contains(c));
        var most = (int)((isExact ? coil.Room : Math.Max(0, _reach[c].Most)) / _task.Grid);
        var reach = ReachOf(coil.Lot, most);
        var sum = isExact ? most : reach.LongestUpTo(most);
        if (isExact || sum > 0)
        {
            foreach (var counts in reach.Fills(sum, _task.Kinds.Length).Take(isExact ? FillsACoil : 2))
            {
                Take(c, counts);
                if (From(at + 1))
                    return true;
                PutBack(c, counts);
            }
        }
        return !isExact && From(at + 1);
    }

    private Reach ReachOf(int lot, int most)
    {
        var kinds = _kinds.Where(k => _left[k] > 0 && MayBe(k, lot) && _task.Kinds[k].Need / _task.Grid <= most).ToArray();
        return new(kinds, [.. kinds.Select(k => (int)(_task.Kinds[k].Need / _task.Grid))], [.. kinds.Select(k => _left[k])], most);
    }

    private bool MayBe(int kind, int lot) => _task.Kinds[kind].Job < 0 || _lots[_task.Kinds[kind].Job] == lot;

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
