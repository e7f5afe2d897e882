using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Which screw of the catalogue fits.</summary>
public static class CatalogueChoice
{
    /// <summary>
    /// Of the lightest kind that fits: the thinnest, then shortest screw that reaches the best depth, else the longest between
    /// the least and the most. Null where none fits.
    /// </summary>
    /// <param name="catalogue">The shop's screws.</param>
    /// <param name="purpose">What it is for.</param>
    /// <param name="nominal">The rope's nominal diameter, which says how heavy a screw must be.</param>
    /// <param name="wanted">How far it must reach.</param>
    public static Screw? Choose(this ScrewCatalogue catalogue, FixingPurpose purpose, Length nominal, ReachWanted wanted) =>
        Best(Fitting(catalogue, purpose, nominal, wanted), wanted);

    /// <summary>
    /// The two screws of a bored corner. The second goes through the first rope, so it is the longer one wherever the
    /// catalogue allows: it takes the next longer screw, or the first a shorter one that still holds.
    /// </summary>
    /// <param name="catalogue">The shop's screws.</param>
    /// <param name="through">Through the post along the bores.</param>
    /// <param name="depth">The bores' depth.</param>
    /// <param name="rope">The rope's diameter, as measured where it was.</param>
    /// <param name="nominal">The rope's nominal diameter, which says how heavy a screw must be.</param>
    public static (Screw? First, Screw? Second) ChooseForCorner(this ScrewCatalogue catalogue, Length through, Length depth, Length rope, Length nominal)
    {
        var (wantedFirst, wantedSecond) = (ReachWanted.ForEnd(through, depth, rope), ReachWanted.ForCornerSecond(through, depth, rope));
        var (fittingFirst, fittingSecond) = (Fitting(catalogue, FixingPurpose.CornerFirst, nominal, wantedFirst), Fitting(catalogue, FixingPurpose.CornerSecond, nominal, wantedSecond));
        var (first, second) = (Best(fittingFirst, wantedFirst), Best(fittingSecond, wantedSecond));
        if (first is null || second is null || second.Length > first.Length)
            return (first, second);
        if (Best(fittingSecond.FindAll(screw => screw.Length > first.Length), wantedSecond) is { } longer)
            return (first, longer);
        return (Best(fittingFirst.FindAll(screw => screw.Length < second.Length), wantedFirst) ?? first, second);
    }

    private static List<Screw> Fitting(ScrewCatalogue catalogue, FixingPurpose purpose, Length nominal, ReachWanted wanted)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        var fitting = new List<Screw>();
        foreach (var screw in catalogue.Screws)
        {
            if (nominal <= (purpose == FixingPurpose.Wrap ? screw.WrapRopeUpTo : screw.RopeUpTo) && screw.Reach is var reach && reach >= wanted.Least && reach <= wanted.Most)
                fitting.Add(screw);
        }
        return fitting;
    }

    private static Screw? Best(List<Screw> fitting, ReachWanted wanted)
    {
        var (best, longest) = ((Screw?)null, (Screw?)null);
        foreach (var screw in fitting)
        {
            if (screw.Kind != fitting[0].Kind)
                continue;
            if (screw.Reach >= wanted.Best && (best is null || (screw.Shank, screw.Length).CompareTo((best.Shank, best.Length)) < 0))
                best = screw;
            if (longest is null || screw.Length > longest.Length)
                longest = screw;
        }
        return best ?? longest;
    }
}
