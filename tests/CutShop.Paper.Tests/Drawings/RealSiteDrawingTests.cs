using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Drawings;

/// <summary>Curves, rings, corners, gates, joins, slopes and holes that are there, as they are drawn.</summary>
public sealed class RealSiteDrawingTests
{
    private static readonly JobTakeoff Takeoff = SampleJobs.Takeoff(SampleJobs.RealSites);

    // The radius of the circle through three points, abc / 4K (Heron); 248.391304 is L² / 8m + m / 2 of the curve's string.
    [Theory]
    [InlineData("C", 240)]
    [InlineData("B", 248.391304)]
    public void The_posts_of_a_curve_stand_on_its_circle(string mark, double radius)
    {
        var posts = LinePath.Of(LineOf(mark)).Posts;
        foreach (var (first, second, third) in posts.Zip(posts.Skip(1), posts.Skip(2)))
        {
            var (a, b, c) = (Distance(first, second), Distance(second, third), Distance(first, third));
            var half = (a + b + c) / 2;
            Assert.Equal(radius, a * b * c / (4 * Math.Sqrt(half * (half - a) * (half - b) * (half - c))), 1e-4);
        }
        // The arc is drawn through all of them, at the plan's scale.
        var drawing = PlanOf(mark);
        var arc = Assert.Single(drawing.Shapes.OfType<Polyline>(), line => line.Pen == Pen.Axis);
        Assert.All(drawing.Shapes.OfType<Polygon>(), post => Assert.Contains(arc.Points.Zip(arc.Points.Skip(1)), step => Past(MiddleOf(post), step.First, step.Second) < 0.05));
    }

    [Fact]
    public void A_ring_closes_and_its_first_post_is_drawn_once()
    {
        var path = LinePath.Of(LineOf("R"));
        Assert.Equal(path.Posts[0], path.Posts[^1]);
        // Eight sides of 30 in: the ring is 30 (1 + √2) in across.
        Assert.Equal(30 * (1 + Math.Sqrt(2)), path.Width, 1e-6);
        var drawing = PlanOf("R");
        Assert.Equal(8, drawing.Shapes.OfType<Polygon>().Count());
        Assert.Single(drawing.Shapes.OfType<DrawnText>(), words => words.Text == "R1");
    }

    // At 45 degrees the post stands turned by 22.5 on the bisector, and so does its bore: by hand, the corners of the post lie at 45 + 22.5 degrees.
    [Fact]
    public void A_post_with_a_straight_bore_through_its_corner_stands_on_the_bisector()
    {
        var work = WorkAt("M1");
        foreach (var bore in work.Bores)
        {
            Assert.Equal(new Point(-1, 0), PostWays.Outward(work, new(FaceSight.Toward, "L1"), bore));
            Assert.Equal(new Point(1, 0), PostWays.Outward(work, new(FaceSight.Toward, "N1"), bore));
        }
        // It turns 30 degrees: 15 either side.
        Assert.Equal(15, Math.Abs(Math.Atan2(PostWays.Arriving(work.Post).Y, PostWays.Arriving(work.Post).X) * 180 / Math.PI), 1e-6);
        Assert.Equal(15, Math.Abs(Math.Atan2(PostWays.Departing(work.Post).Y, PostWays.Departing(work.Post).X) * 180 / Math.PI), 1e-6);
    }

    // The worked corner of 60 degrees: both bores lie 15 degrees off the square, to opposite sides, and their screws in line with them.
    [Fact]
    public void The_bores_of_a_corner_that_ends_and_their_screws_lie_skewed_to_opposite_sides()
    {
        var work = WorkAt("L1");
        Assert.Equal([15.0, -15.0], work.Bores.Select(bore => Math.Round(PostWays.SkewOf(work, bore.Operations[0].Face, bore), 9)));
        foreach (var fixing in work.Fixings)
        {
            var bore = PostWays.BoreOf(work, fixing)!;
            Assert.Equal(bore.Run, fixing.Run);
            Assert.Equal(PostWays.SkewOf(work, bore.Operations[0].Face, bore), PostWays.SkewOf(work, fixing.Face, bore));
            Assert.Equal(0.736860, Math.Abs(PostWays.HolesOf(work, fixing)[0].Right.Inches), 1e-6);
        }
    }

    [Fact]
    public void A_gate_s_pins_stand_before_the_faces_and_its_rope_begins_at_the_throats()
    {
        var drawing = Assert.Single(Elevation.Of(Takeoff, LineOf("G"), PaperSettings.Default));
        var mm = 25.4 / double.Parse(drawing.Title.Split(": ")[^1], System.Globalization.CultureInfo.InvariantCulture);
        var posts = drawing.Shapes.OfType<Box>().ToList();
        var pins = drawing.Shapes.OfType<Disc>().Where(disc => disc.Fill == Fill.Ink).OrderBy(disc => disc.Centre.X).ToList();
        Assert.Equal(posts[0].X + posts[0].Width + (1.5 * mm), pins[0].Centre.X, 0.02);
        Assert.Equal(posts[1].X - (2 * mm), pins[1].Centre.X, 0.02);
        Assert.Equal([0.5 * mm / 2, 0.625 * mm / 2], pins.Select(pin => Math.Round(pin.Radius, 6)).Zip([0.5 * mm / 2, 0.625 * mm / 2], (a, b) => Math.Abs(a - b) < 1e-5 ? b : a));
        // Two eyes of 5 in: their throats are 5 in from the pins' centres along the rope, which falls by less than 1 in 2 there.
        var rope = drawing.Shapes.OfType<Polyline>().Single(line => line.Pen == Pen.Rope && line.Points.Count == 17);
        Assert.InRange(rope.Points[0].X - pins[0].Centre.X, 4.4 * mm, 5.01 * mm);
        Assert.InRange(pins[1].Centre.X - rope.Points[^1].X, 4.4 * mm, 5.01 * mm);
        Assert.Contains(drawing.Shapes.OfType<DrawnText>(), words => words.Text.Replace('\u00A0', ' ') == "eye on a 1/2 in pin, 4 tucks");
    }

    // The ground rises 1 in 2 everywhere. Row top is raked, row low is level.
    [Fact]
    public void A_raked_bore_climbs_and_a_level_one_does_not()
    {
        var slope = SampleJobs.Takeoff(SampleJobs.LongSlope);
        var bores = Elevation.Of(slope, slope.Job.Lines[0], PaperSettings.Default).SelectMany(drawing => drawing.Shapes).OfType<Stroke>()
            .Where(stroke => stroke.Pen == Pen.Hidden).Select(stroke => (stroke.From.Y - stroke.To.Y) / (stroke.To.X - stroke.From.X)).ToList();
        Assert.All(bores, tangent => Assert.Contains(Math.Round(tangent, 6), new[] { 0, 0.5 }));
        Assert.Equal(2, bores.GroupBy(tangent => Math.Round(tangent, 6)).Count());
    }

    [Fact]
    public void A_rope_ends_at_the_mouths_of_its_bores_in_the_elevation()
    {
        var drawing = Elevation.Of(Takeoff, LineOf("H"), PaperSettings.Default).First();
        var posts = drawing.Shapes.OfType<Box>().OrderBy(post => post.X).ToList();
        foreach (var rope in drawing.Shapes.OfType<Polyline>().Where(line => line.Pen == Pen.Rope && line.Points.Count == 17))
        {
            Assert.Contains(posts, post => Math.Abs(post.X + post.Width - rope.Points[0].X) < 0.4);
            Assert.Contains(posts, post => Math.Abs(post.X - rope.Points[^1].X) < 0.4);
        }
        Assert.Contains(drawing.Shapes.OfType<DrawnText>(), words => words.Text.Replace('\u00A0', ' ').StartsWith("low: 59 1/4 in", StringComparison.Ordinal));
        Assert.Contains(drawing.Shapes.OfType<DrawnText>(), words => words.Text.Replace('\u00A0', ' ') == "37 in");
    }

    [Fact]
    public void A_hole_that_is_there_is_drawn_as_there_and_not_as_work()
    {
        var work = WorkAt("H1");
        var shapes = PostDrawing.Of(work, PaperSettings.Default).SelectMany(drawing => drawing.Shapes).ToList();
        // One row is bored: filled on its face, and in its cuts from above and from the side. The other is there: an empty outline.
        Assert.Single(shapes.OfType<Disc>(), disc => disc.Fill == Fill.Bore);
        Assert.Contains(shapes.OfType<Disc>(), disc => disc.Pen == Pen.Thin && disc.Fill == Fill.None);
        Assert.Contains(shapes.OfType<Polygon>(), hole => hole.Pen == Pen.Thin && hole.Fill == Fill.None);
        Assert.Contains(shapes.OfType<DrawnText>(), words => words.Text.Contains("already there", StringComparison.Ordinal));
    }

    // On a curve to the left a rope that passes beside the posts lies outside, at the right; its staple is driven there.
    [Fact]
    public void A_rope_beside_the_posts_of_a_curve_is_held_at_the_outside()
    {
        var beside = Takeoff.Fixings.Where(fixing => fixing.Purpose == FixingPurpose.Beside).ToList();
        Assert.Equal(7, beside.Count);
        Assert.All(beside, fixing => Assert.Equal(new Face(FaceSight.Side, $"C{int.Parse(fixing.Post.Mark[1..], System.Globalization.CultureInfo.InvariantCulture) - 1}"), fixing.Face));
        var drawing = PlanOf("C");
        var ropes = drawing.Shapes.OfType<Polyline>().Where(line => line.Pen == Pen.Rope).ToList();
        Assert.Contains(ropes, rope => rope.Points.Count == 4 + 7);
    }

    private static Drawing PlanOf(string line) => Plan.Of(Takeoff, PaperSettings.Default).Single(drawing => drawing.Shapes.OfType<DrawnText>().Any(words => words.Text == $"{line}1"));

    private static Line LineOf(string mark) => Takeoff.Job.Lines.Single(line => line.Mark == mark);

    private static PostWork WorkAt(string post) => PostWork.Of(Takeoff).Single(work => work.Post.Mark == post);

    private static Point MiddleOf(Polygon post) => new(post.Points.Average(point => point.X), post.Points.Average(point => point.Y));

    private static double Distance(Point a, Point b) => double.Hypot(a.X - b.X, a.Y - b.Y);

    /// <summary>How far a point lies from a stretch of a line.</summary>
    private static double Past(Point point, Point from, Point to)
    {
        var length = Distance(from, to);
        var along = Math.Clamp(((point.X - from.X) * (to.X - from.X) + (point.Y - from.Y) * (to.Y - from.Y)) / (length * length), 0, 1);
        return Distance(point, new(from.X + along * (to.X - from.X), from.Y + along * (to.Y - from.Y)));
    }
}
