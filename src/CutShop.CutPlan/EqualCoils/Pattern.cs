namespace CutShop.CutPlan.EqualCoils;

/// <summary>What is cut from one coil: how many pieces of each size that occurs, sizes by their index in the mix, rising.</summary>
internal sealed class Pattern : IEquatable<Pattern>
{
    private readonly int _hash;

    private Pattern(int[] kinds, int[] counts)
    {
        Kinds = kinds;
        Counts = counts;
        var hash = new HashCode();
        for (var k = 0; k < kinds.Length; k++)
            hash.Add((kinds[k], counts[k]));
        _hash = hash.ToHashCode();
    }

    /// <summary>Indexes of the sizes cut.</summary>
    public int[] Kinds { get; }

    /// <summary>How many of each.</summary>
    public int[] Counts { get; }

    /// <summary>A pattern from counts of all sizes, zeros included.</summary>
    public static Pattern Of(ReadOnlySpan<int> counts)
    {
        var kinds = new List<int>();
        var some = new List<int>();
        for (var kind = 0; kind < counts.Length; kind++)
        {
            if (counts[kind] == 0)
                continue;
            kinds.Add(kind);
            some.Add(counts[kind]);
        }
        return new([.. kinds], [.. some]);
    }

    /// <summary>How many pieces are cut.</summary>
    public int Pieces => Counts.Sum();

    /// <summary>Length used, in the mix's unit.</summary>
    public int Used(PieceMix mix)
    {
        var used = 0;
        for (var k = 0; k < Kinds.Length; k++)
            used += mix.Sizes[Kinds[k]] * Counts[k];
        return used;
    }

    /// <summary>True where <paramref name="left"/> has all the pieces that the pattern cuts.</summary>
    public bool FitsIn(ReadOnlySpan<int> left)
    {
        for (var k = 0; k < Kinds.Length; k++)
            if (left[Kinds[k]] < Counts[k])
                return false;
        return true;
    }

    /// <summary>The part of the pattern for which pieces are left.</summary>
    public Pattern Within(ReadOnlySpan<int> left)
    {
        if (FitsIn(left))
            return this;
        var counts = new int[left.Length];
        for (var k = 0; k < Kinds.Length; k++)
            counts[Kinds[k]] = Math.Min(Counts[k], left[Kinds[k]]);
        return Of(counts);
    }

    /// <summary>Takes the pattern's pieces out of <paramref name="left"/> so many times.</summary>
    public void TakeFrom(Span<int> left, int times = 1)
    {
        for (var k = 0; k < Kinds.Length; k++)
            left[Kinds[k]] -= Counts[k] * times;
    }

    /// <inheritdoc/>
    public bool Equals(Pattern? other) =>
        other is not null && _hash == other._hash
        && Kinds.AsSpan().SequenceEqual(other.Kinds) && Counts.AsSpan().SequenceEqual(other.Counts);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Pattern);

    /// <inheritdoc/>
    public override int GetHashCode() => _hash;
}
