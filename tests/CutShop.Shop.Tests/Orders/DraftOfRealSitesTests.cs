using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

/// <summary>What real sites have, typed at the desk: each in its field, and what is wrong said there.</summary>
public sealed class DraftOfRealSitesTests
{
    private static readonly DraftForm Plain = SmallJobs.FourPosts() with { Unit = "in" };

    /// <summary>A change of the plain form, the field at which something is wrong, and a part of what is said.</summary>
    public static TheoryData<string[], string, string> Wrong { get; } = new()
    {
        { ["bore", "steep"], "bore", "raked, level" },
        { ["boring", "me"], "boring", "shop, site" },
        { ["longest", "0"], "longest", "above zero" },
        { ["rope.construction", "a\u0001"], "rope.construction", "control characters" },
        { ["allowances.wetting.manner", "trimmed"], "allowances.wetting.loses", "Missing" },
        { ["rope.material", "manila", "allowances.wetting.loses", "12.5"], "allowances.wetting.manner", "Missing" },
        { ["rope.material", "manila", "allowances.wetting.loses", "50", "allowances.wetting.manner", "trimmed"], "allowances.wetting.loses", "under 50%" },
        { ["allowances.wetting.loses", "10%", "allowances.wetting.manner", "trimmed"], "allowances.wetting.manner", "No rope of this job shrinks" },
        { ["lines[0].drop", "deep"], "lines[0].drop", "A number is missing" },
        { ["lines[0].boring", "me"], "lines[0].boring", "shop, site" },
        { ["lines[0].posts[1].girth", "26"], "lines[0].posts[1].girth", "Across is given too" },
        { ["lines[0].posts[1].corner", "through"], "lines[0].posts[1].corner", "no turn" },
        { ["lines[0].posts[1].turn", "60 left", "lines[0].posts[1].corner", "through"], "lines[0].posts[1].corner", "at most 45" },
        { ["lines[0].posts[1].holes", "tip: 1 5/8"], "lines[0].posts[1].holes", "tip: this line has no row of that mark" },
        { ["lines[0].posts[1].holes", "top: 1 1/4"], "lines[0].posts[1].holes", "top: the rope does not fit" },
        { ["lines[0].posts[1].holes", "top"], "lines[0].posts[1].holes", "top: missing" },
        { ["lines[0].sections[1].clearAt", "tip: 72"], "lines[0].sections[1].clearAt", "tip: this line has no row of that mark" },
        { ["lines[0].sections[1].clearAt", "top: far"], "lines[0].sections[1].clearAt", "top: a number is missing" },
        { ["lines[0].sections[1].drop", "-3"], "lines[0].sections[1].drop", "negative" },
        { ["lines[0].rows[0].heights", "A9: 34"], "lines[0].rows[0].heights", "A9: this line has no post of that mark" },
        { ["lines[0].rows[0].bore", "flat"], "lines[0].rows[0].bore", "raked, level" },
        { ["lines[0].rows[0].start", "eye"], "lines[0].rows[0].start.eye.pin", "Missing" },
        { ["lines[0].rows[0].finish.eye.pin", "1/2"], "lines[0].rows[0].finish", "figures of an eye" },
        { ["lines[0].course", "curve"], "lines[0].curve.radius", "Missing" },
        { ["lines[0].course", "closed"], "lines[0]", "3 sections for 4 posts" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Each_mistake_is_said_at_its_own_field(string[] typed, string field, string said)
    {
        var reading = DraftReading.Of(Typed(typed), ShopTables.Standard);
        Assert.Contains(reading.At(field), note => note.Kind == NoteKind.Error && note.Text.Contains(said, StringComparison.Ordinal));
        Assert.Null(reading.Takeoff);
    }

    /// <summary>Worked by hand: arc 240 in, 72 in centres, nine posts 5 1/2, sag 4: net 581.532639, cut 581.75.</summary>
    [Theory]
    [InlineData("curve.radius", "240", "width", "72", 581.75)]
    [InlineData("curve.string", "288", "curve.middle", "46", null)]
    [InlineData("curve.radius", "240", "curve.angle", "138", null)]
    public void A_curve_is_asked_for_by_its_radius_its_string_or_its_angle(string first, string one, string second, string other, double? cut)
    {
        var said = new Dictionary<string, string> { [first] = one, [second] = other };
        var form = new DraftQuestions
        {
            Number = "LQ-1",
            Posts = "9",
            Course = DraftLine.OnCurve,
            Curve = new()
            {
                Radius = said.GetValueOrDefault("curve.radius", ""),
                Taut = said.GetValueOrDefault("curve.string", ""),
                Middle = said.GetValueOrDefault("curve.middle", ""),
                Angle = said.GetValueOrDefault("curve.angle", ""),
                Turns = "left",
            },
            Across = "5 1/2",
            PostHeight = "42",
            Spacing = "centres",
            Width = "72",
            Rows = "36",
            Diameter = "1 1/2",
            Sag = "4",
        }.ToForm().OrThrow();
        Assert.Empty(QuestionMistakes.Of(form, ShopTables.Standard));
        var takeoff = DraftReading.Of(form, ShopTables.Standard).Takeoff!;
        Assert.Equal(said.ContainsKey("curve.angle"), takeoff.Job.Lines[0].Curve!.Angle is not null);
        if (cut is not null)
            Assert.Equal(cut, Assert.Single(takeoff.Pieces).Cut.Inches);
    }

    /// <summary>Worked by hand: eight round posts 8, centres 70, manila 1 1/2 preshrunk, sag 5, wrap 1 everywhere: cut 866.5.</summary>
    [Fact]
    public void A_ring_is_asked_for_and_turns_once_round()
    {
        var form = new DraftQuestions
        {
            Number = "LQ-1",
            Posts = "8",
            Course = DraftLine.Closed,
            Shape = "round",
            Across = "8",
            PostHeight = "42",
            Spacing = "centres",
            Width = "70",
            Rows = "36",
            Material = "manila",
            Diameter = "1 1/2",
            Sag = "5",
            Ends = "wrap 1",
            Between = "wrap 1",
            Wetting = new() { Loses = "12.5", Manner = "preshrunk" },
        }.ToForm().OrThrow();
        var takeoff = DraftReading.Of(form, ShopTables.Standard).Takeoff!;
        Assert.Equal(866.5, Assert.Single(takeoff.Pieces).Cut.Inches);
        Assert.DoesNotContain(takeoff.Warnings, warning => warning.Code == "does-not-close");
    }

    [Fact]
    public void A_ring_has_three_posts_at_least() =>
        Assert.Equal("Accepted: a whole number from 3 to 400", new DraftQuestions { Posts = "2", Course = DraftLine.Closed }.ToForm().Problem);

    /// <summary>Worked by hand: opening 48, reach 1 1/2 both, nylon 1, E 4 both, pins 1/2 and 5/8, tucks 4, sag 3: cut 101.25.</summary>
    [Fact]
    public void A_gate_is_asked_for_with_the_eyes_at_its_ends()
    {
        var form = new DraftQuestions
        {
            Number = "LQ-1",
            Posts = "2",
            Across = "5 1/2",
            PostHeight = "42",
            Width = "48",
            Rows = "36",
            Material = "nylon",
            Diameter = "1",
            Sag = "3",
            Ends = "eye",
            Eye = new() { Pin = "1/2", Length = "4", Reach = "1 1/2", Tucks = "4" },
        }.ToForm().OrThrow();
        form = DraftFields.With(form, [new("lines[0].rows[0].finish.eye.pin", "5/8")]);
        Assert.Equal(101.25, Assert.Single(DraftReading.Of(form, ShopTables.Standard).Takeoff!.Pieces).Cut.Inches);
    }

    [Fact]
    public void What_is_asked_of_all_posts_goes_to_each()
    {
        var form = new DraftQuestions { Posts = "3", Shape = "round", Girth = "26", Buried = "30", Holes = "1 5/8", Rows = "36, 18", Boring = "site", Datum = "foot", Bore = "level", Drop = "31", Longest = "600'" }.ToForm().OrThrow();
        Assert.Equal(("site", "foot", "level", "31", "600'"), (form.Boring, form.Datum, form.Bore, form.Lines[0].Drop, form.Longest));
        Assert.All(form.Lines[0].Posts, post => Assert.Equal(("26", "30", "top: 1 5/8, low: 1 5/8"), (post.Girth, post.Buried, post.Holes)));
    }

    /// <summary>Worked by hand: manila 1 1/2, two bays clear 72, 5 1/2 in posts, sag 5, stopped both, loses 12.5 %.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("trimmed")]
    public void Each_manner_of_shrinking_shows_its_figures_before_and_after_one_is_chosen(string manner)
    {
        var form = TwoBays(manner);
        var choices = WettingChoices.Of(DraftReading.Of(form, ShopTables.Standard), form, ShopTables.Standard);
        Assert.Equal([WettingManner.Preshrunk, WettingManner.Trimmed, WettingManner.HungLong], choices.Select(choice => choice.Manner));
        Assert.All(choices, choice => Assert.Equal(156.835479, choice.Net.Inches, 0.001));
        Assert.Equal([157.0, 179.25, 179.25], choices.Select(choice => choice.Cut.Inches));
        Assert.Equal([0, 179.25 * 0.875 - 156.835479, 179.25 * 0.875 - 156.835479], choices.Select(choice => choice.Trim.Inches), new Near(0.001));
        Assert.Equal([null, null, 19.123254], choices.Select(choice => choice.DrySag?.Inches is { } sag ? Math.Round(sag, 6) : (double?)null), new NearOrNone(0.001));
    }

    [Fact]
    public void Without_natural_rope_or_a_share_there_is_nothing_to_choose()
    {
        var form = TwoBays("trimmed");
        var trueToSize = form with { Rope = form.Rope with { Material = "polypropylene" } };
        Assert.Empty(WettingChoices.Of(DraftReading.Of(trueToSize, ShopTables.Standard), trueToSize, ShopTables.Standard));
        Assert.Empty(WettingChoices.Of(DraftReading.Of(Plain, ShopTables.Standard), Plain, ShopTables.Standard));
    }

    [Fact]
    public void A_line_is_put_on_a_curve_closed_to_a_ring_and_measured_again()
    {
        var form = DraftFields.With(Plain, [new("lines[0].sections[0].spacing", "centres"), new("lines[0].sections[0].width", "77 1/2"), new("lines[0].posts[1].turn", "45 left")]);
        var curve = DraftEdits.PutOnCurve(form, 0).Lines[0];
        Assert.Equal((DraftLine.OnCurve, "77 1/2", 0), (curve.Course, curve.Curve.Chord, curve.Sections.Count));
        Assert.All(curve.Posts, post => Assert.Equal("", post.Turn));
        Assert.Equal(5, DraftEdits.AddPost(DraftEdits.PutOnCurve(form, 0), 0, 1).Lines[0].Posts.Count);
        Assert.Empty(DraftEdits.AddPost(DraftEdits.PutOnCurve(form, 0), 0, 1).Lines[0].Sections);

        var ring = DraftEdits.CloseToRing(DraftEdits.PutOnCurve(form, 0), 0);
        Assert.Equal((DraftLine.Closed, 4), (ring.Lines[0].Course, ring.Lines[0].Sections.Count));
        Assert.Equal(3, DraftEdits.RemovePost(DraftEdits.RemovePost(ring, 0, 0), 0, 0).Lines[0].Posts.Count);
        Assert.Equal(("", 3), (DraftEdits.MeasureSections(ring, 0).Lines[0].Course, DraftEdits.MeasureSections(ring, 0).Lines[0].Sections.Count));
    }

    [Fact]
    public void A_pasted_sheet_has_columns_for_all_that_posts_and_sections_have()
    {
        const string text = "mark\tshape\tgirth\theight\tboring\tholes\tclear\tclear at\tdrop\nP1\tround\t26\t42\tsite\ttop: 1 5/8\t72\ttop: 71 1/2\t31\nP2\tround\t26\t42\t\t\t\t\t";
        var line = SpreadsheetPaste.Into(Plain, 0, text).OrThrow().Lines[0];
        Assert.Equal(new DraftPost { Mark = "P1", Shape = "round", Girth = "26", Height = "42", Boring = "site", Holes = "top: 1 5/8" }, line.Posts[0]);
        Assert.Equal(new DraftSection { Width = "72", ClearAt = "top: 71 1/2", Drop = "31" }, Assert.Single(line.Sections));
    }

    [Fact]
    public void A_sheet_pasted_into_a_ring_has_a_section_for_every_post_and_on_a_curve_none()
    {
        const string text = "mark\tacross\theight\tclear\nP1\t8\t42\t72\nP2\t8\t42\t72\nP3\t8\t42\t71";
        Assert.Equal(["72", "72", "71"], SpreadsheetPaste.Into(DraftEdits.CloseToRing(Plain, 0), 0, text).OrThrow().Lines[0].Sections.Select(section => section.Width));
        Assert.Empty(SpreadsheetPaste.Into(DraftEdits.PutOnCurve(Plain, 0), 0, text).OrThrow().Lines[0].Sections);
    }

    [Fact]
    public void A_duplicated_line_takes_the_heights_of_its_posts_along()
    {
        var form = DraftFields.With(Plain, [new("lines[0].rows[0].heights", "A2: 34, A3 33 1/2")]);
        Assert.Equal("B2: 34, B3: 33 1/2", DraftEdits.DuplicateLine(form, 0).Lines[1].Rows[0].Heights);
    }

    private static DraftForm TwoBays(string manner)
    {
        var form = SmallJobs.Posts(3, "LQ-1");
        return form with
        {
            Rope = form.Rope with { Material = "manila" },
            Allowances = new() { Wetting = new() { Loses = "12.5", Manner = manner } },
            Lines = [form.Lines[0] with { Rows = [form.Lines[0].Rows[0] with { Sag = "5" }] }],
        };
    }

    private static DraftForm Typed(string[] namesAndTexts) => DraftFields.With(Plain, namesAndTexts.Chunk(2).Select(pair => KeyValuePair.Create(pair[0], pair[1])));

    private sealed class Near(double within) : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) <= within;

        public int GetHashCode(double obj) => 0;
    }

    private sealed class NearOrNone(double within) : IEqualityComparer<double?>
    {
        public bool Equals(double? x, double? y) => x is null || y is null ? x == y : Math.Abs(x.Value - y.Value) <= within;

        public int GetHashCode(double? obj) => 0;
    }
}
