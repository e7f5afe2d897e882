using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

public class FixingLawTests
{
    private static readonly Gen<Length> Posts = Gen.Int[3 * 64, 16 * 64].Select(n => Length.FromSixtyFourths(n));
    private static readonly Gen<Length> Ropes = Gen.Int[32, 4 * 64].Select(n => Length.FromSixtyFourths(n));
    private static readonly Length QuarterInch = Length.FromSixtyFourths(16);

    [Fact]
    public void An_end_screw_bites_half_a_rope_diameter_and_stays_inside_the_post() =>
        Check(FixingPurpose.End, (across, rope, reach) =>
        {
            Assert.True((reach * 2) - across >= rope);
            Assert.True(reach <= across);
        });

    /// <summary>The second rope's end stands half a diameter beyond the middle, seen from the far side.</summary>
    [Fact]
    public void A_second_corner_screw_goes_through_the_first_rope_and_bites_half_a_diameter_of_the_second() =>
        Check(FixingPurpose.CornerSecond, (across, rope, reach) =>
        {
            Assert.True((reach * 2) - across - rope >= rope - Length.FromNanometres(2));
            Assert.True(reach <= across);
        });

    [Fact]
    public void A_line_screw_reaches_the_middle_of_the_rope_and_leaves_a_quarter_inch_of_the_far_wall() =>
        Check(FixingPurpose.Line, (across, _, reach) =>
        {
            Assert.True(reach * 2 >= across);
            Assert.True(across - reach >= QuarterInch);
        });

    [Fact]
    public void A_wrap_screw_bites_half_a_rope_diameter_of_wood_and_leaves_a_quarter_inch() =>
        Check(FixingPurpose.Wrap, (across, rope, reach) =>
        {
            Assert.True((reach - rope) * 2 >= rope);
            Assert.True(rope + across - reach >= QuarterInch);
        });

    [Fact]
    public void The_second_corner_screw_is_longer_than_the_first_wherever_both_exist() =>
        Gen.Select(Posts, Ropes).Sample(
            (across, rope) =>
            {
                var (first, second) = ShopTables.Standard.Screws.ChooseForCorner(across, across / 2, rope, rope);
                if (first is not null && second is not null)
                    Assert.True(second.Length > first.Length, $"{rope} in {across}: {first}, then {second}");
            },
            iter: 20_000);

    [Fact]
    public void No_screw_holds_rope_that_is_too_heavy_for_it() =>
        Gen.Select(Posts, Ropes, Gen.Enum<FixingPurpose>()).Sample((across, rope, purpose) =>
        {
            if (ScrewFor(purpose, across, rope) is { } screw)
                Assert.True(rope <= (purpose == FixingPurpose.Wrap ? screw.WrapRopeUpTo : screw.RopeUpTo));
        });

    private static void Check(FixingPurpose purpose, Action<Length, Length, Length> law)
    {
        var found = 0;
        Gen.Select(Posts, Ropes).Sample(
            (across, rope) =>
            {
                if (ScrewFor(purpose, across, rope) is not { } screw)
                    return;
                Interlocked.Increment(ref found);
                law(across, rope, screw.Reach);
            },
            iter: 5_000);
        Assert.True(found > 1_000, $"only {found} screws were found to look at");
    }

    private static Screw? ScrewFor(FixingPurpose purpose, Length across, Length diameter)
    {
        var rope = new Rope(RopeMaterial.Polypropylene, diameter);
        return ScrewChoice.For(purpose, across, skewDegrees: 0, slope: 0, rope, RopeBit.DiameterFor(rope), ShopTables.Standard).Screw;
    }
}
