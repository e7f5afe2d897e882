using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

public class InstallationTests
{
    [Fact]
    public void At_a_bored_corner_the_first_rope_is_hung_before_the_second_and_low_rows_before_high_ones()
    {
        var takeoff = Sample.Takeoff(Sample.Example("pier"));
        Assert.Equal(["A-low-1", "A-top-1", "A-top-2"], Installation.InOrder(takeoff.Pieces, piece => piece).Select(piece => piece.Run));
        Assert.Null(Installation.FirstRopeOf(takeoff, Piece(takeoff, "A-top-1")));
        Assert.Equal("A-top-1", Installation.FirstRopeOf(takeoff, Piece(takeoff, "A-top-2"))!.Run);
    }

    [Fact]
    public void The_second_rope_of_a_corner_waits_for_the_first_and_its_knot_comes_last()
    {
        var takeoff = Sample.Takeoff(Sample.Example("pier"));
        var steps = Installation.StepsOf(takeoff, Piece(takeoff, "A-top-2"));
        Assert.Equal(
            [typeof(SoakStep), typeof(LayOutStep), typeof(FirstRopeStep), typeof(EndStep), typeof(ThreadStep), typeof(SagStep), typeof(TrimStep), typeof(EndStep)],
            steps.Select(step => step.GetType()));
        Assert.Equal(("A2", "A3", true), ((LayOutStep)steps[1]) is var lay ? (lay.Start.Mark, lay.Finish.Mark, lay.FinishTakesUp) : default);
        Assert.Equal(("A2", FixingPurpose.CornerSecond), ((EndStep)steps[3]) is var end ? (end.At.Post.Mark, end.Fixing!.Purpose) : default);
        Assert.Equal((AtPostKind.Knot, null), ((EndStep)steps[7]) is var knot ? (knot.At.Kind, knot.Fixing) : default);
    }

    [Fact]
    public void A_piece_that_starts_with_a_knot_is_worked_from_its_other_end()
    {
        var takeoff = Sample.Takeoff(Sample.Line("""{ "mark": "top", "height": "30 in", "sag": "4 in", "start": "knot", "finish": "stopped" }"""));
        var steps = Installation.StepsOf(takeoff, takeoff.Pieces[0]);
        Assert.Equal("A3", ((LayOutStep)steps[0]).Start.Mark);
        Assert.Equal(["A2", "A1"], ((ThreadStep)steps[2]).Posts.Select(post => post.Mark));
        Assert.Equal(["A2-A3", "A1-A2"], steps.OfType<SagStep>().Select(step => $"{step.Section.From.Mark}-{step.Section.To.Mark}"));
        Assert.Equal("A1", ((EndStep)steps[^1]).At.Post.Mark);
    }

    /// <summary>At P2 the line turns right, walking from P1: its outside is the left. A rope that passes a post on the left, going on, has it on the right and goes round it with the clock.</summary>
    [Fact]
    public void A_wrap_goes_round_a_corner_on_the_side_that_the_job_says()
    {
        var takeoff = Sample.Takeoff(Sample.Example("pilings"));
        Assert.Equal(WrapWay.Clockwise, WayAt(takeoff, "P-top-1", "P2"));
        Assert.Equal(WrapWay.CounterClockwise, WayAt(takeoff, "P-low-1", "P2"));
    }

    [Fact]
    public void Whoever_works_from_the_other_end_winds_the_other_way_for_the_same_rope()
    {
        var plain = Sample.Takeoff(Sample.Line("""{ "mark": "top", "height": "30 in", "sag": "4 in", "start": "stopped", "finish": "wrap 2", "between": "wrap 1" }"""));
        var turned = Sample.Takeoff(Sample.Line("""{ "mark": "top", "height": "30 in", "sag": "4 in", "start": "wrap 2", "finish": "stopped", "between": "wrap 1" }"""));
        Assert.Equal(WrapWay.CounterClockwise, WayAt(plain, "A-top-1", "A2"));
        Assert.Equal(WrapWay.Clockwise, WayAt(turned, "A-top-1", "A2"));
    }

    [Fact]
    public void In_any_job_every_screw_is_driven_once_and_every_sag_set_once_before_the_screw_behind_it() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                var takeoff = Sample.Takeoff(RandomJob.Of(seed).ToJsonString());
                foreach (var piece in takeoff.Pieces)
                {
                    var steps = Installation.StepsOf(takeoff, piece);
                    var driven = steps.Select(step => step switch { EndStep end => end.Fixing, LineScrewStep line => line.Fixing, WrapStep wrap => wrap.Fixing, _ => null })
                        .Where(fixing => fixing is not null);
                    Assert.Equal(takeoff.Fixings.Where(fixing => fixing.Run == piece.Run).ToHashSet(), driven.ToHashSet()!);
                    Assert.Equal(piece.Sections.ToHashSet(), steps.OfType<SagStep>().Select(step => step.Section).ToHashSet());
                    Assert.Equal(piece.Sections.Count, steps.OfType<SagStep>().Count());
                    Assert.Equal(piece.Rope.IsNatural, steps[0] is SoakStep);
                    Assert.Equal(piece.Manner == WettingManner.Trimmed, steps[^2] is TrimStep);
                    foreach (var (before, after) in steps.Where(step => step is not TrimStep).Zip(steps.Where(step => step is not TrimStep).Skip(1)).Where(pair => pair.First is SagStep))
                        Assert.True(after is EndStep { IsStart: false } or LineScrewStep or WrapStep, $"{before} then {after}");
                    Assert.Equal(2, steps.OfType<EndStep>().Count());
                }
            },
            iter: 200);

    [Fact]
    public void In_any_job_a_corners_second_rope_comes_after_its_first() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                var takeoff = Sample.Takeoff(RandomJob.Of(seed).ToJsonString());
                foreach (var line in takeoff.Job.Lines)
                {
                    var hung = new HashSet<string>();
                    foreach (var piece in Installation.InOrder(takeoff.Pieces.Where(piece => piece.Line == line.Mark), piece => piece))
                    {
                        Assert.True(Installation.FirstRopeOf(takeoff, piece) is not { } first || hung.Contains(first.Run));
                        hung.Add(piece.Run);
                    }
                }
            },
            iter: 200);

    private static Piece Piece(JobTakeoff takeoff, string run) => takeoff.Pieces.Single(piece => piece.Run == run);

    private static WrapWay? WayAt(JobTakeoff takeoff, string run, string post) =>
        Installation.StepsOf(takeoff, Piece(takeoff, run)).OfType<WrapStep>().Single(step => step.At.Post.Mark == post).Way;
}
