using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Tables;

/// <summary>A bit that hangs on the shop's rack.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Diameter">Its diameter.</param>
public readonly record struct RackBit(BitKind Kind, Length Diameter);

/// <summary>The shop's rack of bits.</summary>
/// <param name="Bits">What hangs on the rack.</param>
public sealed record BitRack(IReadOnlyList<RackBit> Bits)
{
    private readonly HashSet<RackBit> _bits = [.. Bits];

    /// <summary>True where a bit of this kind and diameter hangs on it.</summary>
    public bool Has(BitKind kind, Length diameter) => _bits.Contains(new(kind, diameter));
}
