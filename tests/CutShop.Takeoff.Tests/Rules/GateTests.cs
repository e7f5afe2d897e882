namespace CutShop.Takeoff.Tests.Rules;

/// <summary>Gates: how their eyes are spliced and what they hang by, worked by hand.</summary>
public sealed class GateTests
{
    private const string Nylon = """{ "material": "nylon", "diameter": "1 in" }""";

    /// <summary>Four tucks in 3/4 in rope take about 16 in: Merry, The Splicing Handbook, p. 28.</summary>
    [Fact]
    public void Four_tucks_in_three_quarter_inch_rope_unlay_sixteen_inches() =>
        Assert.Equal(Length.FromInches(16), EyeSplice.Of(Pin(tucks: 4), Inches("3/4"), isNatural: true).Unlay);

    /// <summary>29 CFR 1910.184(h), WAC 296-24-29429: three full tucks in manila, four in synthetic rope; tails 6 d under 1 in, 6 in from there on.</summary>
    [Theory]
    [InlineData("3/4", true, 3, "4 1/2")]
    [InlineData("3/4", false, 4, "4 1/2")]
    [InlineData("1", true, 3, "6")]
    [InlineData("1 1/2", false, 4, "6")]
    public void A_splice_has_the_tucks_and_tails_of_the_rule(string rope, bool isNatural, int tucks, string tail)
    {
        var splice = EyeSplice.Of(Pin(), Inches(rope), isNatural);
        Assert.Equal((tucks, Inches(tail), 2), (splice.Tucks, splice.Tail, splice.Taper));
    }

    /// <summary>
    /// 1 in nylon, 1/2 in pin, E 4, four tucks: unlaid 4 x 5 1/3 = 21 1/3 in. Out and back 4 + 4 and half round the pin, 1.5 x pi / 2 = 2.356194,
    /// lie between the two marks, so the throat is at 31.689528 in.
    /// </summary>
    [Fact]
    public void The_throat_lies_where_out_half_round_and_back_end()
    {
        var splice = EyeSplice.Of(Pin(), Length.Inch, isNatural: false);
        Assert.Equal(64.0 / 3, splice.Unlay.Inches, 1e-6);
        Assert.Equal(31.689528, splice.Throat.Inches, 1e-6);
    }

    /// <summary>By a 2 in groove the rope lies 3 / 2 x pi = 4.712389 in round the thimble, in place of the pin's 2.356194.</summary>
    [Fact]
    public void A_thimble_takes_the_pins_place()
    {
        var splice = EyeSplice.Of(Pin() with { Thimble = Length.FromInches(2) }, Length.Inch, isNatural: false);
        Assert.Equal((64.0 / 3) + 8 + 4.712389, splice.Throat.Inches, 1e-6);
    }

    /// <summary>On the finished gate the throats stand E from their pins, and all rope between the ends is accounted for.</summary>
    [Fact]
    public void Both_splices_and_what_is_between_them_are_the_whole_piece()
    {
        var piece = Assert.Single(Gate().Pieces);
        var throats = piece.AtPosts.Select(at => EyeSplice.At(piece, at)!.Throat).Aggregate((a, b) => a + b);
        var between = piece.Sections[0].Arc - Inches("4") - Inches("4");
        Assert.InRange((throats + between - piece.Net).Abs().Nanometres, 0, 10);
    }

    [Fact]
    public void A_job_counts_hooks_by_pin_and_reach_thimbles_by_groove_and_holders_by_rope()
    {
        var takeoff = Sample.Takeoff(Sample.Line(
            """
            { "mark": "top", "height": "30 in", "sag": "3 in", "between": "beside",
              "start": { "eye": { "pin": "1/2 in", "length": "6 in", "reach": "1 1/2 in" } },
              "finish": { "eye": { "pin": "1/2 in", "length": "6 in", "reach": "1 1/2 in", "thimble": "1 in" } } },
            { "mark": "low", "height": "15 in", "sag": "3 in", "between": "beside", "start": "wrap 1",
              "finish": { "eye": { "pin": "5/8 in", "length": "6 in", "reach": "2 in" } } }
            """,
            Nylon));
        Assert.Equal(
            [
                (new Hardware(HardwareKind.Hook, Inches("1/2"), Inches("1 1/2")), 2),
                (new Hardware(HardwareKind.Hook, Inches("5/8"), Inches("2")), 1),
                (new Hardware(HardwareKind.Thimble, Inches("1"), Length.Zero), 1),
                (new Hardware(HardwareKind.Holder, Inches("1"), Length.Zero), 2),
            ],
            Hardware.Of(takeoff.Pieces));
        // The wrap's two screws alone are screws.
        Assert.Equal(2, JobFrame.Of(takeoff).Totals.Screws);
    }

    [Theory]
    [InlineData("bored", true)]
    [InlineData("beside", false)]
    public void Of_two_eyes_one_is_spliced_on_site_where_the_rope_goes_through_bores(string between, bool isOnSite)
    {
        var eye = """{ "eye": { "pin": "1/2 in", "length": "6 in", "reach": "1 1/2 in" } }""";
        var takeoff = Sample.Takeoff(Sample.Line(
            $$"""{ "mark": "top", "height": "30 in", "sag": "3 in", "between": "{{between}}", "start": {{eye}}, "finish": {{eye}} }""", Nylon));
        Assert.Equal(isOnSite, EyeSplice.OneIsMadeOnSite(Assert.Single(takeoff.Pieces)));
        Assert.Equal(isOnSite, takeoff.Warnings.Any(warning => warning.Code == "splice-on-site"));
    }

    private static JobTakeoff Gate() => Sample.Takeoff(Sample.Line(
        """
        { "mark": "gate", "height": "30 in", "sag": "3 in",
          "start": { "eye": { "pin": "1/2 in", "length": "4 in", "reach": "1 1/2 in" } },
          "finish": { "eye": { "pin": "5/8 in", "length": "4 in", "reach": "1 1/2 in" } } }
        """,
        Nylon,
        posts: 2));

    private static Eye Pin(int? tucks = null) => new(Inches("1/2"), Length.FromInches(4), Inches("1 1/2"), tucks, Thimble: null);

    private static Length Inches(string text) => LengthText.Parse(text + " in").OrThrow();
}
