using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>Rope taken up at a post. Each rule is one function; W is the post's width, d the rope's diameter.</summary>
public static class RopeAtPost
{
    private const int KnotDiameters = 12;
    private const int TailDiameters = 2;
    private const int TailKept = 1;

    /// <summary>Bored right through: W / cos(rake), along the bore.</summary>
    /// <param name="across">W.</param>
    /// <param name="slope">Tangent of the rake.</param>
    public static Length Through(Length across, double slope) =>
        slope == 0 ? across : Length.RoundedFromInches(across.Inches * double.Hypot(1, slope));

    /// <summary>Ends half way into the post: W / 2.</summary>
    public static Length Stopped(Length across) => HalfBelow(across);

    /// <summary>Goes through and ends in an overhand stopper knot: W + 12 d (common practice, no source).</summary>
    public static Length Knot(Length across, Length rope) => across + (KnotDiameters * rope);

    /// <summary>
    /// What a stopper knot can give back on site: of its 12 d, 10 are in the knot and 2 stand out of it as a tail. One diameter of tail is
    /// left, so that the knot cannot slip open, and one can be had (common practice, no source; the cautious side of it).
    /// </summary>
    public static Length FromKnotTail(Length rope) => (TailDiameters - TailKept) * rope;

    /// <summary>Arrives first at a bored corner and reaches the post's centre: W / 2.</summary>
    public static Length CornerFirst(Length across) => HalfBelow(across);

    /// <summary>Leaves a bored corner; its end stands against the side of the first rope: W / 2 − d / 2.</summary>
    public static Length CornerSecond(Length across, Length rope) => HalfBelow(across - rope);

    /// <summary>
    /// Turns round a post, touching each other, on the rope's centre line. A turn is a helix of pitch d over the curve that
    /// runs parallel to the post at d / 2: N √((π (D + d))² + d²) on a round post, N √((4 W + π d)² + d²) on a square one.
    /// Source: helix length; a parallel of a convex curve at distance r is 2 π r longer.
    /// </summary>
    public static Length Wrap(Post post, Length rope, Treatment wrap)
    {
        ArgumentNullException.ThrowIfNull(post);
        var (w, d) = (post.Across.Inches, rope.Inches);
        var round = post.Shape == PostShape.Round ? Math.PI * (w + d) : (4 * w) + (Math.PI * d);
        return Length.RoundedFromInches((double)wrap.Turns * double.Hypot(round, d));
    }

    /// <summary>
    /// What a corner adds to a wrap: the turned angle's arc at the rope's centre line, angle × (W + d) / 2, on the outside
    /// of the turn; on the inside it is taken away.
    /// </summary>
    public static Length CornerArc(Post post, Length rope, WrapSide side)
    {
        ArgumentNullException.ThrowIfNull(post);
        if (post.Turn is not { } turn)
            return Length.Zero;
        var arc = Length.RoundedFromInches(turn.Radians * (post.Across + rope).Inches / 2);
        return side == WrapSide.Outside ? arc : -arc;
    }

    /// <summary>
    /// Half a length, at an odd nanometre the lesser half: two halves may never sum to more than the whole, or a net length
    /// that stands exactly on a step of the rounding would be rounded up by a whole step more.
    /// </summary>
    private static Length HalfBelow(Length length) => length - (length / 2);
}
