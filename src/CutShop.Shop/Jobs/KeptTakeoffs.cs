using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>
/// Takeoffs of stored jobs, worked out once and kept while they hold: until the job's file or the shop's rack of bits
/// changes. What was used longest ago goes when the kept ones grow beyond the bound.
/// </summary>
/// <param name="tables">The tables that takeoffs are worked out with.</param>
/// <param name="most">The most pieces, bores and screws to keep, over all jobs; a job larger than this is worked out each time.</param>
internal sealed class KeptTakeoffs(ShopTablesShelf tables, int most = KeptTakeoffs.UsualMost)
{
    /// <summary>Some fifty jobs of a usual size, or one very large one.</summary>
    private const int UsualMost = 500_000;

    private readonly Lock _lock = new();
    private readonly Dictionary<long, Entry> _kept = [];
    private long _uses;
    private int _size;

    /// <summary>The version of a job file that is stored: no other has it, whatever is restored or changed meanwhile.</summary>
    public static long DrawVersion() => Random.Shared.NextInt64(1, long.MaxValue);

    /// <summary>How many takeoffs are kept.</summary>
    public int Count
    {
        get
        {
            lock (_lock)
                return _kept.Count;
        }
    }

    /// <summary>The takeoff of a job as a transaction sees it.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="jobId">The job.</param>
    /// <param name="version">The job's version in that transaction.</param>
    public JobTakeoff Of(ShopSession session, long jobId, long version)
    {
        var now = tables.Current(session);
        lock (_lock)
        {
            if (_kept.TryGetValue(jobId, out var entry) && entry.Version == version && AreSame(entry.Tables, now))
            {
                entry.LastUse = ++_uses;
                return entry.Takeoff;
            }
        }
        var takeoff = WorkOut(session, jobId, now);
        Keep(jobId, new(version, now, takeoff));
        return takeoff;
    }

    private static JobTakeoff WorkOut(ShopSession session, long jobId, ShopTables tables)
    {
        var (number, file) = session.Value<(string, string)>("SELECT number, job_file FROM jobs WHERE id = @jobId", new { jobId });
        return JobTakeoff.Of(StoredJobFile.Read(file, $"job {number}"), tables);
    }

    /// <summary>Of the tables only the rack of bits can change while the program runs.</summary>
    private static bool AreSame(ShopTables one, ShopTables other) => ReferenceEquals(one, other) || one.Rack.Bits.SequenceEqual(other.Rack.Bits);

    private void Keep(long jobId, Entry entry)
    {
        if (entry.Size > most)
            return;
        lock (_lock)
        {
            if (_kept.TryGetValue(jobId, out var had))
                _size -= had.Size;
            entry.LastUse = ++_uses;
            _kept[jobId] = entry;
            _size += entry.Size;
            while (_size > most)
            {
                var oldest = _kept.MinBy(pair => pair.Value.LastUse).Key;
                _size -= _kept[oldest].Size;
                _kept.Remove(oldest);
            }
        }
    }

    private sealed class Entry(long version, ShopTables tables, JobTakeoff takeoff)
    {
        public long Version => version;

        public ShopTables Tables => tables;

        public JobTakeoff Takeoff => takeoff;

        public int Size { get; } = takeoff.Pieces.Count + takeoff.Bores.Count + takeoff.Fixings.Count;

        public long LastUse { get; set; }
    }
}
