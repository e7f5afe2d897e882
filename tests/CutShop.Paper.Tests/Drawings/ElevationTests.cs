using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Drawings;

public sealed class ElevationTests
{
    // A statics course's first example on catenaries: 140 m over a span of 120 m sag 31.70 m; 20 m of slack here.
    [Fact]
    public void A_rope_hangs_in_its_true_curve()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.TwoPosts(clear: "120 m", hang: "\"slack\": \"20 m\"", height: "42 m", rowHeight: "40 m"));
        var rope = Assert.Single(Assert.Single(Elevation.Of(takeoff, takeoff.Job.Lines[0], PaperSettings.Default)).Shapes.OfType<Polyline>(), p => p.Pen == Pen.Rope && p.Points.Count > 10);
        var metres = 120 / (rope.Points[^1].X - rope.Points[0].X);
        Assert.Equal(rope.Points[0].Y, rope.Points[^1].Y, 6);
        Assert.Equal(31.70, (rope.Points.Max(p => p.Y) - rope.Points[0].Y) * metres, 0.005);
        // At a quarter of the span the catenary of c = 61.45 m is 24.22 m down: c (cosh(60/c) - cosh(30/c)).
        Assert.Equal(24.22, (rope.Points[(rope.Points.Count - 1) / 4].Y - rope.Points[0].Y) * metres, 0.02);
    }

    [Fact]
    public void The_figures_of_a_line_are_on_it()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var words = WordsOf(Elevation.Of(takeoff, takeoff.Job.Lines[0], PaperSettings.Default));
        foreach (var said in new[] { "A1", "A5", "top", "low", "36 in", "18 in", "sag 6 in", "72 in clear", "1828.8 mm", "77 1/2 in centres", "78 in centres", "rise 9 in (228.6 mm)", "turns 90° left" })
            Assert.Contains(said, words);
    }

    [Fact]
    public void Millimetres_come_first_where_the_shop_wants_them()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var words = WordsOf(Elevation.Of(takeoff, takeoff.Job.Lines[0], PaperSettings.Default with { Units = UnitsFirst.Millimetres }));
        Assert.Contains("1828.8 mm clear", words);
        Assert.Contains("72 in", words);
    }

    [Fact]
    public void A_long_line_is_broken_into_bands_that_share_their_break_posts()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LongLine(12));
        var bands = Elevation.Of(takeoff, takeoff.Job.Lines[0], PaperSettings.Default).ToList();
        Assert.Equal(4, bands.Count);
        var marks = bands.Select(band => band.Shapes.OfType<DrawnText>().Select(w => w.Text).Where(t => t is ['L', >= '0' and <= '9', ..]).ToList()).ToList();
        Assert.Equal(Enumerable.Range(1, 12).Select(i => $"L{i}"), marks.SelectMany(m => m).Distinct());
        for (var i = 1; i < marks.Count; i++)
            Assert.Equal(marks[i - 1][^1], marks[i][0]);
        Assert.All(bands, band => Assert.EndsWith("1 : 48", band.Title, StringComparison.Ordinal));
    }

    [Fact]
    public void An_endless_line_is_not_drawn_to_its_end_and_the_rest_is_counted()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LongLine(400));
        var line = takeoff.Job.Lines[0];
        Assert.Equal(Elevation.MostBands, Elevation.Of(takeoff, line, PaperSettings.Default).Count());
        // 40 bands of 3 sections end at the 121st post.
        Assert.Equal(279, Elevation.PostsNotDrawn(line));
        Assert.Equal(0, Elevation.PostsNotDrawn(SampleJobs.Takeoff(SampleJobs.LongLine(121)).Job.Lines[0]));
    }

    [Fact]
    public void One_run_can_be_bold()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var line = takeoff.Job.Lines[0];
        var bold = Elevation.Of(takeoff, line, PaperSettings.Default, "A-low-2").SelectMany(d => d.Shapes).OfType<Polyline>().Where(p => p.Pen == Pen.ThisRope && p.Points.Count > 10);
        // Sections A3 to A4 and A4 to A5.
        Assert.Equal(2, bold.Count());
        Assert.DoesNotContain(Elevation.Of(takeoff, line, PaperSettings.Default).SelectMany(d => d.Shapes).OfType<Polyline>(), p => p.Pen == Pen.ThisRope);
    }

    // Rows a foot apart on a steep slope; rows so close that the upper rope hangs across the lower one's chord.
    [Theory]
    [InlineData("18 in", "36 in", "12 in", "8 in")]
    [InlineData("24 in", "36 in", "9 in", "5 in")]
    [InlineData("30 in", "36 in", "0 in", "8 in")]
    [InlineData("30 in", "36 in", "-6 in", "8 in")]
    public void The_words_of_a_sag_touch_no_rope(string low, string top, string rise, string sag)
    {
        var json = $$"""
            { "number": "LQ-11", "customer": "", "rope": { "material": "nylon", "diameter": "1 1/4 in" }, "lines": [ { "mark": "E",
              "posts": [ {{string.Join(", ", Enumerable.Range(1, 5).Select(i => $$"""{ "mark": "E{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in" }"""))}} ],
              "sections": [ {{string.Join(", ", Enumerable.Repeat($$"""{ "clear": "72 in", "rise": "{{rise}}" }""", 4))}} ],
              "rows": [ { "mark": "top", "height": "{{top}}", "sag": "{{sag}}", "start": "stopped", "finish": "stopped" },
                        { "mark": "low", "height": "{{low}}", "sag": "{{sag}}", "start": "stopped", "finish": "stopped" } ] } ] }
            """;
        var takeoff = SampleJobs.Takeoff(json);
        foreach (var drawing in Elevation.Of(takeoff, takeoff.Job.Lines[0], PaperSettings.Default))
        {
            var ropes = drawing.Shapes.OfType<Polyline>().Where(line => line.Pen == Pen.Rope && line.Points.Count > 10).ToList();
            var sags = drawing.Shapes.OfType<DrawnText>().Where(words => words.Text.StartsWith("sag", StringComparison.Ordinal)).ToList();
            Assert.Equal(ropes.Count, sags.Count);
            foreach (var (words, rope) in sags.SelectMany(words => ropes.Select(rope => (words, rope))))
                Assert.DoesNotContain(rope.Points, point => IsOn(words, point, rope.Width!.Value / 2));
        }
    }

    /// <summary>Whether a point comes as near as that to a text's capitals, in the text's own direction.</summary>
    private static bool IsOn(DrawnText words, Point point, double near)
    {
        var (turn, width) = (words.TurnDegrees * Math.PI / 180, Lettering.Width(words.Text, words.Size));
        var (dx, dy) = (point.X - words.At.X, point.Y - words.At.Y);
        var along = dx * Math.Cos(turn) + dy * Math.Sin(turn) + (words.Anchor == TextAnchor.Middle ? width / 2 : 0);
        var down = dy * Math.Cos(turn) - dx * Math.Sin(turn);
        return along > -near && along < width + near && down > -words.Size * 0.73 - near && down < near;
    }

    private static HashSet<string> WordsOf(IEnumerable<Drawing> drawings) =>
        [.. drawings.SelectMany(d => d.Shapes).OfType<DrawnText>().Select(w => w.Text.Replace('\u00A0', ' '))];
}
