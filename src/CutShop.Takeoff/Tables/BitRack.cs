using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Tables;

/// <summary>A bit that hangs on the shop's rack.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Diameter">Its diameter.</param>
public readonly record struct RackBit(BitKind Kind, Length Diameter);

/// <summary>The shop's rack of bits.</summary>
/// <param name="Bits">What hangs on the rack.</param>
public sealed record BitRack(IReadOnlyList<RackBit> Bits);
