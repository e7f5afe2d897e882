using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

public class HangingRopeTests
{
    private static readonly Gen<double> Levels = Gen.Double[10, 300];
    private static readonly Gen<double> Slopes = Gen.Double[-1.5, 1.5];

    [Fact]
    public void A_rope_given_by_its_sag_is_the_curve_that_a_root_finder_finds() =>
        Gen.Select(Levels, Slopes, Gen.Double[0.02, 0.9]).Sample((level, slope, share) =>
        {
            var (rise, sag) = (slope * level, share * level);
            var rope = HangingRope.FromSag(level, rise, sag);
            var c = Catenary.ParameterForSag(level, rise, sag);
            Assert.Equal(c, rope.Parameter, 1e-6 * c);
            Assert.Equal(Catenary.ArcOf(c, level, rise), rope.Arc, 1e-6 * rope.Arc);
        });

    [Fact]
    public void A_rope_given_by_its_slack_is_the_curve_that_a_root_finder_finds() =>
        Gen.Select(Levels, Slopes, Gen.Double[0.002, 0.5]).Sample((level, slope, share) =>
        {
            var (rise, slack) = (slope * level, share * level);
            var rope = HangingRope.FromSlack(level, rise, slack);
            var c = Catenary.ParameterForArc(level, rise, Math.Sqrt((level * level) + (rise * rise)) + slack);
            Assert.Equal(c, rope.Parameter, 1e-5 * c);
            Assert.Equal(Catenary.SagOf(c, level, rise), rope.Sag, 1e-5 * level);
        });

    [Fact]
    public void The_arc_is_as_long_as_its_small_pieces_together() =>
        Gen.Select(Levels, Slopes, Gen.Double[0.01, 1.5]).Sample((level, slope, share) =>
        {
            var rope = HangingRope.FromSag(level, slope * level, share * level);
            const int pieces = 4000;
            var (length, before) = (0.0, Height(0));
            for (var i = 1; i <= pieces; i++)
            {
                var here = Height(level * i / pieces);
                length += double.Hypot(level / pieces, here - before);
                before = here;
            }
            Assert.Equal(rope.Arc, length, 1e-5 * rope.Arc);

            double Height(double x) => (slope * x) - rope.DropAt(x);
        });

    [Fact]
    public void Sag_to_slack_and_back_gives_the_same_rope() =>
        Gen.Select(Levels, Slopes, Gen.Double[1e-4, 3]).Sample((level, slope, share) =>
        {
            var bySag = HangingRope.FromSag(level, slope * level, share * level);
            var bySlack = HangingRope.FromSlack(level, slope * level, bySag.Arc - bySag.Chord);
            Assert.Equal(bySag.Sag, bySlack.Sag, 1e-7 * level);
        });

    [Fact]
    public void At_mid_span_the_drop_is_the_sag_and_at_the_supports_nothing() =>
        Gen.Select(Levels, Slopes, Gen.Double[1e-3, 3]).Sample((level, slope, share) =>
        {
            var rope = HangingRope.FromSag(level, slope * level, share * level);
            Assert.Equal(rope.Sag, rope.DropAt(level / 2), 1e-8 * level);
            Assert.Equal(0, rope.DropAt(0), 1e-9 * level);
            Assert.Equal(0, rope.DropAt(level), 1e-8 * level);
        });

    [Fact]
    public void Uphill_and_downhill_are_the_same_length() =>
        Gen.Select(Levels, Slopes, Gen.Double[0, 1]).Sample((level, slope, share) =>
        {
            Assert.Equal(
                HangingRope.FromSag(level, slope * level, share * level).Arc,
                HangingRope.FromSag(level, -slope * level, share * level).Arc,
                1e-9 * level);
        });

    [Fact]
    public void Twice_as_large_is_twice_as_long() =>
        Gen.Select(Levels, Slopes, Gen.Double[0.001, 2]).Sample((level, slope, share) =>
        {
            var one = HangingRope.FromSag(level, slope * level, share * level);
            var two = HangingRope.FromSag(2 * level, 2 * slope * level, 2 * share * level);
            Assert.Equal(2 * one.Arc, two.Arc, 1e-9 * level);
            Assert.Equal(2 * one.Parameter, two.Parameter, 1e-6 * one.Parameter);
        });

    [Theory]
    [InlineData(72, 0)]
    [InlineData(72, 54)]
    [InlineData(72, -54)]
    [InlineData(0.001, 1000)]
    [InlineData(40_000, 1)]
    public void More_sag_is_always_more_rope(double level, double rise)
    {
        var before = HangingRope.FromSag(level, rise, sag: 0).Arc;
        for (var sag = 1e-3; sag < 4e4; sag *= 1.5)
        {
            var rope = HangingRope.FromSag(level, rise, sag);
            Assert.True(double.IsFinite(rope.Arc) && double.IsFinite(rope.Parameter) && rope.Parameter > 0);
            Assert.True(rope.Arc >= before, $"a sag of {sag} is shorter");
            before = rope.Arc;
        }
    }

    [Theory]
    [InlineData(72, 0)]
    [InlineData(72, 54)]
    [InlineData(0.001, -1000)]
    [InlineData(40_000, 1)]
    public void More_slack_is_always_more_sag(double level, double rise)
    {
        var before = 0.0;
        for (var slack = 1e-7; slack < 4e4; slack *= 1.5)
        {
            var rope = HangingRope.FromSlack(level, rise, slack);
            Assert.True(double.IsFinite(rope.Sag) && double.IsFinite(rope.Parameter));
            Assert.True(rope.Sag > before, $"a slack of {slack} sags less");
            before = rope.Sag;
        }
    }

    /// <summary>The largest site a job file may describe over the narrowest gap it may describe: 1000 m over 1 nm, in inches.</summary>
    [Fact]
    public void The_ends_of_what_a_job_file_may_say_are_still_ropes()
    {
        const double nanometre = 1 / 25_400_000.0;
        const double kilometre = 1000 / 0.0254;
        foreach (var level in new[] { nanometre, 1.0, kilometre })
        {
            foreach (var rise in new[] { 0.0, nanometre, kilometre, -kilometre })
            {
                foreach (var amount in new[] { nanometre, 1.0, kilometre / 2, kilometre })
                {
                    var bySag = HangingRope.FromSag(level, rise, amount);
                    Assert.InRange(bySag.Arc, bySag.Chord, bySag.Chord + (2 * amount) + (2 * kilometre));
                    var bySlack = HangingRope.FromSlack(level, rise, amount);
                    Assert.InRange(bySlack.Sag, 0, 2 * kilometre);
                    Assert.True(bySlack.Parameter > 0);
                }
            }
        }
    }

    [Fact]
    public void A_tight_rope_is_the_chord()
    {
        var rope = HangingRope.FromSag(level: 72, rise: 54, sag: 0);
        Assert.Equal((90.0, 90.0, true, 0.0), (rope.Arc, rope.Chord, rope.IsStraight, rope.DropAt(30)));
        Assert.Equal(rope, HangingRope.FromSlack(level: 72, rise: 54, slack: 0));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-1, 1)]
    [InlineData(72, -1)]
    public void A_rope_needs_room_and_cannot_be_short(double level, double amount)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => HangingRope.FromSag(level, 0, amount));
        Assert.Throws<ArgumentOutOfRangeException>(() => HangingRope.FromSlack(level, 0, amount));
    }
}
