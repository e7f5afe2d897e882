namespace CutShop.Takeoff.Tests.Rules;

/// <summary>Each warning on the last case without it and the first with it. Posts are 5 1/2 in and 42 in high, sections 72 in.</summary>
public class WarningTests
{
    [Fact]
    public void A_plain_job_has_none() => Assert.Empty(Sample.Takeoff(Sample.Line(Sample.PlainRow)).Warnings);

    /// <summary>With 2 in polypropylene the bit is 2 1/8 in: 3 5/8 in leaves walls of 3/4 in.</summary>
    [Theory]
    [InlineData("3 5/8 in", 0)]
    [InlineData("3 39/64 in", 3)]
    public void A_side_wall_under_three_quarters_is_thin(string across, int count) =>
        Assert.Equal(count, Count("thin-wall", Sample.Line(Sample.PlainRow, Rope("polypropylene", "2 in"), across: across)));

    /// <summary>The bit is 1 5/8 in, half of it 13/16: the bore's upper edge may be at 40 3/8 in, its middle at 39 9/16.</summary>
    [Theory]
    [InlineData("39 9/16 in", 0)]
    [InlineData("39 37/64 in", 3)]
    [InlineData("41 63/64 in", 3)]
    public void A_bore_within_a_bit_of_the_top_is_near_it(string height, int count) =>
        Assert.Equal(count, Count("near-top", Sample.Line(Sample.PlainRow.Replace("30 in", height, StringComparison.Ordinal))));

    /// <summary>Two bits of 1 5/8 in and as much wood between them: 3 1/4 in from middle to middle.</summary>
    [Theory]
    [InlineData("26 3/4 in", 0)]
    [InlineData("26 49/64 in", 3)]
    [InlineData("30 in", 3)]
    [InlineData("33 15/64 in", 3)]
    [InlineData("33 1/4 in", 0)]
    public void Bores_want_a_bit_of_wood_between_them(string height, int count) =>
        Assert.Equal(count, Count("bores-close", Sample.Line(Sample.PlainRow + ", " + Row("low", height, "\"sag\": \"4 in\""))));

    [Fact]
    public void Of_three_rows_only_neighbours_are_compared()
    {
        var rows = string.Join(", ", Row("a", "30 in", "\"sag\": \"0 in\""), Row("b", "28 in", "\"sag\": \"0 in\""), Row("c", "26 in", "\"sag\": \"0 in\""));
        var warnings = Sample.Takeoff(Sample.Line(rows, posts: 2)).Warnings.Where(warning => warning.Code == "bores-close");
        Assert.Equal(["A1/b", "A2/b", "A1/c", "A2/c"], warnings.Select(warning => warning.Where));
    }

    [Fact]
    public void A_wrapped_row_has_no_bores_to_be_close_to()
    {
        var wrapped = """{ "mark": "low", "height": "29 in", "sag": "4 in", "start": "wrap 1", "finish": "wrap 1", "between": "wrap 1" }""";
        Assert.Equal(0, Count("bores-close", Sample.Line(Sample.PlainRow + ", " + wrapped)));
    }

    [Theory]
    [InlineData("1 1/2 in", 0)]
    [InlineData("1 31/64 in", 3)]
    [InlineData("2 in", 0)]
    [InlineData("2 1/64 in", 3)]
    public void A_rope_outside_the_common_sizes_is_named_at_each_post(string diameter, int count) =>
        Assert.Equal(count, Count("rope-for-post", Sample.Line(Sample.PlainRow, Rope("polypropylene", diameter))));

    [Theory]
    [InlineData("manila", "0%", 1)]
    [InlineData("manila", "0.0001%", 0)]
    [InlineData("polypropylene", "0%", 0)]
    public void Natural_rope_shrinks(string material, string shrink, int count) =>
        Assert.Equal(count, Count("no-shrink", Sample.Line(Sample.PlainRow, Rope(material, "1 1/2 in")).Replace("\"lines\"", $"\"allowances\": {{ \"shrink\": \"{shrink}\" }}, \"lines\"", StringComparison.Ordinal)));

    [Theory]
    [InlineData("15 in", 0)]
    [InlineData("15 1/64 in", 2)]
    public void A_sag_over_half_the_height_is_deep(string sag, int count) =>
        Assert.Equal(count, Count("deep-sag", WithSag(sag)));

    /// <summary>The rope is 1 1/2 in thick, so at 29 1/4 in of sag under 30 in it touches.</summary>
    [Theory]
    [InlineData("29 15/64 in", 0)]
    [InlineData("29 1/4 in", 2)]
    public void A_sag_may_reach_the_ground(string sag, int count) =>
        Assert.Equal(count, Count("sag-to-ground", WithSag(sag)));

    /// <summary>The row below hangs at 20 − 2 = 18 in, its upper side at 18 3/4; the upper row's underside is 3/4 in under its middle.</summary>
    [Theory]
    [InlineData("10 31/64 in", 0)]
    [InlineData("10 1/2 in", 2)]
    public void A_sag_may_reach_the_row_below(string sag, int count)
    {
        var rows = Sample.PlainRow.Replace("4 in", sag, StringComparison.Ordinal) + ", " + Row("low", "20 in", "\"sag\": \"2 in\"");
        Assert.Equal(count, Count("sag-to-row-below", Sample.Line(rows)));
    }

    [Fact]
    public void A_deep_sag_given_as_slack_is_seen_too() =>
        Assert.Equal(2, Count("deep-sag", Sample.Line(Row("top", "30 in", "\"slack\": \"20 in\""))));

    [Theory]
    [InlineData("manila", "2 in", 0)]
    [InlineData("manila", "2 41/64 in", 1)]
    [InlineData("polyester", "2 in", 1)]
    public void A_rope_without_a_published_weight_is_named_once(string material, string diameter, int count) =>
        Assert.Equal(count, Count("no-weight", Sample.Line(Sample.PlainRow, Rope(material, diameter))));

    [Theory]
    [InlineData("1 7/8 in", 0)]
    [InlineData("1 57/64 in", 1)]
    [InlineData("1 1/8 in", 0)]
    [InlineData("1 7/64 in", 1)]
    public void A_measure_far_off_the_nominal_is_doubted(string measured, int count) =>
        Assert.Equal(count, Count("measured-far-off", Sample.Line(Sample.PlainRow, $$"""{ "material": "manila", "diameter": "1 1/2 in", "measured": "{{measured}}" }""")));

    [Theory]
    [InlineData("1 1/2 in", 0)]
    [InlineData("2 3/4 in", 1)]
    public void A_bit_that_is_not_on_the_rack_is_named(string diameter, int count) =>
        Assert.Equal(count, Count("bit-not-on-rack", Sample.Line(Sample.PlainRow, Rope("polypropylene", diameter), across: "7 1/2 in")));

    [Theory]
    [InlineData("A1", "90 left", "turn-at-end", 1)]
    [InlineData("A2", "90 left", "turn-at-end", 0)]
    public void A_turn_that_does_nothing_is_named(string post, string turn, string code, int count) =>
        Assert.Equal(count, Count(code, Sample.Line(Sample.PlainRow).Replace($"\"mark\": \"{post}\",", $"\"mark\": \"{post}\", \"turn\": \"{turn}\",", StringComparison.Ordinal)));

    /// <summary>4 in rope in 4 5/8 in wants 2 5/16 + 2 = 4 5/16 to 4 5/8 in of reach; with its head sunk a 4 in lag gives 4 1/4 and the next 4 3/4.</summary>
    [Fact]
    public void Where_no_screw_fits_the_warning_says_which_would()
    {
        var takeoff = Sample.Takeoff(Sample.Line(Sample.PlainRow, Rope("polypropylene", "4 in"), posts: 2, across: "4 5/8 in"));
        Assert.Equal(
            ["No screw in the catalogue fits; one that reaches from 4 5/16 in to 4 5/8 in into the post would."],
            takeoff.Warnings.Where(warning => warning.Code == "no-screw").Select(warning => warning.Text).Distinct());
        Assert.All(takeoff.Fixings, fixing => Assert.Equal((null, "4 5/16\""), (fixing.Screw, fixing.Length.ToString())));
    }

    /// <summary>
    /// A clear 55 in and a rise of 27 1/2: centres 60 1/2 apart, so over half the post, 2 3/4 in, the bore climbs 1.25 in to its higher mouth, and
    /// its edge is 13/16 √(1 + (5/11)²) = 0.8925 in over its middle. That leaves one bit, 1 5/8 in, at 42 − 1.625 − 1.25 − 0.8925 = 38.2325 in.
    /// </summary>
    [Theory]
    [InlineData("38 14/64 in", 0)]
    [InlineData("38 15/64 in", 1)]
    public void A_raked_bore_is_near_the_top_at_its_higher_mouth(string height, int count)
    {
        var line = Sample.Line(Sample.PlainRow.Replace("30 in", height, StringComparison.Ordinal)).Replace("72 in\"", "55 in\", \"rise\": \"27 1/2 in\"", StringComparison.Ordinal);
        Assert.Equal(count, CountAt("near-top", line, "A2"));
    }

    /// <summary>
    /// 1/8 in of wood between shanks of 0.164 to 0.216 in lifts the second screw by 5/16 or 3/8 in. Rope of 1/2 in lies 1/4 in above its middle,
    /// of 3/4 in 3/8 in, so the screw runs above it or along its skin; of 7/8 in 7/16 in.
    /// </summary>
    [Theory]
    [InlineData("1/2 in", 1)]
    [InlineData("3/4 in", 1)]
    [InlineData("7/8 in", 0)]
    [InlineData("1 1/2 in", 0)]
    public void The_second_screw_of_a_corner_misses_thin_rope(string diameter, int count) =>
        Assert.Equal(count, Count("screw-misses-rope", Corner("90 left", diameter)));

    /// <summary>
    /// The first screw goes straight on through the post, and the second rope ends d / 2 = 3/4 in from the middle. At a right angle they are
    /// 3/4 in less half a shank apart. At 30 degrees the screw is, 3/4 in along the rope, 3/4 x tan 30 = 0.433 in from its middle: inside it.
    /// </summary>
    [Theory]
    [InlineData("30 left", 1)]
    [InlineData("30 right", 1)]
    [InlineData("90 left", 0)]
    [InlineData("120 right", 0)]
    public void At_a_gentle_corner_the_first_screw_stands_where_the_second_rope_goes(string turn, int count) =>
        Assert.Equal(count, Count("screw-clash", Corner(turn, "1 1/2 in")));

    /// <summary>Bores of 1 5/8 in: a screw of 0.216 in through the middle of one keeps 1/8 in from the other where they are 13/16 + 0.108 + 1/8 apart.</summary>
    [Theory]
    [InlineData("31 3/64 in", 0)]
    [InlineData("31 2/64 in", 1)]
    public void A_screw_keeps_away_from_the_bore_of_another_row(string height, int count)
    {
        var screws = Sample.Takeoff(Sample.Line(Sample.PlainRow)).Fixings.Single(fixing => fixing.Post.Mark == "A2");
        Assert.Equal("#12", screws.Screw!.Size);
        var clashes = Sample.Takeoff(Sample.Line(Sample.PlainRow + ", " + Row("high", height, "\"sag\": \"0 in\""))).Warnings.Where(warning => warning.Code == "screw-clash");
        Assert.Equal(count, clashes.Count(warning => warning.Where == "A2/top"));
    }

    /// <summary>Two turns of 1 1/2 in cover 3 in: from 28 1/2 to 31 1/2 in. A bit of 1 5/8 in reaches 13/16 in to each side.</summary>
    [Theory]
    [InlineData("27 11/16 in", 0)]
    [InlineData("27 45/64 in", 3)]
    [InlineData("32 19/64 in", 3)]
    [InlineData("32 5/16 in", 0)]
    public void Turns_do_not_lie_on_the_bores_of_another_row(string height, int count) =>
        Assert.Equal(count, Count("wraps-overlap", Sample.Line(Wrapped("top", "30 in", "2") + ", " + Row("other", height, "\"sag\": \"0 in\""))));

    /// <summary>Three turns of 1 1/2 in cover 4 1/2 in, two 3 in: they touch where they are 3 3/4 in apart.</summary>
    [Theory]
    [InlineData("26 1/4 in", 0)]
    [InlineData("26 17/64 in", 3)]
    public void Turns_of_two_rows_may_touch(string height, int count) =>
        Assert.Equal(count, Count("wraps-overlap", Sample.Line(Wrapped("top", "30 in", "2") + ", " + Wrapped("low", height, "3"))));

    [Theory]
    [InlineData("3 1/64 in", 0)]
    [InlineData("3 in", 3)]
    public void Turns_may_reach_the_ground(string height, int count) =>
        Assert.Equal(count, Count("wrap-in-ground", Sample.Line(Wrapped("low", height, "4"))));

    [Theory]
    [InlineData("39 in", 0)]
    [InlineData("39 1/64 in", 3)]
    public void Turns_may_reach_over_the_top(string height, int count) =>
        Assert.Equal(count, Count("near-top", Sample.Line(Wrapped("top", height, "4"))));

    /// <summary>Posts that are alike are worked out once; each still has its own warning, wherever it stands.</summary>
    [Fact]
    public void Each_of_many_like_posts_has_its_warnings()
    {
        var line = Sample.Line(Row("top", "41 in", "\"sag\": \"4 in\""), posts: 40).Replace("\"A7\",", "\"A7\", \"turn\": \"90 left\",", StringComparison.Ordinal);
        var warnings = Sample.Takeoff(line).Warnings.Where(warning => warning.Code == "near-top").ToList();
        Assert.Equal(Enumerable.Range(1, 40).Select(i => $"A{i}/top"), warnings.Select(warning => warning.Where));
        Assert.Equal(Enumerable.Range(1, 40).Select(i => $"A{i}"), warnings.Select(warning => warning.Post));
    }

    [Fact]
    public void A_warning_says_where_on_the_site_and_where_in_the_file()
    {
        var warning = Assert.Single(Sample.Takeoff(Sample.Line(Row("top", "30 in", "\"sag\": \"16 in\""), posts: 2)).Warnings);
        Assert.Equal(
            ("deep-sag", "A1-A2/top", "$.lines[0].rows[0]", "A sag of 16 in is over half of the row's height of 30 in."),
            (warning.Code, warning.Where, warning.Path, warning.Text));
    }

    private static int Count(string code, string json) => Sample.Takeoff(json).Warnings.Count(warning => warning.Code == code);

    private static int CountAt(string code, string json, string post) => Sample.Takeoff(json).Warnings.Count(warning => warning.Code == code && warning.Post == post);

    private static string Wrapped(string mark, string height, string turns) =>
        $$"""{ "mark": "{{mark}}", "height": "{{height}}", "sag": "0 in", "start": "wrap {{turns}}", "finish": "wrap {{turns}}", "between": "wrap {{turns}}" }""";

    private static string Corner(string turn, string rope) =>
        Sample.Line(Sample.PlainRow, Rope("polypropylene", rope)).Replace("\"A2\",", $"\"A2\", \"turn\": \"{turn}\",", StringComparison.Ordinal);

    private static string WithSag(string sag) => Sample.Line(Sample.PlainRow.Replace("4 in", sag, StringComparison.Ordinal));

    private static string Row(string mark, string height, string hang) =>
        $$"""{ "mark": "{{mark}}", "height": "{{height}}", {{hang}}, "start": "stopped", "finish": "stopped" }""";

    private static string Rope(string material, string diameter) => $$"""{ "material": "{{material}}", "diameter": "{{diameter}}" }""";
}
