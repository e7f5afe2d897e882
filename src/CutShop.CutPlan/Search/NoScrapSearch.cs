namespace CutShop.CutPlan.Search;

/// <summary>
/// Our own search for a plan without scrap. It goes through the sets of coils that could be opened in the order of the
/// aims: fewest full coils, then fewest lengths left on the rack, then the longest offcut. All coils but one are cut to
/// a sum chosen for them, nothing left or a length worth keeping; the one, the carrier, takes the rest of the pieces.
/// </summary>
internal sealed class NoScrapSearch
{
    /// <summary>Grid units in the longest coil for which a table of sums is kept.</summary>
    public const int LongestTable = 4_000_000;

    private const int Shuffles = 6;
    private const int FewFills = 24;
    private const int CoilSets = 12;

    private readonly CutTask _task;
    private readonly CoilReach[] _reach;
    private readonly NoScrapBound _bound;
    private readonly int _steps;
    private readonly SearchClock _clock;
    private readonly int[] _full;
    private readonly int[] _toBuy;
    private readonly int[] _offcuts;

    /// <summary>A search of one task, whose coils to buy are all to be opened.</summary>
    /// <param name="task">The task.</param>
    /// <param name="reach">Reach of each coil.</param>
    /// <param name="bound">Bounds of the task.</param>
    /// <param name="steps">Steps before a set of coils is given up.</param>
    /// <param name="clock">Time.</param>
    public NoScrapSearch(CutTask task, CoilReach[] reach, NoScrapBound bound, int steps, SearchClock clock)
    {
        (_task, _reach, _bound, _steps, _clock) = (task, reach, bound, steps, clock);
        _full = Of(CoilKind.Full);
        _toBuy = Of(CoilKind.ToBuy);
        _offcuts = Of(CoilKind.Offcut);

        int[] Of(CoilKind sort) => [.. Enumerable.Range(0, task.Coils.Length).Where(c => task.Coils[c].Sort == sort)];
    }

    /// <summary>Aims of a plan whose longest offcut is proved to be the longest among plans that do as well by the other aims; else null.</summary>
    public PlanAims? LongestProved { get; private set; }

    /// <summary>The best plan found with the lots chosen, or null; one that does not beat <paramref name="toBeat"/> is not looked for.</summary>
    public int[][]? Find(int[] lots, PlanAims? toBeat)
    {
        if (_bound.FewestFull() is not { } fewest)
            return null;
        for (var full = fewest; full <= _full.Length; full++)
        {
            if (toBeat is { Scrap.Nanometres: 0 } known && known.FullCoils < full + _toBuy.Length)
                return null;
            if (AtFull(full, lots, toBeat) is { } found)
                return found;
            if (_clock.IsUp)
                return null;
        }
        return null;
    }

    private int[][]? AtFull(int full, int[] lots, PlanAims? toBeat)
    {
        var sets = FullSets(full);
        var usable = _offcuts.Where(c => _reach[c].IsExact).ToArray();
        var levels =
            from keptFull in Enumerable.Range(0, Math.Min(full + _toBuy.Length, 1) + 1)
            from usedUp in Enumerable.Range(0, _bound.MostUsedUp + 1)
            orderby keptFull - usedUp, keptFull descending
            select (keptFull, usedUp);
        foreach (var level in levels.GroupBy(level => level.keptFull - level.usedUp))
        {
            // What is known is as good as any plan of this level or a later one.
            if (toBeat is { Scrap.Nanometres: 0 } known && known.FullCoils == full + _toBuy.Length && known.Rack < _offcuts.Length + level.Key)
                return null;
            int[][]? best = null;
            foreach (var (keptFull, usedUp) in level)
            {
                foreach (var roles in sets.SelectMany(set => Roles(set, keptFull, usable, usedUp)))
                {
                    if (_clock.IsUp)
                        return best;
                    best = Better(best, Try(roles, lots));
                    if (best is not null && MeetsBound(best))
                        return best;
                }
            }
            if (best is not null)
                return best;
        }
        return null;
    }

    private bool MeetsBound(int[][] cuts)
    {
        var aims = _task.AimsOf(cuts);
        return LongestProved == aims || aims.LongestOffcut >= _bound.LongestOffcut(aims.FullCoils - _toBuy.Length, aims.Rack);
    }

    private int[][]? Better(int[][]? a, int[][]? b) =>
        a is null ? b : b is null || _task.AimsOf(a) <= _task.AimsOf(b) ? a : b;

    /// <summary>Sets of so many full coils, the coils to buy with them; coils alike in room and lot are not told apart.</summary>
    private List<int[]> FullSets(int full)
    {
        var sorts = _full.GroupBy(c => (_task.Coils[c].Room, _task.Coils[c].Lot)).OrderByDescending(sort => sort.Key.Room)
            .Select(sort => sort.ToArray()).ToArray();
        var sets = new List<int[]>();
        var chosen = new Stack<int>();
        Choose(0);
        return sets;

        void Choose(int sort)
        {
            if (sets.Count >= CoilSets)
                return;
            if (chosen.Count == full)
            {
                sets.Add([.. chosen, .. _toBuy]);
                return;
            }
            if (sort == sorts.Length)
                return;
            for (var some = Math.Min(sorts[sort].Length, full - chosen.Count); some >= 0; some--)
            {
                for (var c = 0; c < some; c++)
                    chosen.Push(sorts[sort][c]);
                Choose(sort + 1);
                for (var c = 0; c < some; c++)
                    chosen.Pop();
            }
        }
    }

    private IEnumerable<CoilRoles> Roles(int[] full, int keptFull, int[] usable, int usedUp)
    {
        foreach (var used in UsedUp(usable, usedUp, full.Sum(c => _task.Coils[c].Room) * (1 - keptFull)))
        {
            var others = _offcuts.Except(used).OrderBy(c => _task.Coils[c].Room).ToArray();
            if (keptFull == 1)
            {
                foreach (var carrier in full.DistinctBy(c => (_task.Coils[c].Room, _task.Coils[c].Lot)))
                    foreach (var shorten in (int[][])[others, []])
                        yield return new([.. full.Where(c => c != carrier), .. used], shorten, carrier);
                continue;
            }
            if (others.Length == 0)
            {
                // Everything is used up: the last exact coil is as good a carrier as any.
                int[] all = [.. full, .. used];
                if (all.Length > 0)
                    yield return new(all[..^1], [], all[^1]);
                continue;
            }
            foreach (var carrier in others.Reverse().Take(3))
                foreach (var shorten in (int[][])[[.. others.Where(c => c != carrier)], []])
                    yield return new([.. full, .. used], shorten, carrier);
        }
    }

    /// <summary>Which offcuts to use up: those that would keep the most if shortened, those that are shortest, and a few by chance.</summary>
    private IEnumerable<int[]> UsedUp(int[] usable, int count, long cutAlready)
    {
        bool Fits(int[] set) => cutAlready + set.Sum(c => _task.Coils[c].Room) <= _task.Demand;
        int[] byRoom = [.. usable.OrderBy(c => _task.Coils[c].Room)];
        int[] shortest = byRoom[..count];
        if (!Fits(shortest))
            yield break;
        yield return shortest;
        if (count == usable.Length || count == 0)
            yield break;
        // One or two too many: the shortest are the likeliest not to come out even together.
        if (usable.Length - count <= 2)
            foreach (var without in UsedUpTogether.Subsets(byRoom[..Math.Min(byRoom.Length, 6)], usable.Length - count))
                if (Fits([.. byRoom.Except(without)]))
                    yield return [.. byRoom.Except(without)];
        int[] longest = byRoom[^count..];
        if (Fits(longest))
            yield return longest;
        for (var draw = 0; draw < Shuffles; draw++)
        {
            var chance = new Random(draw);
            int[] set = [.. usable.OrderBy(_ => chance.Next()).Take(count)];
            if (Fits(set))
                yield return set;
        }
    }

    private int[][]? Try(CoilRoles roles, int[] lots)
    {
        var most = roles.Shorten.Sum(c => _reach[c].Most);
        if (_task.Demand - roles.Exact.Sum(c => _task.Coils[c].Room) - most > _task.Coils[roles.Carrier].Room)
            return null;
        // First as asked for; else with as much missed as need be, and then less until it cannot be less.
        var found = new CoilFilling(_task, _reach, roles, lots, null, FewFills, _steps, _clock).Fill(0);
        if (found is not null)
        {
            NoteBest(roles, found);
            return found;
        }
        for (var draw = 0; draw < Shuffles && found is null && !_clock.IsUp; draw++)
            found = new CoilFilling(_task, _reach, roles, lots, draw == 0 ? null : new Random(draw), FewFills, _steps, _clock).Fill(most);
        while (found is not null && !_clock.IsUp)
        {
            var missed = most - roles.Shorten.Sum(c => _task.Used(found[c]));
            if (missed == 0)
                break;
            var filling = new CoilFilling(_task, _reach, roles, lots, null, int.MaxValue, _steps, _clock);
            var better = filling.Fill(missed - _task.Grid);
            if (better is null && filling.IsExhaustive)
                NoteBest(roles, found);
            if (better is null)
                break;
            found = better;
        }
        return found;
    }

    /// <summary>
    /// Notes that the longest offcut cannot be longer, where this filling cannot be bettered and is the only kind of plan
    /// that could keep it: every offcut that can be used up is, one full coil keeps a length, and there is no choice of
    /// full coils. A plan with its longest length on an offcut's coil keeps no more than the longest offcut.
    /// </summary>
    private void NoteBest(CoilRoles roles, int[][] cuts)
    {
        var aims = _task.AimsOf(cuts);
        var fullAlike = _full.Concat(_toBuy).DistinctBy(c => (_task.Coils[c].Room, _task.Coils[c].Lot)).Count() == 1;
        if (fullAlike && _task.Jobs == 0 && _task.Coils[roles.Carrier].IsFull
            && roles.Shorten.Length == _offcuts.Count(c => !_reach[c].IsExact)
            && _offcuts.All(c => _reach[c].IsExact == roles.Exact.Contains(c))
            && _offcuts.All(c => _task.Coils[c].Left <= aims.LongestOffcut.Nanometres))
            LongestProved = aims;
    }
}

/// <summary>What each opened coil is for.</summary>
/// <param name="Exact">Coils to be cut to nothing left.</param>
/// <param name="Shorten">Offcuts to be cut down as near to the keep length as may be, or left alone.</param>
/// <param name="Carrier">The coil that takes the rest of the pieces and keeps the longest offcut.</param>
internal sealed record CoilRoles(int[] Exact, int[] Shorten, int Carrier)
{
    /// <summary>Stands for a carrier where only the other coils are asked about.</summary>
    public const int NoCarrier = -1;
}
