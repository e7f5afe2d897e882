using System.Diagnostics.Metrics;

namespace CutShop.Shop.Store;

/// <summary>What can be measured of a shop from outside while it works; docs/operations.md lists it by name.</summary>
public sealed class ShopMeter : IDisposable
{
    /// <summary>The meter's name.</summary>
    public const string Name = "CutShop";

    private readonly Dictionary<ShopCount, Counter<long>> _counters;
    private readonly Histogram<double> _writeWait;

    /// <summary>The runtime's own meter, for who listens to one shop alone.</summary>
    internal Meter Source { get; } = new(Name);

    /// <summary>A meter of its own for one shop.</summary>
    public ShopMeter()
    {
        _counters = new()
        {
            [ShopCount.JobTakenIn] = Source.CreateCounter<long>("cutshop.jobs.taken_in", "{job}", "Jobs stored."),
            [ShopCount.PieceCut] = Source.CreateCounter<long>("cutshop.pieces.cut", "{piece}", "Pieces finished at the cut bench; one that is undone and cut again counts twice."),
            [ShopCount.PostDrilled] = Source.CreateCounter<long>("cutshop.posts.drilled", "{post}", "Posts finished at the drill bench; one that is undone and drilled again counts twice."),
            [ShopCount.TapRefused] = Source.CreateCounter<long>("cutshop.taps.refused", "{tap}", "Taps at a bench that changed nothing."),
        };
        _writeWait = Source.CreateHistogram<double>("cutshop.write.wait", "s", "How long a write waited for those before it.");
    }

    /// <inheritdoc/>
    public void Dispose() => Source.Dispose();

    /// <summary>Counts what a transaction did, once it is stored.</summary>
    internal void Add(IReadOnlyList<ShopCount> counted)
    {
        foreach (var count in counted)
            _counters[count].Add(1);
    }

    /// <summary>Notes how long a write waited for its turn.</summary>
    internal void Waited(TimeSpan wait) => _writeWait.Record(wait.TotalSeconds);
}
