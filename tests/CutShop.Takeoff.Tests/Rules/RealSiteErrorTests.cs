namespace CutShop.Takeoff.Tests.Rules;

/// <summary>Each name of curves, rings, eyes, holes and wetting that is missing, doubled, of the wrong kind or contradicted is an error with its path.</summary>
public class RealSiteErrorTests
{
    private const string Square = "\"shape\": \"square\", \"across\": \"5 1/2 in\", \"height\": \"42 in\"";
    private const string Stopped = "\"sag\": \"4 in\", \"start\": \"stopped\", \"finish\": \"stopped\"";
    private const string Sections = "\"sections\": [ { \"clear\": \"72 in\" }, { \"clear\": \"72 in\" } ],";

    [Theory]
    [InlineData("\"radius\": \"240 in\", \"string\": \"288 in\", \"middle\": \"46 in\", \"chord\": \"72 in\", \"turns\": \"left\"", "$.lines[0].curve.string")]
    [InlineData("\"string\": \"288 in\", \"chord\": \"72 in\", \"turns\": \"left\"", "$.lines[0].curve.middle")]
    [InlineData("\"radius\": \"240 in\", \"middle\": \"46 in\", \"chord\": \"72 in\", \"turns\": \"left\"", "$.lines[0].curve.middle")]
    [InlineData("\"chord\": \"72 in\", \"turns\": \"left\"", "$.lines[0].curve.radius")]
    [InlineData("\"radius\": \"240 in\", \"turns\": \"left\"", "$.lines[0].curve.chord")]
    [InlineData("\"radius\": \"240 in\", \"chord\": \"72 in\", \"angle\": \"60\", \"turns\": \"left\"", "$.lines[0].curve.angle")]
    [InlineData("\"radius\": \"240 in\", \"angle\": \"360\", \"turns\": \"left\"", "$.lines[0].curve.angle")]
    [InlineData("\"radius\": \"240 in\", \"chord\": \"480 in\", \"turns\": \"left\"", "$.lines[0].curve.chord")]
    [InlineData("\"radius\": \"80 in\", \"chord\": \"72 in\", \"turns\": \"left\"", "$.lines[0].curve.chord")]
    [InlineData("\"radius\": \"240 in\", \"chord\": \"72 in\"", "$.lines[0].curve.turns")]
    public void A_curve_says_what_is_wrong(string curve, string path) =>
        Assert.Equal([path], Paths(Job($"\"curve\": {{ {curve} }},")));

    [Fact]
    public void A_curve_takes_the_place_of_sections_and_turns()
    {
        const string Curve = "\"curve\": { \"radius\": \"240 in\", \"chord\": \"72 in\", \"turns\": \"left\" },";
        Assert.Empty(Paths(Job(Curve)));
        Assert.Equal(["$.lines[0].curve"], Paths(Job(Curve + Sections)));
        Assert.Equal(["$.lines[0].posts[1].turn"], Paths(Job(Curve, second: ", \"turn\": \"10 left\"")));
        Assert.Equal(["$.lines[0].closed"], Paths(Job(Curve + "\"closed\": true,")));
    }

    [Theory]
    [InlineData(", \"corner\": \"through\"", "$.lines[0].posts[1].corner")]
    [InlineData(", \"turn\": \"50 left\", \"corner\": \"through\"", "$.lines[0].posts[1].corner")]
    [InlineData(", \"turn\": \"50 left\", \"corner\": \"round\"", "$.lines[0].posts[1].corner")]
    [InlineData(", \"turn\": \"140 left\"", "$.lines[0].posts[1].turn")]
    [InlineData(", \"girth\": \"26 in\"", "$.lines[0].posts[1].girth")]
    [InlineData(", \"boring\": \"nobody\"", "$.lines[0].posts[1].boring")]
    [InlineData(", \"holes\": { \"low\": { \"across\": \"1 5/8 in\" } }", "$.lines[0].posts[1].holes.low")]
    [InlineData(", \"holes\": { \"top\": { \"across\": \"1 1/2 in\" } }", "$.lines[0].posts[1].holes.top.across")]
    [InlineData(", \"holes\": { \"top\": { \"height\": \"36 in\" } }", "$.lines[0].posts[1].holes.top.across")]
    [InlineData(", \"holes\": { \"top\": { \"across\": \"1 5/8 in\", \"bore\": \"steep\" } }", "$.lines[0].posts[1].holes.top.bore")]
    [InlineData(", \"holes\": \"two\"", "$.lines[0].posts[1].holes")]
    public void A_post_says_what_is_wrong(string second, string path) => Assert.Equal([path], Paths(Job(Sections, second: second)));

    [Fact]
    public void A_hole_where_the_row_is_wrapped_is_refused() =>
        Assert.Equal(["$.lines[0].posts[1].holes.top"], Paths(Job(Sections, second: ", \"holes\": { \"top\": { \"across\": \"1 5/8 in\" } }", row: Stopped + ", \"between\": \"wrap 1\"")));

    [Theory]
    [InlineData("\"sag\": \"4 in\", \"start\": \"beside\", \"finish\": \"stopped\"", "$.lines[0].rows[0].start")]
    [InlineData("\"sag\": \"4 in\", \"start\": { \"ring\": {} }, \"finish\": \"stopped\"", "$.lines[0].rows[0].start.ring", "$.lines[0].rows[0].start.eye")]
    [InlineData("\"sag\": \"4 in\", \"start\": { \"eye\": { \"pin\": \"1/2 in\", \"length\": \"4 in\", \"reach\": \"1 in\" } }, \"finish\": \"stopped\"", "$.lines[0].rows[0].start.eye.length")]
    [InlineData("\"sag\": \"4 in\", \"start\": { \"eye\": { \"pin\": \"1/2 in\", \"length\": \"5 in\", \"reach\": \"-1 in\" } }, \"finish\": \"stopped\"", "$.lines[0].rows[0].start.eye.reach")]
    [InlineData("\"sag\": \"4 in\", \"start\": { \"eye\": { \"pin\": \"1/2 in\", \"length\": \"5 in\", \"reach\": \"1 in\", \"tucks\": 3 } }, \"finish\": \"stopped\"", "$.lines[0].rows[0].start.eye.tucks")]
    [InlineData("\"sag\": \"4 in\", \"start\": \"stopped\", \"finish\": \"stopped\", \"at\": { \"A2\": { \"eye\": {} } }", "$.lines[0].rows[0].at.A2")]
    [InlineData("\"sag\": \"4 in\", \"start\": \"stopped\", \"finish\": \"stopped\", \"heights\": { \"A9\": \"30 in\" }", "$.lines[0].rows[0].heights.A9")]
    [InlineData("\"sag\": \"4 in\", \"start\": \"stopped\", \"finish\": \"stopped\", \"heights\": { \"A2\": 30 }", "$.lines[0].rows[0].heights.A2")]
    [InlineData("\"sag\": \"4 in\", \"start\": \"stopped\", \"finish\": \"stopped\", \"bore\": \"straight\"", "$.lines[0].rows[0].bore")]
    [InlineData("\"sag\": \"4 in\", \"start\": \"stopped\", \"finish\": \"stopped\", \"unbroken\": \"yes\"", "$.lines[0].rows[0].unbroken")]
    public void A_row_says_what_is_wrong(string row, params string[] paths) => Assert.Equal(paths, Paths(Job(Sections, row: row)));

    [Theory]
    [InlineData("\"allowances\": { \"wetting\": { \"loses\": \"12%\", \"manner\": \"trimmed\" } },", "$.allowances.wetting")]
    [InlineData("\"longest\": \"60 in\",", "$.longest")]
    [InlineData("\"bore\": \"flat\",", "$.bore")]
    public void A_job_says_what_is_wrong(string job, string path) => Assert.Equal([path], Paths(Job(Sections, job: job)));

    [Theory]
    [InlineData("\"shrink\": \"10%\", \"wetting\": { \"loses\": \"12%\", \"manner\": \"trimmed\" }", "$.allowances.wetting")]
    [InlineData("\"wetting\": { \"loses\": \"50%\", \"manner\": \"trimmed\" }", "$.allowances.wetting.loses")]
    [InlineData("\"wetting\": { \"loses\": \"12%\", \"manner\": \"soaked\" }", "$.allowances.wetting.manner")]
    [InlineData("\"wetting\": { \"manner\": \"trimmed\" }", "$.allowances.wetting.loses")]
    public void Wetting_says_what_is_wrong(string allowances, string path) =>
        Assert.Equal([path], Paths(Job(Sections, job: $"\"allowances\": {{ {allowances} }},").Replace("polypropylene", "manila", StringComparison.Ordinal)));

    [Fact]
    public void A_closed_line_says_what_is_wrong()
    {
        const string Three = "\"closed\": true, \"sections\": [ { \"clear\": \"72 in\" }, { \"clear\": \"72 in\" }, { \"clear\": \"72 in\" } ],";
        Assert.Empty(Paths(Job(Three)));
        Assert.Equal(["$.lines[0].sections"], Paths(Job("\"closed\": true, " + Sections)));
        Assert.Equal(["$.lines[0].sections"], Paths(Job(Three.Replace("\"72 in\" } ]", "\"72 in\", \"rise\": \"1 in\" } ]", StringComparison.Ordinal))));
        Assert.Equal(["$.lines[0].rows[0].start", "$.lines[0].rows[0].finish"], Paths(Job(Three, row: "\"sag\": \"4 in\", \"start\": \"knot\", \"finish\": \"knot\"")));
        Assert.Equal(["$.lines[0].rows[0].at.A1"], Paths(Job(Three, row: Stopped + ", \"at\": { \"A1\": \"wrap 1\" }")));
    }

    /// <summary>Shanks of 0.164 and 0.190 in: their middles are 0.177 in apart where they touch, and 1/8 in of wood is left between.</summary>
    [Fact]
    public void Between_both_screws_of_a_corner_an_eighth_of_wood_is_left()
    {
        foreach (var diameter in new[] { "1/2 in", "3/4 in", "1 1/2 in", "2 in" })
        {
            var takeoff = Sample.Takeoff(Job(Sections, second: ", \"turn\": \"90 left\"").Replace("1 1/2 in\" }", diameter + "\" }", StringComparison.Ordinal));
            var screws = takeoff.Fixings.Where(fixing => fixing.Post.Mark == "A2").ToList();
            var shanks = screws.Select(fixing => ShopTables.Standard.Screws.Screws.First(screw => screw.Name == fixing.Screw).Shank).ToList();
            var wood = screws[1].Height - screws[0].Height - ((shanks[0] + shanks[1]) / 2);
            Assert.True(wood >= Length.FromSixtyFourths(8), $"{diameter}: {wood}");
        }
    }

    /// <summary>
    /// On a slope the screws run aslant, and two lines that pass over each other by a height v are nearer than v: with rakes r at a right
    /// angle by v cos² r / √(1 − sin⁴ r). The second screw goes in one sixteenth after the other until that leaves 1/8 in.
    /// </summary>
    [Fact]
    public void On_a_slope_the_second_screw_of_a_corner_goes_in_higher()
    {
        const string Slope = "\"sections\": [ { \"clear\": \"55 in\", \"rise\": \"35 in\" }, { \"clear\": \"55 in\", \"rise\": \"35 in\" } ],";
        var screws = Sample.Takeoff(Job(Slope, second: ", \"turn\": \"90 left\"")).Fixings.Where(fixing => fixing.Post.Mark == "A2").ToList();
        Assert.Equal([30.05, 30.05], screws.Select(screw => Math.Round(screw.RakeDegrees, 2)));
        var shanks = screws.Sum(fixing => ShopTables.Standard.Screws.Screws.First(screw => screw.Name == fixing.Screw).Shank.Inches);
        var (sine, cosine) = Math.SinCos(screws[0].RakeDegrees * Math.PI / 180);
        var nearer = cosine * cosine / Math.Sqrt(1 - Math.Pow(sine, 4));
        var raise = (screws[1].Height - screws[0].Height).Inches;
        Assert.True((raise * nearer) - (shanks / 2) >= 0.125, $"{raise}");
        Assert.True(((raise - 0.0625) * nearer) - (shanks / 2) < 0.125, $"{raise}");
    }

    /// <summary>
    /// 5 1/2 in posts, clear 55 in, rise 35 in: the bore slopes by 30.05 degrees, so W / cos is 6.354 in and 3.604 in of wood lies between
    /// the far face and the rope's end. A 4 in screw would reach 0.396 in into the rope; the least is 0.75 in.
    /// </summary>
    [Fact]
    public void A_screw_into_an_end_on_a_slope_reaches_along_the_slope()
    {
        var takeoff = Sample.Takeoff(Job("\"sections\": [ { \"clear\": \"55 in\", \"rise\": \"35 in\" }, { \"clear\": \"55 in\", \"rise\": \"35 in\" } ],"));
        var end = takeoff.Fixings[0];
        Assert.Equal(30.05, end.RakeDegrees, 0.01);
        Assert.InRange(end.Length.Inches + end.CounterboreDepth.Inches, 3.604 + 0.75, 6.354);
        // It goes in at the face that looks away uphill's start, lower than the bore by 2 3/4 in x tan 30.05.
        Assert.Equal(36 - 1.591, end.Mark.Inches, 0.001);
    }

    private static string Job(string line, string second = "", string row = Stopped, string job = "") => $$"""
        {
          "number": "R-1", {{job}} "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ { "mark": "A",
            "posts": [ { "mark": "A1", {{Square}} }, { "mark": "A2", {{Square}}{{second}} }, { "mark": "A3", {{Square}} } ],
            {{line}}
            "rows": [ { "mark": "top", "height": "36 in", {{row}} } ] } ]
        }
        """;

    private static IEnumerable<string> Paths(string json) => Sample.Read(json).Problems.Select(problem => problem.Path);
}
