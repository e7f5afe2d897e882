namespace CutShop.Takeoff.Result;

/// <summary>Values that repeat, each written once and meant by its index.</summary>
/// <typeparam name="T">The kind of value; equal values are one.</typeparam>
internal sealed class Repeated<T>
    where T : notnull
{
    private readonly List<T> _all = [];
    private readonly Dictionary<T, int> _index = [];

    /// <summary>Each value once, in the order it first came.</summary>
    public IReadOnlyList<T> All => _all;

    /// <summary>The same, or null where there is none.</summary>
    public IReadOnlyList<T>? AnyOrNull => _all.Count == 0 ? null : _all;

    /// <summary>The index of a value, which is added where it is new.</summary>
    public int IndexOf(T value)
    {
        if (!_index.TryGetValue(value, out var index))
        {
            _index[value] = index = _all.Count;
            _all.Add(value);
        }
        return index;
    }

    /// <summary>The indexes of values; null where all are the first.</summary>
    public IReadOnlyList<int>? IndexesOf(IEnumerable<T> values)
    {
        var indexes = values.Select(IndexOf).ToList();
        return indexes.TrueForAll(index => index == 0) ? null : indexes;
    }
}
