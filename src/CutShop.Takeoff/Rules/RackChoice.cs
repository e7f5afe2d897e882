using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Which bit of the rack drills a bore.</summary>
public static class RackChoice
{
    /// <summary>Rope from this diameter up is too large for a spade bit.</summary>
    private static readonly Length SpadeRopeUnder = Length.FromSixtyFourths(96);

    /// <summary>
    /// Chooses the kind of bit: a threaded Forstner is best; a spade will do for rope under 1 1/2 in; a hole saw leaves a
    /// slug to chisel out (common practice, no source).
    /// </summary>
    /// <param name="rack">The shop's rack.</param>
    /// <param name="bit">The diameter needed.</param>
    /// <param name="rope">The rope's diameter.</param>
    public static BitChoice Choose(this BitRack rack, Length bit, Length rope)
    {
        ArgumentNullException.ThrowIfNull(rack);
        if (rack.Has(BitKind.ThreadedForstner, bit))
            return new(BitKind.ThreadedForstner, OnRack: true);
        if (rope < SpadeRopeUnder && rack.Has(BitKind.Spade, bit))
            return new(BitKind.Spade, OnRack: true);
        if (rack.Has(BitKind.HoleSaw, bit))
            return new(BitKind.HoleSaw, OnRack: true);
        return new(BitKind.ThreadedForstner, OnRack: false);
    }
}
