using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Tables;

/// <summary>Which rope is common on which post (common practice, no source).</summary>
public static class CommonRope
{
    private static readonly Length FourInchPost = Length.FromInches(4);
    private static readonly Length SixInchPost = Length.FromInches(6);
    private static readonly Length OneAndAQuarter = Length.FromSixtyFourths(80);
    private static readonly Length OneAndAHalf = Length.FromSixtyFourths(96);
    private static readonly Length Two = Length.FromInches(2);

    /// <summary>True where a rope of this nominal diameter is common on a post of this measured width.</summary>
    public static bool Suits(Length across, Length rope) => Range(across) is var (least, most) && rope >= least && (most is null || rope <= most);

    /// <summary>The common sizes in words.</summary>
    public static Sentence SizesFor(Length across) => Range(across) switch
    {
        (var least, null) => TakeoffWords.Of("SizesUp", LengthText.Brief(least)),
        var (least, most) => TakeoffWords.Of("SizesBetween", LengthText.Brief(least), LengthText.Brief(most.Value)),
    };

    /// <summary>Posts sold as 4 in: 1 1/4 or 1 1/2 in; as 6 in: 1 1/2 or 2 in; larger: 2 in and up.</summary>
    private static (Length Least, Length? Most) Range(Length across) =>
        across <= FourInchPost ? (OneAndAQuarter, OneAndAHalf)
        : across <= SixInchPost ? (OneAndAHalf, Two)
        : (Two, null);
}
