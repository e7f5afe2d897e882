namespace CutShop.Takeoff.Tests.Rules;

/// <summary>What is common practice (no source), by name of the trade's rule.</summary>
public class TradeRowTests
{
    [Theory]
    [InlineData(FixingPurpose.End)]
    [InlineData(FixingPurpose.CornerFirst)]
    [InlineData(FixingPurpose.Line)]
    public void A_4_in_post_with_rope_to_an_inch_and_a_half_takes_a_3_in_deck_screw(FixingPurpose purpose)
    {
        var screw = Choose(purpose, "3 1/2 in", "1 1/2 in");
        Assert.Equal((ScrewKind.DeckScrew, Read("3 in")), (screw!.Kind, screw.Length));
    }

    [Theory]
    [InlineData(FixingPurpose.End)]
    [InlineData(FixingPurpose.CornerFirst)]
    [InlineData(FixingPurpose.Line)]
    public void Larger_rope_in_a_6_in_post_takes_a_quarter_lag_of_about_4_and_a_half(FixingPurpose purpose)
    {
        var screw = Choose(purpose, "5 1/2 in", "2 in");
        Assert.Equal((ScrewKind.LagScrew, "1/4 in", Read("4 1/2 in")), (screw!.Kind, screw.Size, screw.Length));
    }

    [Theory]
    [InlineData("1 in", "2 in")]
    [InlineData("1 1/4 in", "2 1/2 in")]
    [InlineData("1 1/2 in", "3 in")]
    [InlineData("1 3/4 in", "3 1/2 in")]
    [InlineData("2 in", "4 in")]
    [InlineData("2 1/2 in", "5 in")]
    [InlineData("3 in", "6 in")]
    public void A_wrap_takes_a_deck_screw_twice_as_long_as_the_rope_is_thick(string rope, string length)
    {
        var screw = Choose(FixingPurpose.Wrap, "9 1/2 in", rope);
        Assert.Equal((ScrewKind.DeckScrew, Read(length)), (screw!.Kind, screw.Length));
    }

    /// <summary>The second goes through the first rope, so it is an inch or two longer.</summary>
    [Theory]
    [InlineData("5 1/2 in", "1 1/2 in", "4 in", "5 in")]
    [InlineData("5 1/2 in", "2 in", "4 1/2 in", "5 in")]
    [InlineData("3 1/2 in", "1 1/2 in", "3 in", "3 1/2 in")]
    [InlineData("9 1/2 in", "2 in", "6 in", "8 in")]
    public void The_second_rope_of_a_corner_takes_the_longer_screw(string across, string rope, string first, string second) =>
        Assert.Equal((Read(first), Read(second)), (Choose(FixingPurpose.CornerFirst, across, rope)!.Length, Choose(FixingPurpose.CornerSecond, across, rope)!.Length));

    /// <summary>With 10 and 11 in screws only, either rope would take the 10 in one, so the second takes the next.</summary>
    [Fact]
    public void Where_one_screw_would_do_for_both_ropes_of_a_corner_the_second_takes_the_next_longer()
    {
        var like = ShopTables.Standard.Screws.Screws.Last(screw => screw.Kind == ScrewKind.LagScrew);
        var catalogue = new ScrewCatalogue([like with { Length = Read("10 in") }, like with { Length = Read("11 in") }]);
        var (first, second) = catalogue.ChooseForCorner(Read("14 in"), Read("7 in"), Read("2 1/2 in"), Read("2 1/2 in"));
        Assert.Equal((Read("10 in"), Read("11 in")), (first!.Length, second!.Length));
    }

    /// <summary>14 in post, 2 1/2 in rope: the second needs 9 1/2 in at least, the first 8 1/4 in, so a 9 in screw holds the first.</summary>
    [Fact]
    public void Where_the_second_has_no_longer_screw_the_first_takes_a_shorter_one()
    {
        var like = ShopTables.Standard.Screws.Screws.Last(screw => screw.Kind == ScrewKind.LagScrew);
        var catalogue = new ScrewCatalogue([like with { Length = Read("8 1/2 in") }, like with { Length = Read("10 in") }]);
        var (first, second) = catalogue.ChooseForCorner(Read("14 in"), Read("7 in"), Read("2 1/2 in"), Read("2 1/2 in"));
        Assert.Equal((Read("8 1/2 in"), Read("10 in")), (first!.Length, second!.Length));
    }

    private static Screw? Choose(FixingPurpose purpose, string across, string diameter)
    {
        var rope = new Rope(RopeMaterial.Polypropylene, Read(diameter));
        return ScrewChoice.For(purpose, Read(across), skewDegrees: 0, slope: 0, rope, RopeBit.DiameterFor(rope), ShopTables.Standard).Screw;
    }

    private static Length Read(string text) => LengthText.Parse(text).OrThrow();
}
