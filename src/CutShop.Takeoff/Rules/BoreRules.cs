using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>How deep a post is bored and what wood is left.</summary>
public static class BoreRules
{
    /// <summary>What each half of a through bore goes beyond the middle, so that both break into each other.</summary>
    private static readonly Length Overlap = Length.FromSixtyFourths(8);

    /// <summary>
    /// Depth of each of the two drillings of a through bore: W / (2 cos rake) and 1/8 in more. They come from opposite faces,
    /// so that neither blows out the far one (common practice, no source).
    /// </summary>
    /// <param name="across">W, the post's width.</param>
    /// <param name="slope">Tangent of the rake.</param>
    public static Length ThroughDepth(Length across, double slope) => (RopeAtPost.Through(across, slope) / 2) + Overlap;

    /// <summary>Depth of a stopped or a corner bore, to the post's centre: W / 2, and (W / 2) / cos s where it lies off the square to its face.</summary>
    public static Length StoppedDepth(Length across, double skewDegrees = 0) => RopeAtPost.ToCentre(across, skewDegrees);

    /// <summary>Wood left at each side of a bore: (W − bit) / 2, for square and round posts alike.</summary>
    public static Length SideWall(Length across, Length bit) => (across - bit) / 2;

    /// <summary>
    /// The same where a bore lies off the square to its face by s, at its mouth: W / 2 − (W / 2) tan s − bit / (2 cos s). Source: plane geometry.
    /// </summary>
    public static Length SideWall(Length across, Length bit, double skewDegrees)
    {
        if (skewDegrees == 0)
            return SideWall(across, bit);
        var (half, s) = (across.Inches / 2, skewDegrees * Math.PI / 180);
        return Length.RoundedFromInches(half - (half * Math.Tan(s)) - (bit.Inches / 2 / Math.Cos(s)));
    }
}
