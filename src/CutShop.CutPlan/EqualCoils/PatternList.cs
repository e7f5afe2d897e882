namespace CutShop.CutPlan.EqualCoils;

/// <summary>
/// All patterns that a plan of so many coils can hold. Prices put a worth on every piece; a coil holds the richest
/// worth at most, so in a plan of few coils none can hold much less, and the patterns that do may be left out.
/// </summary>
internal sealed class PatternList
{
    private readonly PieceMix _mix;
    private readonly long[] _prices;
    private readonly long _least;
    private readonly int _limit;
    private readonly SearchClock _clock;
    private readonly int[] _order;
    private readonly int[] _chosen;
    private readonly List<Pattern> _found = [];
    private readonly WorthTable _table;
    private long _steps;

    private PatternList(PieceMix mix, long[] prices, long least, int limit, SearchClock clock)
    {
        _mix = mix;
        _prices = prices;
        _least = least;
        _limit = limit;
        _clock = clock;
        _order = [.. Enumerable.Range(0, mix.Kinds).OrderByDescending(kind => (double)prices[kind] / mix.Sizes[kind])];
        _chosen = new int[mix.Kinds];
        _table = new(
            [.. _order.Select(kind => mix.Sizes[kind])], [.. _order.Select(kind => prices[kind])], [.. _order.Select(kind => mix.Counts[kind])], mix.Room);
    }

    /// <summary>The patterns, or null where there are more than <paramref name="limit"/> or time is up.</summary>
    /// <param name="mix">All pieces.</param>
    /// <param name="prices">Price of each size.</param>
    /// <param name="richest">Proved worth of the richest pattern at those prices.</param>
    /// <param name="coils">Coils in the plan.</param>
    /// <param name="limit">Patterns that can be handled.</param>
    /// <param name="clock">Time.</param>
    public static List<Pattern>? For(PieceMix mix, long[] prices, long richest, int coils, int limit, SearchClock clock)
    {
        Int128 all = 0;
        for (var kind = 0; kind < mix.Kinds; kind++)
            all += (Int128)prices[kind] * mix.Counts[kind];
        var least = (long)Int128.Max(0, all - ((Int128)(coils - 1) * richest));
        var list = new PatternList(mix, prices, least, limit, clock);
        return list.Branch(0, mix.Room, 0) ? list._found : null;
    }

    private bool Branch(int k, int room, long worth)
    {
        if ((++_steps & 4095) == 0 && _clock.IsUp)
            return false;
        if (worth + _table.MostFrom(k, room) < _least)
            return true;
        if (k == _order.Length)
        {
            if (_found.Count >= _limit)
                return false;
            _found.Add(Pattern.Of(_chosen));
            return true;
        }
        var kind = _order[k];
        for (var count = Math.Min(_mix.Counts[kind], room / _mix.Sizes[kind]); count >= 0; count--)
        {
            _chosen[kind] = count;
            if (!Branch(k + 1, room - (count * _mix.Sizes[kind]), worth + (count * _prices[kind])))
                return false;
        }
        return true;
    }
}
