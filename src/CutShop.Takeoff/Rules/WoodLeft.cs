using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// What share of a post's resistance to bending is left at a bore right through its middle, along the line of the ropes and across it: to be
/// known, and no rating. A bore that stops half way leaves more.
/// </summary>
/// <param name="Along">Bent along the line, as the ropes pull at an end post: the bore takes its width out of the post's.</param>
/// <param name="Across">Bent across the line, as people lean: the bore takes out the middle, which resists least.</param>
public readonly record struct WoodLeft(double Along, double Across)
{
    /// <summary>
    /// The share that a bore of diameter b leaves of the second moment of area: on a square post of width W, 1 − b / W along the line and
    /// 1 − (b / W)³ across it; on a round one the same by integrals over the slice of width b. Source: any course on the strength of materials.
    /// </summary>
    /// <param name="shape">The post's shape.</param>
    /// <param name="across">W.</param>
    /// <param name="hole">b.</param>
    public static WoodLeft Of(PostShape shape, Length across, Length hole)
    {
        var share = Math.Min(1, hole.Inches / across.Inches);
        if (shape == PostShape.Square)
            return new(1 - share, 1 - (share * share * share));
        // With x = W / 2 sin φ, from −u to u: ∫ cos⁴ φ along the line and ∫ sin² φ cos² φ across it.
        var u = Math.Asin(share);
        return new(
            1 - (8 / (3 * Math.PI) * ((3 * u / 4) + (Math.Sin(2 * u) / 2) + (Math.Sin(4 * u) / 16))),
            1 - (2 / Math.PI * (u - (Math.Sin(4 * u) / 4))));
    }
}
