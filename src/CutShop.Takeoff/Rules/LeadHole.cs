using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Pilot holes by the published lead-hole rules, from the wood's specific gravity G.</summary>
public static class LeadHole
{
    private static readonly Length BitStep = Length.FromSixtyFourths(1);

    /// <summary>
    /// Diameter of the hole for the thread, to the nearest 1/64 in; zero where none is needed.
    /// </summary>
    /// <remarks>
    /// Wood screws loaded sideways: 7/8 of the root under G 0.6, the root from there on. Wood screws that hold by their thread: 90 % of the
    /// root for G of 0.6 and more, 70 % from 0.5, none below. Lag screws: 65 to 85 % of the shank above 0.6, 60 to 75 % above
    /// 0.5, 40 to 70 % at 0.5 and below; the middle of each is taken. Source: National Design Specification for Wood Construction,
    /// lead holes; the lag figures from memory.
    /// </remarks>
    public static Length Pilot(Screw screw, FixingPurpose purpose, decimal woodGravity)
    {
        ArgumentNullException.ThrowIfNull(screw);
        return (screw.Kind, IsSideways(purpose)) switch
        {
            (ScrewKind.DeckScrew, true) => Share(screw.Root, woodGravity >= 0.6m ? 1000 : 875),
            (ScrewKind.DeckScrew, false) => Share(screw.Root, woodGravity >= 0.6m ? 900 : woodGravity >= 0.5m ? 700 : 0),
            (ScrewKind.LagScrew, _) => Share(screw.Shank, woodGravity > 0.6m ? 750 : woodGravity > 0.5m ? 675 : 550),
            _ => throw new ArgumentOutOfRangeException(nameof(screw), screw.Kind, message: null),
        };
    }

    /// <summary>
    /// Diameter of the hole for the plain shank; zero where none is needed. A wood screw loaded sideways: 7/8 of the shank under G 0.6, the
    /// shank from there on. A lag screw: the shank and 1/64 in of play, since bodies run over their size (ASME B18.2.1).
    /// </summary>
    public static Length Shank(Screw screw, FixingPurpose purpose, decimal woodGravity)
    {
        ArgumentNullException.ThrowIfNull(screw);
        return screw.Kind == ScrewKind.LagScrew ? screw.Shank + BitStep
            : IsSideways(purpose) ? Share(screw.Shank, woodGravity >= 0.6m ? 1000 : 875)
            : Length.Zero;
    }

    /// <summary>True where the rope pulls across the screw, not along it.</summary>
    private static bool IsSideways(FixingPurpose purpose) =>
        purpose is FixingPurpose.Line or FixingPurpose.Wrap or FixingPurpose.Join or FixingPurpose.Beside;

    private static Length Share(Length diameter, int thousandths) => (diameter * thousandths / 1000).RoundTo(BitStep);
}
