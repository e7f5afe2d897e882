using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Solids;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>The wood between screws, and between a screw and what it has nothing to do with.</summary>
internal static class ScrewWood
{
    /// <summary>The least of it (common practice, no source).</summary>
    public static Length Least { get; } = Length.FromSixtyFourths(8);

    /// <summary>The same in inches.</summary>
    public static double LeastInches { get; } = Least.Inches;

    /// <summary>The finest mark of a shop rule.</summary>
    private static readonly Length RuleMark = Length.FromSixtyFourths(4);

    /// <summary>The least that the second screw of a corner goes in above the middle of its bore: d / 4 (common practice, no source).</summary>
    public static Length LeastRaise(Length rope) => rope / 4;

    /// <summary>
    /// How far above the middle of its bore the second screw of a corner goes in. Both screws run through the middle of the post, so it is
    /// moved up, from d / 4 by whole sixteenths, until enough wood is left between the two.
    /// </summary>
    /// <param name="post">The corner post.</param>
    /// <param name="rope">d, the rope's diameter.</param>
    /// <param name="first">The first screw and the rake of its bore.</param>
    /// <param name="second">The second screw and the rake of its bore.</param>
    public static Length RaiseOfSecond(Post post, Length rope, (Screw Screw, double RakeDegrees) first, (Screw Screw, double RakeDegrees) second)
    {
        var solid = new PostSolid(post, isStart: false);
        var one = solid.InEnd(FixingPurpose.CornerFirst, Length.Zero, first.RakeDegrees, first.Screw.Reach, first.Screw.Shank.Inches);
        var raise = LeastRaise(rope);
        while (raise < post.Across && IsTooNear(raise))
            raise = raise.IsWhole(RuleMark) ? raise + RuleMark : raise.RoundUpTo(RuleMark);
        return raise;

        bool IsTooNear(Length up)
        {
            var other = solid.InEnd(FixingPurpose.CornerSecond, up, second.RakeDegrees, second.Screw.Reach, second.Screw.Shank.Inches);
            return Gap.Between(one, other, LeastInches) is var gap && Length.RoundedFromInches(gap) < Least;
        }
    }
}
