using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>Rope taken up at a post. Each rule is one function; W is the post's width, d the rope's diameter.</summary>
public static class RopeAtPost
{
    private const int KnotDiameters = 12;
    private const double DiametersATuck = 16.0 / 3;
    private const double DiametersATuckTakesUp = 4.0 / 3;
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

    /// <summary>
    /// Arrives first at a bored corner and reaches the post's centre: W / 2 along a bore that is square to its face, (W / 2) / cos s where it
    /// lies off the square by s.
    /// </summary>
    /// <param name="across">W.</param>
    /// <param name="skewDegrees">s.</param>
    public static Length CornerFirst(Length across, double skewDegrees = 0) => skewDegrees == 0 ? HalfBelow(across) : ToCentre(across, skewDegrees);

    /// <summary>Leaves a bored corner; its end stands against the side of the first rope: d / 2 less.</summary>
    public static Length CornerSecond(Length across, Length rope, double skewDegrees = 0) =>
        skewDegrees == 0 ? HalfBelow(across - rope) : ToCentre(across, skewDegrees) - (rope / 2);

    /// <summary>Along a bore from its mouth to the post's centre: (W / 2) / cos s.</summary>
    public static Length ToCentre(Length across, double skewDegrees) =>
        skewDegrees == 0 ? across / 2 : Length.RoundedFromInches(across.Inches / 2 / Math.Cos(skewDegrees * Math.PI / 180));

    /// <summary>Half of a through bore, in whose middle two ends meet.</summary>
    public static Length Join(Length across, double slope) => HalfBelow(Through(across, slope));

    /// <summary>
    /// An eye on a pin: from the throat round the pin or thimble, and what its tucks unlay: E + π (p + d) / 2 + 5 1/3 d a tuck.
    /// Source: Merry, The Splicing Handbook, p. 28 (about 16 in for four tucks in 3/4 in rope).
    /// </summary>
    public static Length Eye(Eye eye, Length rope, bool isNatural)
    {
        ArgumentNullException.ThrowIfNull(eye);
        var round = Math.PI * (eye.Round.Inches + rope.Inches) / 2;
        return eye.Throat + Length.RoundedFromInches(round + Unlaid(eye, rope, isNatural));
    }

    /// <summary>The end of an eye's rope whose strands are unlaid for its tucks, in inches: 5 1/3 d a tuck.</summary>
    public static double Unlaid(Eye eye, Length rope, bool isNatural)
    {
        ArgumentNullException.ThrowIfNull(eye);
        return eye.TucksIn(isNatural) * DiametersATuck * rope.Inches;
    }

    /// <summary>The rope before an eye's throat that its splice lies in, in inches: 1 1/3 d a tuck.</summary>
    public static double Splice(Eye eye, Length rope, bool isNatural)
    {
        ArgumentNullException.ThrowIfNull(eye);
        return eye.TucksIn(isNatural) * DiametersATuckTakesUp * rope.Inches;
    }

    /// <summary>
    /// Turns round a post, touching each other, on the rope's centre line. A turn is a helix of pitch d over the curve that
    /// runs parallel to the post at d / 2: N √((π (D + d))² + d²) on a round post, N √((4 W + π d)² + d²) on a square one.
    /// Source: helix length; a parallel of a convex curve at distance r is 2 π r longer.
    /// </summary>
    public static Length Wrap(Post post, Length rope, Treatment wrap)
    {
        ArgumentNullException.ThrowIfNull(post);
        return Length.RoundedFromInches((double)wrap.Turns * double.Hypot(RoundOf(post, rope), rope.Inches));
    }

    /// <summary>
    /// What a turn adds where the rope goes round or by the outside of a post, and takes away by the inside: t / 360 of one turn's length
    /// without its pitch, π (W + d) on a round post, 4 W + π d on a square one.
    /// </summary>
    public static Length TurnedPart(Post post, Length rope, WrapSide side)
    {
        ArgumentNullException.ThrowIfNull(post);
        if (post.Turn is not { } turn)
            return Length.Zero;
        var part = Length.RoundedFromInches(post.HasSquareCorner ? turn.Radians * (post.Across + rope).Inches / 2 : (double)turn.Degrees / 360 * RoundOf(post, rope));
        return side == WrapSide.Outside ? part : -part;
    }

    /// <summary>Once round a post at the rope's centre line, in inches.</summary>
    private static double RoundOf(Post post, Length rope) => post.Shape == PostShape.Round
        ? Math.PI * (post.Across + rope).Inches
        : (4 * post.Across.Inches) + (Math.PI * rope.Inches);

    /// <summary>
    /// Half a length, at an odd nanometre the lesser half: two halves may never sum to more than the whole, or a net length
    /// that stands exactly on a step of the rounding would be rounded up by a whole step more.
    /// </summary>
    private static Length HalfBelow(Length length) => length - (length / 2);
}
