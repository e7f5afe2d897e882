using System.Globalization;
using System.Text;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>
/// Set-out of curves and rings against the circle that the posts stand on: the chord over k of equal steps is 2 R sin(k t / 2), as tables of chords have
/// it, and the middle ordinate of an arc of angle a is R (1 - cos(a / 2)); and, for any figure, against the place where two tapes meet.
/// </summary>
public sealed class SetOutTests
{
    private const double Sixteenth = 1 / 16.0;

    [Fact]
    public void An_arc_is_set_out_from_its_first_and_last_post_by_chords()
    {
        var set = Of(Arc(9, "240 in", "72 in"));
        var step = 2 * Math.Asin(72 / 480.0);
        Assert.Equal(["A1", "A9"], set.Points.Select(point => point.Name));
        Assert.True(set.IsByPosts);
        Assert.Equal(Chord(240, 8 * step), set.Chord.Inches, 1e-6);
        for (var k = 0; k < 9; k++)
        {
            var post = set.Posts[k];
            Assert.Equal(Chord(240, k * step), post.First!.Value.Length.Inches, 1e-6);
            Assert.Equal(Chord(240, (8 - k) * step), post.Second!.Value.Length.Inches, 1e-6);
            // Turned to the left, the arc lies to the right of its string.
            Assert.Equal(-(240 * (Math.Cos((k - 4) * step) - Math.Cos(4 * step))), post.Off.Inches, 1e-6);
            Assert.Equal((set.Chord.Inches / 2) + (240 * Math.Sin((k - 4) * step)), post.Along.Inches, 1e-6);
        }
        Assert.Equal(-240 * (1 - Math.Cos(4 * step)), set.Posts[4].Off.Inches, 1e-6);
        Assert.All(set.Posts.Take(8), post => Assert.Equal(72, post.ToNext!.Value.Inches));
        Assert.Null(set.Posts[8].ToNext);
    }

    [Fact]
    public void A_bore_on_the_bisector_is_sighted_by_an_isosceles_triangle()
    {
        var set = Of(Arc(9, "240 in", "72 in"));
        Assert.Null(set.Posts[0].Bore);
        Assert.Null(set.Posts[8].Bore);
        Assert.All(set.Posts.Skip(1).Take(7), post =>
        {
            var bore = post.Bore!;
            Assert.True(bore.IsBisector);
            Assert.Equal(24, bore.Arm.Inches);
            // The middle of the third string, from the two marks on the strings to both neighbours.
            var i = set.Posts.ToList().IndexOf(post);
            var (back, on) = (Mark(set, i, i - 1), Mark(set, i, i + 1));
            Assert.Equal(double.Hypot(((back.X + on.X) / 2) - post.At.X, ((back.Y + on.Y) / 2) - post.At.Y), bore.FromCentre.Inches, 1e-6);
        });

        static GroundPoint Mark(SetOut set, int from, int to) => new(
            set.Posts[from].At.X + ((set.Posts[to].At.X - set.Posts[from].At.X) * 24 / 72),
            set.Posts[from].At.Y + ((set.Posts[to].At.Y - set.Posts[from].At.Y) * 24 / 72));
    }

    /// <summary>Thales: from the two ends of a diameter any post of the ring is seen at a right angle.</summary>
    [Fact]
    public void A_ring_is_set_out_from_two_posts_that_are_opposite()
    {
        var set = Of(Ring(8, 70));
        Assert.Equal(["A1", "A5"], set.Points.Select(point => point.Name));
        var diameter = 70 / Math.Sin(Math.PI / 8);
        Assert.Equal(diameter, set.Chord.Inches, 1e-6);
        Assert.All(set.Posts, post => Assert.Equal(
            diameter * diameter, Math.Pow(post.First!.Value.Length.Inches, 2) + Math.Pow(post.Second!.Value.Length.Inches, 2), 1e-3));
        Assert.All(set.Posts, post => Assert.Equal(70, post.ToNext!.Value.Inches));
        Assert.All(set.Posts, post => Assert.Equal(24 * Math.Sin(Math.PI / 8), post.Bore!.FromCentre.Inches, 1e-6));
        // Four posts on either side of the string, but for its ends.
        Assert.Equal((3, 3), (set.Posts.Count(post => post.Off.IsPositive), set.Posts.Count(post => post.Off < Length.Zero)));
    }

    /// <summary>From its own ends a flat arc would have its tapes cross at half its angle: 3.4 degrees.</summary>
    [Fact]
    public void A_flat_arc_has_pegs_set_back_on_its_hollow_side()
    {
        var set = Of(Arc(9, "2400 in", "72 in"));
        Assert.Equal(["P1", "P2"], set.Points.Select(point => point.Name));
        Assert.All(set.Points, point => Assert.Equal(set.Chord.Inches / 4, point.Off.Inches, 1e-6));
        Assert.Equal([0, set.Chord.Inches], set.Points.Select(point => point.Along.Inches));
        Meets(set);
    }

    [Theory]
    [InlineData(31, "2400 in", "96 in")] // 240 ft of walk on 200 ft
    [InlineData(61, "800 in", "64 in")] // three quarters of a circle of 133 ft
    [InlineData(121, "12000 in", "72 in")]
    [InlineData(12, "240 in", "120 in")] // most of a circle
    [InlineData(3, "240 in", "40 in")]
    public void Every_post_is_within_reach_of_two_tapes_that_cross_well(int posts, string radius, string chord)
    {
        var set = Of(Arc(posts, radius, chord));
        Meets(set);
        Assert.All(set.Points.Zip(set.Points.Skip(1)), pair => Assert.True(pair.First.At.To(pair.Second.At) <= SetOut.LongestTape.Inches));
    }

    [Theory]
    [InlineData(12, 96)]
    [InlineData(40, 96)]
    public void So_is_every_post_of_a_ring(int posts, double chord) => Meets(Of(Ring(posts, chord)));

    /// <summary>A quarter of a circle of 500 ft: its middle is 146 ft off the string.</summary>
    [Fact]
    public void A_post_that_no_tape_reaches_is_told_by_the_string_alone()
    {
        var set = Of(Arc(95, "6000 in", "100 in"));
        Assert.Contains(set.Posts, post => post.First is null);
        Assert.All(set.Posts, post => Assert.Equal(post.First is null, post.Second is null));
        var step = 2 * Math.Asin(100 / 12000.0);
        Assert.Equal(-6000 * (1 - Math.Cos(47 * step)), set.Posts[47].Off.Inches, 1e-5);
    }

    [Fact]
    public void Any_closed_figure_is_set_out_so_that_the_tapes_meet_at_its_posts()
    {
        var random = new Random(20270);
        for (var i = 0; i < 200; i++)
            Meets(Of(AnyRing(random)), least: 20);
    }

    [Fact]
    public void A_line_that_is_no_curve_and_no_ring_has_no_set_out()
    {
        var job = Read(Job("\"posts\": [ " + Posts(2) + " ], \"sections\": [ { \"clear\": \"72 in\" } ],"));
        Assert.Null(SetOut.Of(job, job.Lines[0]));
    }

    /// <summary>
    /// The two circles of a post's tapes cross at the post, on one of their two crossings; in reach of a tape, and at 30 degrees or more.
    /// </summary>
    private static void Meets(SetOut set, double least = 30)
    {
        foreach (var post in set.Posts)
        {
            var (a, b) = (post.First!.Value, post.Second!.Value);
            Assert.True(a.Length <= SetOut.LongestTape && b.Length <= SetOut.LongestTape);
            var (one, other) = (set.Points[a.Point].At, set.Points[b.Point].At);
            var (d, r, s) = (one.To(other), a.Length.Inches, b.Length.Inches);
            var along = ((d * d) + (r * r) - (s * s)) / (2 * d);
            var off = Math.Sqrt(Math.Max((r * r) - (along * along), 0));
            var (ux, uy) = ((other.X - one.X) / d, (other.Y - one.Y) / d);
            var crossings = new[] { 1, -1 }.Select(side => new GroundPoint(one.X + (along * ux) - (side * off * uy), one.Y + (along * uy) + (side * off * ux)));
            Assert.True(crossings.Min(crossing => crossing.To(post.At)) < 1e-3);
            // A tape that is read a sixteenth wrong moves the post by no more than twice that.
            if (post.CrossDegrees is { } cross)
                Assert.True(cross >= least, string.Create(CultureInfo.InvariantCulture, $"{post.Post.Mark}: {cross:0.0}, {Sixteenth / Math.Sin(cross * Math.PI / 180):0.000} in"));
        }
    }

    private static double Chord(double radius, double angle) => 2 * radius * Math.Sin(angle / 2);

    private static SetOut Of(string file)
    {
        var job = Read(file);
        return SetOut.Of(job, job.Lines[0])!;
    }

    private static Job Read(string file) => JobFileReader.Read(Encoding.UTF8.GetBytes(file)).Job!;

    private static string Arc(int posts, string radius, string chord) =>
        Job($"\"posts\": [ {Posts(posts)} ], \"curve\": {{ \"radius\": \"{radius}\", \"chord\": \"{chord}\", \"turns\": \"left\" }},");

    private static string Ring(int posts, double chord) => Job(string.Create(CultureInfo.InvariantCulture, $"""
        "closed": true, "posts": [ {Posts(posts, string.Create(CultureInfo.InvariantCulture, $", \"turn\": \"{360m / posts} left\", \"corner\": \"through\""))} ],
        "sections": [ {string.Join(", ", Enumerable.Repeat($"{{ \"centres\": \"{chord} in\" }}", posts))} ],
        """));

    /// <summary>A closed figure that is half as long as another: opposite sections are alike, so that it closes.</summary>
    private static string AnyRing(Random random)
    {
        var half = random.Next(2, 6);
        var turns = Enumerable.Range(0, half).Select(_ => random.Next(10, 100)).ToArray();
        var left = 180m;
        var exact = turns.Select(turn => decimal.Round(180m * turn / turns.Sum(), 4)).ToArray();
        exact[^1] = left - exact[..^1].Sum();
        var sides = exact.Select(_ => random.Next(40, 120)).ToArray();
        var posts = exact.Concat(exact).Select((turn, i) => string.Create(
            CultureInfo.InvariantCulture, $$"""{ "mark": "A{{i + 1}}", "shape": "round", "across": "5 1/2 in", "height": "42 in", "turn": "{{turn}} left" }"""));
        var sections = sides.Concat(sides).Select(side => string.Create(CultureInfo.InvariantCulture, $$"""{ "centres": "{{side}} in" }"""));
        return Job($"\"closed\": true, \"posts\": [ {string.Join(", ", posts)} ], \"sections\": [ {string.Join(", ", sections)} ],", "\"start\": \"wrap 1\", \"finish\": \"wrap 1\", \"between\": \"wrap 1\"");
    }

    private static string Posts(int count, string more = "") => string.Join(
        ", ", Enumerable.Range(1, count).Select(i => $$"""{ "mark": "A{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in"{{more}} }"""));

    private static string Job(string line, string ends = "\"start\": \"stopped\", \"finish\": \"stopped\"") => $$"""
        { "number": "S-1", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ { "mark": "A", {{line}} "rows": [ { "mark": "top", "height": "36 in", "sag": "3 in", {{ends}} } ] } ] }
        """;
}
