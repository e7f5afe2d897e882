namespace CutShop.CutPlan.EqualCoils;

/// <summary>
/// Pieces by size, for coils that are all as long: sizes are distinct and fall, all in one whole unit.
/// </summary>
/// <remarks>The unit is the largest one in which every size is whole, so tables over the coil's length stay short.</remarks>
internal sealed class PieceMix
{
    private PieceMix(int[] sizes, int[] counts, int room)
    {
        Sizes = sizes;
        Counts = counts;
        Room = room;
    }

    /// <summary>Distinct sizes, longest first.</summary>
    public int[] Sizes { get; }

    /// <summary>How many pieces of each size.</summary>
    public int[] Counts { get; }

    /// <summary>What one coil takes.</summary>
    public int Room { get; }

    /// <summary>How many sizes there are.</summary>
    public int Kinds => Sizes.Length;

    /// <summary>All pieces' sizes together.</summary>
    public long Total => Sizes.Zip(Counts, (size, count) => (long)size * count).Sum();

    /// <summary>Sorts pieces into a mix.</summary>
    /// <exception cref="OverflowException">The room is more than 2^31 of the pieces' common unit.</exception>
    public static PieceMix Of(IEnumerable<long> pieces, long room)
    {
        var bySize = pieces.GroupBy(size => size).OrderByDescending(group => group.Key).ToList();
        var unit = WholeUnit.Of(bySize.Select(group => group.Key));
        return new(
            [.. bySize.Select(group => (int)(group.Key / unit))],
            [.. bySize.Select(group => group.Count())],
            checked((int)(room / unit)));
    }

    /// <summary>The same sizes with other counts.</summary>
    public PieceMix With(int[] counts) => new(Sizes, counts, Room);
}
