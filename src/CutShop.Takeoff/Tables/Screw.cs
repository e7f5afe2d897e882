using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Tables;

/// <summary>Kinds of screw.</summary>
public enum ScrewKind
{
    /// <summary>A stainless deck screw: flat head, countersinks flush, measured over all.</summary>
    DeckScrew,

    /// <summary>A stainless lag screw: hex head, measured under the head, sits in a counterbore.</summary>
    LagScrew,
}

/// <summary>A screw as it is bought.</summary>
/// <param name="Kind">Deck or lag screw.</param>
/// <param name="Size">The size in the trade's words: <c>#10</c>, <c>1/4 in</c>.</param>
/// <param name="Length">Its length: over all for a deck screw, under the head for a lag screw.</param>
public sealed record ScrewName(ScrewKind Kind, string Size, Length Length)
{
    /// <summary>The screw in words.</summary>
    public Sentence InWords => TakeoffWords.Of(Kind == ScrewKind.DeckScrew ? "DeckScrew" : "LagScrew", Size, LengthText.Inches(Length));

    /// <summary>The screw in English, such as <c>#10 x 3 in stainless deck screw</c>, as outputs write it.</summary>
    public override string ToString() => InWords.ToString();
}

/// <summary>A screw of the catalogue.</summary>
/// <param name="Kind">Deck or lag screw.</param>
/// <param name="Size">The size in the trade's words: <c>#10</c>, <c>1/4 in</c>.</param>
/// <param name="Length">Its length: over all for a deck screw, under the head for a lag screw.</param>
/// <param name="Shank">Shank diameter.</param>
/// <param name="Root">Root diameter of the thread.</param>
/// <param name="Head">Width of the head: diameter, or across the flats' corners for a hex head.</param>
/// <param name="HeadHeight">How far the counterbore must go in to sink the head; zero for a flat head.</param>
/// <param name="RopeUpTo">The thickest rope it holds inside a post.</param>
/// <param name="WrapRopeUpTo">The thickest rope it holds round a post; zero where it is not used so.</param>
public sealed record Screw(
    ScrewKind Kind,
    string Size,
    Length Length,
    Length Shank,
    Length Root,
    Length Head,
    Length HeadHeight,
    Length RopeUpTo,
    Length WrapRopeUpTo)
{
    private static readonly Length BitStep = Length.FromSixtyFourths(4);

    /// <summary>Diameter of the counterbore: the head's width up to the next 1/16 in (common practice: the head's diameter or a little over).</summary>
    public Length Counterbore => Head.RoundUpTo(BitStep);

    /// <summary>Depth of the counterbore that sinks the head; zero for a flat head, which countersinks flush.</summary>
    public Length CounterboreDepth => HeadHeight.RoundUpTo(BitStep);

    /// <summary>How far the point gets from the face when the head is sunk.</summary>
    public Length Reach => Length + CounterboreDepth;

    /// <summary>The screw as it is bought.</summary>
    public ScrewName Name => new(Kind, Size, Length);

    /// <summary>The screw in words, such as <c>#10 x 3 in stainless deck screw</c>.</summary>
    public override string ToString() => Name.ToString();
}
