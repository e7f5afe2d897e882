using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>The catenary run backwards: from a rope that is cut to the sag that it gives.</summary>
public class MeasuredSpanTests
{
    private static readonly Length Hair = Length.RoundedFromInches(0.001);

    /// <summary>A statics course's chapter on catenaries, example 1: 140 m of cable across 120 m sags 31.70 m.</summary>
    [Fact]
    public void A_cable_of_140_m_across_120_m_sags_31_70_m() => Assert.Equal(31.70, HangingRope.FromArc(120, 0, 140)!.Value.Sag, 0.005);

    [Fact]
    public void A_rope_shorter_than_the_straight_distance_does_not_reach()
    {
        Assert.Null(HangingRope.FromArc(level: 3, rise: 4, arc: 4.999999));
        Assert.Equal(0, HangingRope.FromArc(level: 3, rise: 4, arc: 5)!.Value.Sag);
    }

    /// <summary>Held against a root finder on the curve itself with its length added up in small pieces.</summary>
    [Theory]
    [InlineData(72, 0, 73.5)]
    [InlineData(70, -8, 73)]
    [InlineData(96, 12, 99.25)]
    public void The_sag_of_a_length_is_that_of_the_curve(double level, double rise, double arc)
    {
        var c = Catenary.ParameterForArc(level, rise, arc);
        Assert.Equal(Catenary.SagOf(c, level, rise), HangingRope.FromArc(level, rise, arc)!.Value.Sag, 1e-6);
    }

    [Fact]
    public void Measured_as_planned_any_piece_is_neither_over_nor_short_and_has_its_sag() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                foreach (var piece in Sample.Takeoff(RandomJob.Of(seed).ToJsonString()).Pieces)
                {
                    foreach (var (index, section) in piece.Sections.Index())
                    {
                        var span = MeasuredSpan.Of(piece, index, section.Clear);
                        Assert.True(span.Over.Abs() < Hair, $"{piece.Run} {index}: {span.Over}");
                        Assert.Equal(section.Chord.Inches, span.Chord.Inches, 0.001);
                        // Near straight a thousandth of rope is much sag, so that is looked at as rope.
                        if (section.Sag > Length.Inch)
                            Assert.Equal(section.Sag.Inches, span.Sag!.Value.Inches, 0.001);
                    }
                }
            },
            iter: 100);

    /// <summary>72 in clear and 4 in of sag take 72.58957 in by the curve; across 71 in that rope sags by the curve what is asked here, and across 73 in it does not reach.</summary>
    [Fact]
    public void A_narrower_span_sags_more_and_a_wider_one_may_not_be_reached()
    {
        var piece = Sample.Takeoff(Sample.Line(Sample.PlainRow)).Pieces[0];
        var arc = Catenary.ArcOf(Catenary.ParameterForSag(72, 0, 4), 72, 0);
        Assert.Equal(arc, piece.Sections[0].Arc.Inches, 1e-6);

        var narrow = MeasuredSpan.Of(piece, 0, Inches(71));
        Assert.Equal(Catenary.SagOf(Catenary.ParameterForArc(71, 0, arc), 71, 0), narrow.Sag!.Value.Inches, 1e-5);
        Assert.Equal(arc - Catenary.ArcOf(Catenary.ParameterForSag(71, 0, 4), 71, 0), narrow.Over.Inches, 1e-5);
        Assert.Equal(Length.Zero, narrow.Lacks);

        var wide = MeasuredSpan.Of(piece, 0, Inches(73));
        Assert.Null(wide.Sag);
        Assert.Equal(73 - arc, wide.Lacks.Inches, 1e-6);
        Assert.Equal(arc - Catenary.ArcOf(Catenary.ParameterForSag(73, 0, 4), 73, 0), wide.Over.Inches, 1e-5);
    }

    /// <summary>A wrapped post holds the rope abeam of its centre, so half its width is added at each end.</summary>
    [Fact]
    public void Round_wrapped_posts_the_rope_spans_from_centre_to_centre()
    {
        var piece = Sample.Takeoff(Sample.Example("pilings")).Pieces[0];
        Assert.Equal(90.5, piece.Sections[0].Clear.Inches);
        Assert.Equal(90.5, piece.Sections[1].Clear.Inches);
        Assert.Equal(89 + 9.5, MeasuredSpan.Of(piece, 0, Inches(89)).Chord.Inches, 1e-6);
    }

    private static Length Inches(int inches) => Length.Inch * inches;
}
