namespace CutShop.CutPlan.EqualCoils;

/// <summary>Finds the pattern of greatest worth for one coil, exactly: branch and bound, with a table of bounds where asked.</summary>
internal sealed class PatternSearch(PieceMix mix)
{
    private readonly int[] _order = new int[mix.Kinds];
    private readonly int[] _size = new int[mix.Kinds + 1];
    private readonly long[] _worth = new long[mix.Kinds + 1];
    private readonly int[] _most = new int[mix.Kinds + 1];
    private readonly int[] _smallestFrom = new int[mix.Kinds + 1];
    private readonly int[] _chosen = new int[mix.Kinds];
    private readonly int[] _best = new int[mix.Kinds];
    private long _bestWorth;
    private long _nodes;
    private int _kinds;
    private WorthTable? _table;

    /// <summary>True where the last answer is proved to be the richest.</summary>
    public bool IsProved { get; private set; }

    /// <summary>Worth of the last answer.</summary>
    public long Worth => _bestWorth;

    /// <summary>The richest pattern, as counts by size; proved unless the node limit stopped it.</summary>
    /// <param name="worths">Worth of a piece of each size; not positive means not wanted.</param>
    /// <param name="limits">Pieces of each size there are.</param>
    /// <param name="room">What the coil takes.</param>
    /// <param name="nodes">Steps before branching gives up.</param>
    /// <param name="withTable">Whether to make a table of bounds first: slower to start, far fewer steps.</param>
    public int[] Richest(long[] worths, int[] limits, int room, long nodes, bool withTable = false)
    {
        Order(worths, limits, room);
        _table = withTable ? new(_size.AsSpan(0, _kinds), _worth.AsSpan(0, _kinds), _most.AsSpan(0, _kinds), room) : null;
        _bestWorth = -1;
        _nodes = nodes;
        Array.Clear(_chosen);
        Array.Clear(_best);
        Branch(0, room, 0);
        IsProved = _nodes > 0;
        _bestWorth = Math.Max(_bestWorth, 0);
        var counts = new int[mix.Kinds];
        for (var k = 0; k < _kinds; k++)
            counts[_order[k]] = _best[k];
        return counts;
    }

    private void Order(long[] worths, int[] limits, int room)
    {
        _kinds = 0;
        for (var kind = 0; kind < mix.Kinds; kind++)
            if (worths[kind] > 0 && limits[kind] > 0 && mix.Sizes[kind] <= room)
                _order[_kinds++] = kind;
        var richness = new double[_kinds];
        for (var k = 0; k < _kinds; k++)
            richness[k] = -(double)worths[_order[k]] / mix.Sizes[_order[k]];
        Array.Sort(richness, _order, 0, _kinds);
        for (var k = 0; k < _kinds; k++)
        {
            _size[k] = mix.Sizes[_order[k]];
            _worth[k] = worths[_order[k]];
            _most[k] = limits[_order[k]];
        }
        _smallestFrom[_kinds] = int.MaxValue;
        for (var k = _kinds - 1; k >= 0; k--)
            _smallestFrom[k] = Math.Min(_smallestFrom[k + 1], _size[k]);
    }

    private void Branch(int k, int room, long worth)
    {
        if (worth > _bestWorth)
        {
            _bestWorth = worth;
            Array.Copy(_chosen, _best, _kinds);
        }
        while (k < _kinds && _size[k] > room)
            k++;
        if (k == _kinds || room < _smallestFrom[k] || _nodes <= 0 || worth + MostFrom(k, room) <= _bestWorth)
            return;
        _nodes--;
        for (var count = Math.Min(_most[k], room / _size[k]); count >= 0; count--)
        {
            _chosen[k] = count;
            Branch(k + 1, room - (count * _size[k]), worth + (count * _worth[k]));
        }
        _chosen[k] = 0;
    }

    /// <summary>Worth that the room could hold if the last piece might be cut in two, rounded down.</summary>
    private long MostFrom(int k, int room)
    {
        if (_table is not null)
            return _table.MostFrom(k, room);
        var worth = 0L;
        for (; k < _kinds && room > 0; k++)
        {
            var whole = (long)_most[k] * _size[k];
            if (whole > room)
                return worth + (long)((Int128)_worth[k] * room / _size[k]);
            worth += _most[k] * _worth[k];
            room -= (int)whole;
        }
        return worth;
    }
}
