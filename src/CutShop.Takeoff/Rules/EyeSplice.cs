using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// How an eye is spliced into the end of a piece. All lengths are along the rope; the marks are measured from the squared end.
/// </summary>
/// <param name="Tucks">Full tucks of every strand. Source: 29 CFR 1910.184(h), WAC 296-24-29429.</param>
/// <param name="Unlay">From the end to where the strands are unlaid to, and where the rope is bound first: 5 1/3 d a tuck.</param>
/// <param name="Throat">From the end to where that binding meets the standing part, which is the eye's throat.</param>
/// <param name="Tail">
/// What is left of each strand beyond its last full tuck, and what tapering it takes: 6 d, and 6 in in rope of 1 in and over. Source: the same.
/// </param>
/// <param name="Taper">Further tucks, of thinner and thinner strands, that taper the splice. Source: the same.</param>
public sealed record EyeSplice(int Tucks, Length Unlay, Length Throat, Length Tail, int Taper)
{
    /// <summary>A splice that tapers has two further tucks.</summary>
    private const int TaperTucks = 2;

    private const int TailDiameters = 6;

    /// <summary>
    /// The splice of an eye: out to the pin and back, E each, and half round it, π (p + d) / 2. What reaches from the throat to the pin on the
    /// standing part is rope of the section, so the takeoff counts the way back alone.
    /// </summary>
    /// <param name="eye">The eye.</param>
    /// <param name="rope">d.</param>
    /// <param name="isNatural">True for natural rope.</param>
    public static EyeSplice Of(Eye eye, Length rope, bool isNatural)
    {
        ArgumentNullException.ThrowIfNull(eye);
        var unlay = Length.RoundedFromInches(RopeAtPost.Unlaid(eye, rope, isNatural));
        return new(
            eye.TucksIn(isNatural),
            unlay,
            RopeAtPost.Eye(eye, rope, isNatural) + eye.Throat,
            rope < Length.Inch ? rope * TailDiameters : Length.FromInches(TailDiameters),
            TaperTucks);
    }

    /// <summary>The splice at a post where a piece ends in an eye, or null.</summary>
    public static EyeSplice? At(Piece piece, AtPost at)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(at);
        return at.Treatment.Eye is { } eye ? Of(eye, piece.Rope.Across, piece.Rope.IsNatural) : null;
    }

    /// <summary>
    /// True where one of a piece's two eyes cannot be spliced in the shop: an eye does not go through a bore, so the end that is hung last,
    /// the finish, is spliced once the rope is through.
    /// </summary>
    public static bool OneIsMadeOnSite(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.AtPosts[0].Kind == AtPostKind.Eye && piece.AtPosts[^1].Kind == AtPostKind.Eye && piece.AtPosts.Any(at => at.Kind == AtPostKind.Through);
    }
}
