namespace CutShop.Takeoff.Tests.Rules;

/// <summary>Worked examples of statics books and courses; the unit is that of each example.</summary>
public class HangingRopeTextbookTests
{
    private const double Gravity = 9.81;

    /// <summary>A statics course's chapter on catenaries, example 1: 140 m of cable of 3 kg/m across 120 m. c 61.45 m, sag 31.70 m, end tension 2.74 kN.</summary>
    [Fact]
    public void A_long_cable_across_120_m()
    {
        var rope = HangingRope.FromSlack(level: 120, rise: 0, slack: 20);
        Assert.Equal(61.45, rope.Parameter, 0.005);
        Assert.Equal(31.70, rope.Sag, 0.005);
        Assert.Equal(2.74, EndTension(rope, 3 * Gravity) / 1000, 0.005);
    }

    /// <summary>625 ft of cable of 2 lb/ft that sags 25 ft: c 1940.625 ft, span 622.33 ft, end tension 3931.25 lb.</summary>
    [Fact]
    public void A_cable_of_625_ft_that_sags_25_ft()
    {
        var rope = HangingRope.FromSag(level: 622.33, rise: 0, sag: 25);
        Assert.Equal(625, rope.Arc, 0.005);
        Assert.Equal(1940.625, rope.Parameter, 0.05);
        Assert.Equal(3931.25, EndTension(rope, 2), 0.1);
    }

    /// <summary>Beer and Johnston, Vector Mechanics, 7.127: 25 ft of chain, 30 lb, sag 10 ft: span 12.36 ft, greatest tension 15.38 lb.</summary>
    [Fact]
    public void A_chain_of_25_ft_that_sags_10_ft()
    {
        var rope = HangingRope.FromSag(level: 12.36, rise: 0, sag: 10);
        Assert.Equal(25, rope.Arc, 0.005);
        Assert.Equal(15.38, EndTension(rope, 30.0 / 25), 0.01);
    }

    /// <summary>Beer and Johnston, Vector Mechanics, 7.128: 500 ft of cable of 2.8 lb/ft that sags 125 ft: span 412.0 ft, greatest tension 875 lb.</summary>
    [Fact]
    public void A_cable_of_500_ft_that_sags_125_ft()
    {
        var rope = HangingRope.FromSag(level: 412.0, rise: 0, sag: 125);
        Assert.Equal(500, rope.Arc, 0.05);
        Assert.Equal(875, EndTension(rope, 2.8), 0.2);
    }

    /// <summary>Beer and Johnston, Vector Mechanics, 7.107: 60 m span, 1.5 m sag, 0.6 kg/m: 60.0999 m; as a catenary 1776.1 N, as a parabola 1774.6 N.</summary>
    [Fact]
    public void A_shallow_cable_is_close_to_a_parabola()
    {
        var rope = HangingRope.FromSag(level: 60, rise: 0, sag: 1.5);
        Assert.Equal(60.0999, rope.Arc, 0.0001);
        Assert.Equal(1776.1, EndTension(rope, 0.6 * Gravity), 0.05);
        Assert.InRange(EndTension(rope, 0.6 * Gravity), 1774.7, 1780);
    }

    /// <summary>Supports 20 apart, the second 5 higher, rope 20.7 long: c 61.91729, greatest drop below the chord 0.83402 at x = 10.0651, recomputed.</summary>
    [Fact]
    public void A_rope_up_a_slope()
    {
        // The chord is √(20² + 5²) = 20.615528128.
        var rope = HangingRope.FromSlack(level: 20, rise: 5, slack: 20.7 - 20.615528128088);
        Assert.Equal(20.7, rope.Arc, 1e-9);
        Assert.Equal(61.91729, rope.Parameter, 0.00001);
        Assert.Equal(0.83402, rope.DropAt(10.0651), 0.00001);
        Assert.True(rope.DropAt(10.0651) > rope.DropAt(9.96));
        Assert.True(rope.DropAt(10.0651) > rope.DropAt(10.17));
    }

    /// <summary>L = l (1 + 8/3 n² − 32/5 n⁴), n = sag / span: for 100 and 1 that is 100.02666; for 72 and 3/4 it is 72.02083.</summary>
    [Theory]
    [InlineData(100, 1, 100.02666)]
    [InlineData(72, 0.75, 72.02083)]
    public void A_shallow_rope_follows_the_series(double level, double sag, double arc) =>
        Assert.Equal(arc, HangingRope.FromSag(level, rise: 0, sag).Arc, 0.00001);

    /// <summary>At a level support the tension is w (c + sag).</summary>
    private static double EndTension(HangingRope rope, double weightByLength) => weightByLength * (rope.Parameter + rope.Sag);
}
