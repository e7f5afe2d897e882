namespace CutShop.Takeoff;

/// <summary>The screws a shop uses.</summary>
/// <param name="Screws">The screws, the lightest size first and each size from short to long.</param>
public sealed record ScrewCatalogue(IReadOnlyList<Screw> Screws)
{
    /// <summary>
    /// Of the lightest kind that fits: the thinnest, then shortest screw that reaches the best depth, else the longest between
    /// the least and the most. Null where none fits.
    /// </summary>
    /// <param name="purpose">What it is for.</param>
    /// <param name="nominal">The rope's nominal diameter, which says how heavy a screw must be.</param>
    /// <param name="wanted">How far it must reach.</param>
    public Screw? Choose(FixingPurpose purpose, Length nominal, ReachWanted wanted) => Best(Fitting(purpose, nominal, wanted), wanted);

    /// <summary>
    /// The two screws of a bored corner. The second goes through the first rope, so it is the longer one wherever the
    /// catalogue allows: it takes the next longer screw, or the first a shorter one that still holds.
    /// </summary>
    /// <param name="across">W, the post's width.</param>
    /// <param name="rope">The rope's diameter, as measured where it was.</param>
    /// <param name="nominal">The rope's nominal diameter, which says how heavy a screw must be.</param>
    public (Screw? First, Screw? Second) ChooseForCorner(Length across, Length rope, Length nominal)
    {
        var (wantedFirst, wantedSecond) = (ReachWanted.ForEnd(across, rope), ReachWanted.ForCornerSecond(across, rope));
        var (fittingFirst, fittingSecond) = (Fitting(FixingPurpose.CornerFirst, nominal, wantedFirst), Fitting(FixingPurpose.CornerSecond, nominal, wantedSecond));
        var (first, second) = (Best(fittingFirst, wantedFirst), Best(fittingSecond, wantedSecond));
        if (first is null || second is null || second.Length > first.Length)
            return (first, second);
        if (Best(fittingSecond.FindAll(screw => screw.Length > first.Length), wantedSecond) is { } longer)
            return (first, longer);
        return (Best(fittingFirst.FindAll(screw => screw.Length < second.Length), wantedFirst) ?? first, second);
    }

    private List<Screw> Fitting(FixingPurpose purpose, Length nominal, ReachWanted wanted) =>
    [
        .. Screws
            .Where(screw => nominal <= (purpose == FixingPurpose.Wrap ? screw.WrapRopeUpTo : screw.RopeUpTo))
            .Where(screw => screw.Reach >= wanted.Least && screw.Reach <= wanted.Most),
    ];

    private static Screw? Best(List<Screw> fitting, ReachWanted wanted)
    {
        var lightest = fitting.FindAll(screw => screw.Kind == fitting[0].Kind);
        return lightest.Where(screw => screw.Reach >= wanted.Best).MinBy(screw => (screw.Shank, screw.Length))
            ?? lightest.MaxBy(screw => screw.Length);
    }
}
