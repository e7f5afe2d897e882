namespace CutShop.Takeoff.Tests.Rules;

/// <summary>What a railing is held against where somebody asks whether it is allowed: heights, openings, pulls, wood left. Worked by hand.</summary>
public sealed class AllowedHereTests
{
    /// <summary>
    /// A weightless string 13 in long between level holds 12 in apart, pushed in the middle: halves of 6.5 over 6 stand 2.5 off, a 5-12-13
    /// triangle twice over. Each half carries 100 lb of the 200 at a sine of 2.5 / 6.5: 260 lb.
    /// </summary>
    [Fact]
    public void A_string_pushed_in_the_middle_is_two_right_triangles() => Assert.Equal(260.0, Leaning.PullLb(13, 12)!.Value, 9);

    /// <summary>Spans of 72 in with a sag of 5, 3, 1 and 1/2 in: arcs by the series L = l (1 + 8/3 n² − 32/5 n⁴), then T = 200 A / 4 y by hand.</summary>
    [Theory]
    [InlineData("5", 632)]
    [InlineData("3", 1045)]
    [InlineData("1", 3119)]
    [InlineData("1/2", 6236)]
    public void Less_sag_pulls_harder(string sag, double pounds)
    {
        var takeoff = Sample.Takeoff(Sample.Line($$"""{ "mark": "top", "height": "36 in", "sag": "{{sag}} in", "start": "stopped", "finish": "stopped" }""", posts: 2));
        Assert.Equal(pounds, Leaning.PullLb(Assert.Single(takeoff.Pieces).Sections[0])!.Value, 1.0);
    }

    [Fact]
    public void A_straight_rope_has_no_pull_that_is_known() => Assert.Null(Leaning.PullLb(72, 72));

    /// <summary>The pull of the two halves balances the push, whatever length and distance: statics at the point that is pushed.</summary>
    [Fact]
    public void Both_halves_together_hold_the_push()
    {
        var random = new Random(20260118);
        for (var i = 0; i < 1_000; i++)
        {
            var chord = 10 + (random.NextDouble() * 200);
            var length = chord + (random.NextDouble() * 20) + 0.001;
            var half = Math.Acos(chord / length);
            Assert.Equal(200, 2 * Leaning.PullLb(length, chord)!.Value * Math.Sin(half), 1e-4);
        }
    }

    /// <summary>Square: 1 − b / W and 1 − (b / W)³. 3 1/2 in post and 1 9/16 in bit, 5 1/2 and 1 11/16: by hand, in percent.</summary>
    [Theory]
    [InlineData("3 1/2", "1 9/16", 55.36, 91.10)]
    [InlineData("5 1/2", "1 11/16", 69.32, 97.11)]
    public void Wood_left_in_a_square_post(string across, string hole, double along, double other)
    {
        var left = WoodLeft.Of(PostShape.Square, Inches(across), Inches(hole));
        Assert.Equal((along, other), (Math.Round(left.Along * 100, 2), Math.Round(left.Across * 100, 2)));
    }

    /// <summary>Against thin slices added up: the second moment of area of a round post without the slice that the bore takes.</summary>
    [Theory]
    [InlineData("8", "1 9/16")]
    [InlineData("9 1/2", "2 1/16")]
    [InlineData("6", "5")]
    public void Wood_left_in_a_round_post_is_what_slices_add_up_to(string across, string hole)
    {
        var (radius, half) = (Inches(across).Inches / 2, Inches(hole).Inches / 2);
        const int slices = 200_000;
        var (along, other, all) = (0.0, 0.0, 0.0);
        for (var i = 0; i < slices; i++)
        {
            var x = radius * (((i + 0.5) / slices * 2) - 1);
            var (height, width) = (Math.Sqrt((radius * radius) - (x * x)), 2 * radius / slices);
            // A slice at x, as tall as the circle there: about its middle when bent along it, at its distance when bent across.
            var (alongSlice, otherSlice) = (2 * height * height * height / 3 * width, 2 * height * x * x * width);
            all += otherSlice;
            if (Math.Abs(x) < half)
                continue;
            along += alongSlice;
            other += otherSlice;
        }
        var left = WoodLeft.Of(PostShape.Round, Inches(across), Inches(hole));
        Assert.Equal(along / all, left.Along, 1e-4);
        Assert.Equal(other / all, left.Across, 1e-4);
    }

    /// <summary>
    /// Rows at 36 and 18 in with sags of 5 and 3 in, rope 1 1/2 in. At mid-span 31 and 15; between them (36 − 18) − 1 1/2 = 16 1/2 at the posts,
    /// 14 1/2 in the middle. To the ground 18 − 3/4 at the posts.
    /// </summary>
    [Fact]
    public void Openings_are_widest_at_the_posts_where_the_upper_rope_sags_more()
    {
        var rows = RowOpening.Of(TwoRows("5 in", "3 in"));
        Assert.Equal(["top", "low"], rows.Select(row => row.Row));
        Assert.Equal(("31", "16 1/2", "low"), (Brief(rows[0].LowestMid), Brief(rows[0].Opening), rows[0].Below));
        Assert.Equal(("15", "17 1/4", null), (Brief(rows[1].LowestMid), Brief(rows[1].Opening), rows[1].Below));
        Assert.Equal(632, rows[0].LeaningLb!.Value, 1.0);
    }

    /// <summary>With sags of 1 and 6 in the ropes part in the middle: (36 − 1) − (18 − 6) − 1 1/2 = 21 1/2.</summary>
    [Fact]
    public void Openings_are_widest_in_the_middle_where_the_lower_rope_sags_more() =>
        Assert.Equal("21 1/2", Brief(RowOpening.Of(TwoRows("1 in", "6 in"))[0].Opening));

    /// <summary>The gap's parabola through 18, 23 and 22 (rows at 36 and 40 over 18): t = 2 / 6, 23 + 2 t − 3 t² = 23 1/3; less 1 1/2.</summary>
    [Fact]
    public void A_gap_that_bulges_beside_the_middle_is_found()
    {
        var takeoff = Sample.Takeoff(Sample.Line(
            """
            { "mark": "top", "height": "36 in", "heights": { "A2": "40 in" }, "sag": "1 in", "start": "wrap 1", "finish": "wrap 1" },
            { "mark": "low", "height": "18 in", "sag": "4 in", "start": "wrap 1", "finish": "wrap 1" }
            """,
            posts: 2));
        Assert.Equal(23 + (1.0 / 3) - 1.5, RowOpening.Of(takeoff)[0].Opening.Inches, 1e-6);
    }

    [Theory]
    [InlineData("30 in", false)]
    [InlineData("30 1/64 in", true)]
    public void A_drop_over_thirty_inches_needs_a_guard(string drop, bool needs)
    {
        var line = Sample.Takeoff(Sample.Line(Sample.PlainRow, section: $$""", "drop": "{{drop}}" """)).Job.Lines[0];
        Assert.Equal(needs, GuardedDrop.Of(line) is not null);
    }

    private static JobTakeoff TwoRows(string top, string low) => Sample.Takeoff(Sample.Line(
        $$"""
        { "mark": "low", "height": "18 in", "sag": "{{low}}", "start": "stopped", "finish": "stopped" },
        { "mark": "top", "height": "36 in", "sag": "{{top}}", "start": "stopped", "finish": "stopped" }
        """));

    private static string Brief(Length length) => LengthText.Brief(length).Replace(" in", "", StringComparison.Ordinal);

    private static Length Inches(string text) => LengthText.Parse(text + " in").OrThrow();
}
