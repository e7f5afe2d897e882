namespace CutShop.Takeoff;

/// <summary>A bit that hangs on the shop's rack.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Diameter">Its diameter.</param>
public readonly record struct RackBit(BitKind Kind, Length Diameter);

/// <summary>The shop's rack of bits, and the choice from it.</summary>
/// <param name="Bits">What hangs on the rack.</param>
public sealed record BitRack(IReadOnlyList<RackBit> Bits)
{
    /// <summary>Rope from this diameter up is too large for a spade bit.</summary>
    private static readonly Length SpadeRopeUnder = Length.FromSixtyFourths(96);

    private readonly HashSet<RackBit> _bits = [.. Bits];

    /// <summary>
    /// Chooses the kind of bit: a threaded Forstner is best; a spade will do for rope under 1 1/2 in; a hole saw leaves a
    /// slug to chisel out (common practice, no source).
    /// </summary>
    /// <param name="bit">The diameter needed.</param>
    /// <param name="rope">The rope's diameter.</param>
    public BitChoice Choose(Length bit, Length rope)
    {
        if (_bits.Contains(new(BitKind.ThreadedForstner, bit)))
            return new(BitKind.ThreadedForstner, OnRack: true);
        if (rope < SpadeRopeUnder && _bits.Contains(new(BitKind.Spade, bit)))
            return new(BitKind.Spade, OnRack: true);
        if (_bits.Contains(new(BitKind.HoleSaw, bit)))
            return new(BitKind.HoleSaw, OnRack: true);
        return new(BitKind.ThreadedForstner, OnRack: false);
    }
}
