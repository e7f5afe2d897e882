using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Drawings;

public sealed class PlanTests
{
    [Fact]
    public void A_left_turn_goes_up_the_paper_and_a_right_turn_down()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var left = LinePath.Of(takeoff.Job.Lines[0]).Posts;
        var right = LinePath.Of(takeoff.Job.Lines[1]).Posts;
        // A1 to A3: two sections of 72 in clear between posts of 5 1/2 in are 155 in of centres; then 77 1/2 and 78 in up.
        Assert.Equal((0.0, 155.5), (left[0].X, left[0].Y));
        Assert.Equal(155, left[2].X, 9);
        Assert.Equal(155, left[4].X, 9);
        Assert.Equal((78.0, 0.0), (left[3].Y, left[4].Y));
        // P3 to P4: 96 in at 60 degrees to the right: 48 along, 83.14 down.
        Assert.Equal(192 + 48, right[3].X, 9);
        Assert.Equal(83.138, right[3].Y, 3);
    }

    [Fact]
    public void A_run_is_bold_from_its_first_post_to_its_last()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var piece = takeoff.Pieces.Single(p => p.Run == "A-top-2");
        var drawing = Assert.Single(Plan.Of(takeoff, PaperSettings.Default, piece));
        var bold = Assert.Single(drawing.Shapes.OfType<Polyline>(), p => p.Pen == Pen.ThisRope);
        // From the corner's middle up to the knot's post: 77 1/2 and 78 in at the drawing's scale.
        var scale = double.Parse(drawing.Title.Split(": ")[^1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.All(bold.Points, point => Assert.Equal(bold.Points[0].X, point.X, 6));
        Assert.Equal(155.5 * 25.4 / scale, bold.Points[0].Y - bold.Points[^1].Y, 6);
        Assert.Contains("A-top-2", drawing.Description, StringComparison.Ordinal);
        Assert.DoesNotContain(drawing.Shapes.OfType<DrawnText>(), w => w.Text == "P1");
    }

    [Fact]
    public void A_line_of_many_posts_is_drawn_by_its_ends_and_corners()
    {
        var drawing = Assert.Single(Plan.Of(SampleJobs.Takeoff(SampleJobs.LongLine(3000)), PaperSettings.Default));
        Assert.InRange(drawing.Shapes.Count, 5, 200);
        Assert.Contains(drawing.Shapes.OfType<DrawnText>(), w => w.Text == "L3000");
    }
}
