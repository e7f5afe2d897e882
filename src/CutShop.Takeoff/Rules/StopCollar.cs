using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// Where to set the stop collar for a bore, measured from the bit's cutting edge: the depth, rounded up to 1/16 in, the
/// finest mark of a shop rule. Up, because halves of a through bore must break into each other and an end must not stand
/// proud; no more than 1/16 in too deep does no harm. Common practice.
/// </summary>
public static class StopCollar
{
    private static readonly Length RuleMark = Length.FromSixtyFourths(4);

    /// <summary>The setting for a depth.</summary>
    public static Length For(Length depth) => depth.RoundUpTo(RuleMark);
}
