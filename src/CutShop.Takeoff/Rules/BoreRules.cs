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

    /// <summary>Depth of a stopped or a corner bore: W / 2.</summary>
    public static Length StoppedDepth(Length across) => across / 2;

    /// <summary>Wood left at each side of a bore: (W − bit) / 2, for square and round posts alike.</summary>
    public static Length SideWall(Length across, Length bit) => (across - bit) / 2;
}
