using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan.Search;

/// <summary>
/// What no plan without scrap can better, from the lengths alone: rope is neither made nor lost, so what is opened and
/// not cut lies on the rack. Lots are left out of account, so the bounds hold with them too.
/// </summary>
internal sealed class NoScrapBound
{
    private readonly CutTask _task;
    private readonly CoilReach[] _reach;
    private readonly int[] _full;
    private readonly int[] _toBuy;
    private readonly int[] _offcuts;
    private readonly long _shortest;

    /// <summary>Bounds for a task whose coils to buy are all opened.</summary>
    public NoScrapBound(CutTask task, CoilReach[] reach, SearchClock clock)
    {
        (_task, _reach) = (task, reach);
        MostUsedUp = UsedUpTogether.Most(task, reach, clock);
        _full = Of(CoilKind.Full);
        _toBuy = Of(CoilKind.ToBuy);
        _offcuts = Of(CoilKind.Offcut);
        _shortest = task.Kinds[^1].Need;

        int[] Of(CoilKind sort) => [.. Enumerable.Range(0, task.Coils.Length).Where(c => task.Coils[c].Sort == sort)];
    }

    /// <summary>The most offcuts that can be used up in one plan.</summary>
    public int MostUsedUp { get; }

    /// <summary>Fewest full coils on hand that must be opened, or null where all together cannot do it.</summary>
    public int? FewestFull()
    {
        var room = _offcuts.Concat(_toBuy).Sum(Most);
        var fewest = 0;
        foreach (var most in _full.Select(Most).OrderDescending())
        {
            if (room >= _task.Demand)
                break;
            room += most;
            fewest++;
        }
        return room >= _task.Demand ? fewest : null;
    }

    /// <summary>Fewest lengths left on the rack where so many full coils on hand are opened.</summary>
    public int FewestOnRack(int full)
    {
        var opened = _full.Select(Room).Order().Take(full).Concat(_toBuy.Select(Room)).Order().ToArray();
        var widest = _full.Select(Room).OrderDescending().Take(full).Concat(_toBuy.Select(Room)).OrderDescending().ToArray();
        var exact = _offcuts.Where(c => _reach[c].IsExact).Select(Room).Order().ToArray();
        var offcuts = _offcuts.Select(Room).OrderDescending().ToArray();
        var kept = Math.Max(0, opened.Sum() + offcuts.Sum() - _task.Demand);
        var fewest = int.MaxValue;
        for (var keptFull = 0; keptFull <= opened.Length; keptFull++)
        {
            var cut = opened.Take(opened.Length - keptFull).Sum() + (keptFull * _shortest);
            if (cut > _task.Demand)
                continue;
            var usedUp = 0;
            while (usedUp < MostUsedUp && cut + exact[usedUp] <= _task.Demand)
                cut += exact[usedUp++];
            var place = widest.Take(keptFull).Sum();
            var onRack = 0;
            while (onRack < offcuts.Length && place < kept)
                place += offcuts[onRack++];
            if (place >= kept)
                fewest = Math.Min(fewest, keptFull + Math.Max(onRack, offcuts.Length - usedUp));
        }
        return fewest == int.MaxValue ? 0 : fewest;
    }

    /// <summary>The longest single length that can be left where so many full coils on hand are opened and so many lengths lie on the rack.</summary>
    public Length LongestOffcut(int full, int rack)
    {
        var opened = _full.OrderByDescending(Room).Take(full).Concat(_toBuy).ToArray();
        var kept = opened.Sum(Room) + _offcuts.Sum(Room) - _task.Demand;
        // Offcuts that cannot be used up stay on the rack, and keep at least this.
        var staying = _offcuts.Where(c => !_reach[c].IsExact).ToArray();
        var least = _offcuts.Concat(opened).Select(LeastKept).DefaultIfEmpty(0).Min();
        var longest = 0L;
        foreach (var carrier in opened.Concat(_offcuts))
        {
            var others = staying.Where(c => c != carrier).ToArray();
            var free = rack - 1 - others.Length;
            if (free < 0)
                continue;
            var most = kept - others.Sum(LeastKept) - (free * least);
            var coil = _task.Coils[carrier];
            if (coil.IsFull)
                longest = Math.Max(longest, Math.Min(most, coil.Room - _shortest));
            else
                longest = Math.Max(longest, most >= coil.Room ? coil.Left : most);
        }
        return Length.FromNanometres(longest);
    }

    private long Room(int coil) => _task.Coils[coil].Room;

    private long Most(int coil) => _reach[coil].MostOf(Room(coil));

    private long LeastKept(int coil) => Room(coil) - _reach[coil].Most;
}
