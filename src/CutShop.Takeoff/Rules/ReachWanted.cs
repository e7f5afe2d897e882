using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// How far a screw's point must get from the face it is driven from. W is the post's width, d the rope's diameter.
/// </summary>
/// <remarks>
/// Everywhere the point must bite at least half a rope diameter into the rope, and may not come out of the far side. The
/// best reaches are set so that they give what is common practice: a 3 in screw in a 4 in post with rope up to 1 1/2 in,
/// about 4 1/2 in for larger rope in a 6 in post, about two rope diameters on a wrap.
/// </remarks>
/// <param name="Least">The least that holds.</param>
/// <param name="Best">What is aimed at where the post is wide enough.</param>
/// <param name="Most">The most before the point comes out.</param>
public readonly record struct ReachWanted(Length Least, Length Best, Length Most)
{
    private static readonly Length FarWallBite = Length.FromSixtyFourths(28);
    private static readonly Length FarWallLeft = Length.FromSixtyFourths(16);

    /// <summary>
    /// Along the bore from the far side into the rope's end: through the wood beyond the bore, then into the rope by d / 2 at least and
    /// 3/4 d at best. The rope leaves by the other face, so the point stays short of that. All of it is measured along the bore.
    /// </summary>
    /// <param name="through">Through the post along the bore: W, and W / cos(rake) where it is raked.</param>
    /// <param name="depth">The bore's depth.</param>
    /// <param name="rope">d.</param>
    public static ReachWanted ForEnd(Length through, Length depth, Length rope) =>
        new(through - depth + (rope / 2), through - depth + (rope * 3 / 4), through);

    /// <summary>
    /// Along the second bore of a corner, from the far side: to the first rope's surface, d / 2 before the end of the bore, across the
    /// first rope by d, then into the second rope's end as at an end post.
    /// </summary>
    public static ReachWanted ForCornerSecond(Length through, Length depth, Length rope)
    {
        var end = ForEnd(through, depth, rope);
        return new(end.Least + (rope / 2), end.Best + (rope / 2), end.Most);
    }

    /// <summary>
    /// From the side, square to the bore: through the side wall to the middle of the rope at W / 2; at best across the bore
    /// and 7/16 in into the far wall, so that both walls hold the screw. 1/4 in of the far wall stays whole.
    /// </summary>
    public static ReachWanted ForLine(Length across, Length bit) =>
        new(across / 2, (across / 2) + (bit / 2) + FarWallBite, across - FarWallLeft);

    /// <summary>
    /// Round a wrapped post: through the rope by d and into the wood by d / 2 at least and d at best, which makes two rope
    /// diameters. 1/4 in of the post stays whole.
    /// </summary>
    public static ReachWanted ForWrap(Length across, Length rope) =>
        new(rope + (rope / 2), rope * 2, rope + across - FarWallLeft);
}
