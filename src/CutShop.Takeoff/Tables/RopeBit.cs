using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Tables;

/// <summary>How large a bit a rope needs.</summary>
public static class RopeBit
{
    private static readonly Length Step = Length.FromSixtyFourths(4);
    private static readonly Length OverTrueSize = Length.FromSixtyFourths(4);
    private static readonly Length OverNatural = Length.FromSixtyFourths(12);

    /// <summary>
    /// The bit for a rope: 1/16 in over a rope that is true to size or was measured on the coil, 3/16 in over the nominal
    /// diameter of natural rope, which runs oversize; rounded up to the next 1/16 in (common practice, no source).
    /// </summary>
    public static Length DiameterFor(Rope rope)
    {
        ArgumentNullException.ThrowIfNull(rope);
        var over = rope.IsNatural && rope.Measured is null ? OverNatural : OverTrueSize;
        return (rope.Across + over).RoundUpTo(Step);
    }
}
