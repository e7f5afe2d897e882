namespace CutShop.CutPlan.EqualCoils;

/// <summary>
/// An upper bound on the worth that a room can hold, from each size in an order to the last. Exact where the table has a
/// cell for every unit of room; else sizes are rounded down to whole cells, so it still never promises too little.
/// </summary>
internal sealed class WorthTable
{
    private const int MostCells = 1_500_000;

    private readonly long[][] _most;
    private readonly int _cell;

    /// <summary>Fills the table for sizes in the order they will be tried.</summary>
    public WorthTable(ReadOnlySpan<int> sizes, ReadOnlySpan<long> worths, ReadOnlySpan<int> counts, int room)
    {
        var rows = sizes.Length;
        _cell = 1 + (int)((long)rows * room / MostCells);
        var cells = room / _cell;
        _most = new long[rows + 1][];
        _most[rows] = new long[cells + 1];
        for (var k = rows - 1; k >= 0; k--)
        {
            var next = _most[k + 1];
            var row = _most[k] = (long[])next.Clone();
            var (size, worth, count) = (sizes[k] / _cell, worths[k], counts[k]);
            for (var at = 0; at <= cells; at++)
                for (int some = 1, before = at - size; some <= count && before >= 0; some++, before -= size)
                    row[at] = Math.Max(row[at], next[before] + (some * worth));
        }
    }

    /// <summary>No pieces of the sizes from the <paramref name="k"/>th on that fit <paramref name="room"/> are worth more.</summary>
    public long MostFrom(int k, int room) => _most[k][room / _cell];
}
