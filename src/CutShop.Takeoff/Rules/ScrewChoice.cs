using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>The screw for one purpose in posts of one width, and the holes it needs.</summary>
/// <param name="Wanted">How far the screw must reach.</param>
/// <param name="Screw">The screw chosen, or null where none in the catalogue fits.</param>
/// <param name="Pilot">Diameter of the pilot hole for the thread; zero where none is needed.</param>
/// <param name="Shank">Diameter of the hole for the plain shank; zero where none is needed.</param>
internal readonly record struct ScrewChoice(ReachWanted Wanted, Screw? Screw, Length Pilot, Length Shank)
{
    /// <summary>Chooses for a rope in or on a post.</summary>
    /// <param name="purpose">What the screw is for.</param>
    /// <param name="across">W, the post's width.</param>
    /// <param name="skewDegrees">How far the bore lies off the square to its face.</param>
    /// <param name="slope">Tangent of the bore's rake.</param>
    /// <param name="rope">The rope.</param>
    /// <param name="hole">Diameter of the bore.</param>
    /// <param name="tables">The shop's screws and wood.</param>
    /// <param name="isFirst">True by the first rules.</param>
    public static ScrewChoice For(FixingPurpose purpose, Length across, double skewDegrees, double slope, Rope rope, Length hole, ShopTables tables, bool isFirst = false)
    {
        var d = rope.Across;
        var depth = BoreRules.StoppedDepth(across, skewDegrees);
        var through = RopeAtPost.Through(skewDegrees == 0 ? across : depth * 2, slope);
        return purpose switch
        {
            FixingPurpose.CornerFirst => Of(ReachWanted.ForEnd(through, depth, d), ForCorner().First),
            FixingPurpose.CornerSecond => Of(ReachWanted.ForCornerSecond(through, depth, d), ForCorner().Second),
            FixingPurpose.End => Chosen(ReachWanted.ForEnd(through, depth, d)),
            FixingPurpose.Line or FixingPurpose.Join => Chosen(ReachWanted.ForLine(across, hole)),
            FixingPurpose.Wrap => Chosen(ReachWanted.ForWrap(across, d)),
            // A staple or an eye bolt holds these, which are not in the catalogue of screws.
            FixingPurpose.Beside or FixingPurpose.Eye => default,
            _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, message: null),
        };

        (Screw? First, Screw? Second) ForCorner() => tables.Screws.ChooseForCorner(through, depth, d, rope.Diameter);
        ScrewChoice Chosen(ReachWanted reach) => Of(reach, tables.Screws.Choose(purpose, rope.Diameter, reach));
        ScrewChoice Of(ReachWanted reach, Screw? screw) => screw is null
            ? new(reach, null, Length.Zero, Length.Zero)
            : isFirst ? new(reach, screw, LeadHole.Pilot(screw, FixingPurpose.End, tables.WoodGravity), screw.Kind == ScrewKind.LagScrew ? screw.Shank : Length.Zero)
            : new(reach, screw, LeadHole.Pilot(screw, purpose, tables.WoodGravity), LeadHole.Shank(screw, purpose, tables.WoodGravity));
    }

    /// <summary>So many of them, with the holes they need.</summary>
    public DrivenScrews Driven(FixingPurpose purpose, int count) => new(
        purpose,
        Screw?.Name,
        count,
        Screw?.Length ?? Wanted.Least,
        Pilot,
        Shank,
        Screw?.Counterbore ?? Length.Zero,
        Screw?.CounterboreDepth ?? Length.Zero);
}
