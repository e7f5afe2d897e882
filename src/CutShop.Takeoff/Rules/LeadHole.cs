using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Pilot holes by the published lead-hole rules, from the wood's specific gravity G.</summary>
public static class LeadHole
{
    private static readonly Length BitStep = Length.FromSixtyFourths(1);

    /// <summary>
    /// Diameter of the pilot hole for the thread, to the nearest 1/64 in; zero where none is needed.
    /// </summary>
    /// <remarks>
    /// Wood screws in withdrawal: 90 % of the root for G of 0.6 and more, 70 % between 0.5 and 0.6, none at 0.5 and below.
    /// Lag screws: 65 to 85 % of the shank above 0.6, 60 to 75 % above 0.5, 40 to 70 % at 0.5 and below; the middle of each
    /// is taken. Source: National Design Specification for Wood Construction, lead holes; the lag figures from memory.
    /// </remarks>
    public static Length Pilot(Screw screw, decimal woodGravity)
    {
        ArgumentNullException.ThrowIfNull(screw);
        return screw.Kind switch
        {
            ScrewKind.DeckScrew => Share(screw.Root, woodGravity >= 0.6m ? 900 : woodGravity > 0.5m ? 700 : 0),
            ScrewKind.LagScrew => Share(screw.Shank, woodGravity > 0.6m ? 750 : woodGravity > 0.5m ? 675 : 550),
            _ => throw new ArgumentOutOfRangeException(nameof(screw), screw.Kind, message: null),
        };
    }

    private static Length Share(Length diameter, int thousandths) => (diameter * thousandths / 1000).RoundTo(BitStep);
}
