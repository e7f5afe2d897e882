namespace CutShop.CutPlan.Search;

/// <summary>Which lengths a coil's pieces can add up to, and which pieces do.</summary>
internal sealed class Reach
{
    private readonly ulong[][] _rows;
    private readonly int[] _kinds;
    private readonly int[] _sizes;
    private readonly int[] _counts;

    /// <summary>Sums up to <paramref name="room"/>, in grid units, of the pieces left.</summary>
    /// <param name="kinds">Kinds that may be cut, by falling size.</param>
    /// <param name="sizes">Size of each in grid units.</param>
    /// <param name="counts">How many of each.</param>
    /// <param name="room">The longest sum wanted.</param>
    public Reach(int[] kinds, int[] sizes, int[] counts, int room)
    {
        (_kinds, _sizes, _counts) = (kinds, sizes, counts);
        var words = (room >> 6) + 1;
        _rows = new ulong[kinds.Length + 1][];
        _rows[^1] = new ulong[words];
        _rows[^1][0] = 1;
        for (var k = kinds.Length - 1; k >= 0; k--)
        {
            var row = _rows[k] = (ulong[])_rows[k + 1].Clone();
            var left = Math.Min(counts[k], room / sizes[k]);
            for (var part = 1; left > 0; part *= 2)
            {
                var take = Math.Min(part, left);
                OrShifted(row, take * sizes[k]);
                left -= take;
            }
        }
    }

    /// <summary>The longest sum at or below <paramref name="most"/>; zero where no piece fits.</summary>
    public int LongestUpTo(int most)
    {
        for (var sum = most; sum > 0; sum--)
            if (Has(0, sum))
                return sum;
        return 0;
    }

    /// <summary>True where pieces add up to exactly this.</summary>
    public bool Has(int sum) => sum >= 0 && Has(0, sum);

    /// <summary>Every choice of pieces that adds up to exactly this, long pieces first; counts by kind of the task.</summary>
    public IEnumerable<int[]> Fills(int sum, int kindsOfTask)
    {
        if (!Has(sum))
            yield break;
        var chosen = new int[_kinds.Length];
        Array.Fill(chosen, -1);
        var rest = sum;
        var k = 0;
        while (k >= 0)
        {
            if (k == _kinds.Length)
            {
                var counts = new int[kindsOfTask];
                for (var at = 0; at < _kinds.Length; at++)
                    counts[_kinds[at]] = chosen[at];
                yield return counts;
                k--;
                continue;
            }
            // Each kind is tried from the most pieces down; -1 means that it is met for the first time.
            int next;
            if (chosen[k] < 0)
            {
                next = Math.Min(_counts[k], rest / _sizes[k]);
            }
            else
            {
                rest += chosen[k] * _sizes[k];
                next = chosen[k] - 1;
            }
            while (next >= 0 && !Has(k + 1, rest - (next * _sizes[k])))
                next--;
            chosen[k] = next;
            if (next < 0)
            {
                k--;
                continue;
            }
            rest -= next * _sizes[k];
            k++;
        }
    }

    private bool Has(int k, int sum) => (_rows[k][sum >> 6] >> (sum & 63) & 1) != 0;

    private static void OrShifted(ulong[] row, int by)
    {
        var (words, bits) = (by >> 6, by & 63);
        for (var to = row.Length - 1; to >= words; to--)
        {
            var shifted = row[to - words] << bits;
            if (bits > 0 && to > words)
                shifted |= row[to - words - 1] >> (64 - bits);
            row[to] |= shifted;
        }
    }
}
