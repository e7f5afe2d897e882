using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>The screw for one purpose in posts of one width, and its pilot hole.</summary>
/// <param name="Wanted">How far the screw must reach.</param>
/// <param name="Screw">The screw chosen, or null where none in the catalogue fits.</param>
/// <param name="Pilot">Diameter of the pilot hole for the thread; zero where none is needed.</param>
internal readonly record struct ScrewChoice(ReachWanted Wanted, Screw? Screw, Length Pilot)
{
    /// <summary>
    /// How far above the middle of the bore a screw goes in. Both screws of a bored corner run through the middle of the
    /// post, so the second passes a quarter of the rope's diameter above the first (common practice, no source).
    /// </summary>
    public static Length RaiseFor(FixingPurpose purpose, Rope rope) =>
        purpose == FixingPurpose.CornerSecond ? rope.Across / 4 : Length.Zero;

    /// <summary>Chooses for a rope in or on a post of width <paramref name="across"/>.</summary>
    public static ScrewChoice For(FixingPurpose purpose, Length across, Rope rope, Length bit, ShopTables tables)
    {
        var d = rope.Across;
        var (wanted, screw) = purpose switch
        {
            FixingPurpose.CornerFirst => (ReachWanted.ForEnd(across, d), tables.Screws.ChooseForCorner(across, d, rope.Diameter).First),
            FixingPurpose.CornerSecond => (ReachWanted.ForCornerSecond(across, d), tables.Screws.ChooseForCorner(across, d, rope.Diameter).Second),
            FixingPurpose.End => Chosen(ReachWanted.ForEnd(across, d)),
            FixingPurpose.Line => Chosen(ReachWanted.ForLine(across, bit)),
            FixingPurpose.Wrap => Chosen(ReachWanted.ForWrap(across, d)),
            _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, message: null),
        };
        return new(wanted, screw, screw is null ? Length.Zero : LeadHole.Pilot(screw, tables.WoodGravity));

        (ReachWanted Wanted, Screw? Screw) Chosen(ReachWanted reach) => (reach, tables.Screws.Choose(purpose, rope.Diameter, reach));
    }

    /// <summary>So many of them, with the holes they need.</summary>
    public DrivenScrews Driven(FixingPurpose purpose, int count) => new(
        purpose,
        Screw?.Name,
        count,
        Screw?.Length ?? Wanted.Least,
        Pilot,
        Screw?.ShankHole ?? Length.Zero,
        Screw?.Counterbore ?? Length.Zero,
        Screw?.CounterboreDepth ?? Length.Zero);
}
