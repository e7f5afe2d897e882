using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Which bit of the rack drills a bore.</summary>
public static class RackChoice
{
    /// <summary>Rope from this diameter up is too large for a spade bit.</summary>
    private static readonly Length SpadeRopeUnder = Length.FromSixtyFourths(96);

    /// <summary>A bit may be so much over the wanted one (common practice, no source).</summary>
    private static readonly Length MostOver = Length.FromSixtyFourths(8);

    /// <summary>
    /// Chooses the smallest bit that is at most 1/8 in over the wanted one. Of two kinds of one size a threaded Forstner is best; a spade
    /// will do for rope under 1 1/2 in; a hole saw leaves a slug to chisel out (common practice, no source).
    /// </summary>
    /// <param name="rack">The shop's rack.</param>
    /// <param name="wanted">The diameter wanted.</param>
    /// <param name="rope">The rope's diameter.</param>
    /// <returns>The bit's diameter and kind; the wanted one where there is none on the rack.</returns>
    public static (Length Bit, BitChoice Choice) Choose(this BitRack rack, Length wanted, Length rope)
    {
        ArgumentNullException.ThrowIfNull(rack);
        return rack.Bits
            .Where(bit => bit.Diameter >= wanted && bit.Diameter <= wanted + MostOver && (bit.Kind != BitKind.Spade || rope < SpadeRopeUnder))
            .OrderBy(bit => bit.Diameter).ThenBy(bit => bit.Kind)
            .Select(bit => (bit.Diameter, new BitChoice(bit.Kind, OnRack: true)))
            .FirstOrDefault((wanted, new BitChoice(BitKind.ThreadedForstner, OnRack: false)));
    }
}
