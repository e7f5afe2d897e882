namespace CutShop.Takeoff.Tests.Lengths;

public class ShareTests
{
    [Theory]
    [InlineData("0%", 0)]
    [InlineData("12.5%", 125_000)]
    [InlineData("12.5 %", 125_000)]
    [InlineData(" 15% ", 150_000)]
    [InlineData("0.0001%", 1)]
    [InlineData("100%", 1_000_000)]
    public void A_share_is_read_exactly(string text, int millionths) =>
        Assert.Equal(millionths, Share.Parse(text).OrThrow().Millionths);

    [Theory]
    [InlineData("")]
    [InlineData("%")]
    [InlineData("12.5")]
    [InlineData("-1%")]
    [InlineData("100.0001%")]
    [InlineData("0.00001%")]
    [InlineData("12,5%")]
    [InlineData("1e1%")]
    [InlineData("12.5%%")]
    [InlineData("0.12345678901234567890%")]
    public void Anything_else_says_what_is_accepted(string text) =>
        Assert.Equal("accepted: a share from \"0%\" to \"100%\", with at most four decimals, such as \"12.5%\"", Share.Parse(text).Problem);

    /// <summary>77 1/2 in and 15 % more are 89 1/8 in: 77.5 x 1.15 = 89.125.</summary>
    [Theory]
    [InlineData("77 1/2 in", "15%", "89 1/8 in")]
    [InlineData("100 in", "12.5%", "112 1/2 in")]
    [InlineData("0.000001 mm", "10%", "0.000002 mm")]
    [InlineData("72 in", "0%", "72 in")]
    public void A_length_grows_by_a_share_and_is_never_rounded_down(string length, string share, string grown) =>
        Assert.Equal(LengthText.Parse(grown).OrThrow(), Share.Parse(share).OrThrow().Grow(LengthText.Parse(length).OrThrow()));

    [Theory]
    [InlineData(-1)]
    [InlineData(1_000_001)]
    public void A_share_is_none_to_all(int millionths) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Share.FromMillionths(millionths));

    // By hand: 15 / 120, and 4.25 / 30 = 0.1416667.
    [Fact]
    public void A_share_that_was_lost_is_what_is_missing_of_what_there_was()
    {
        Assert.Equal(Share.FromMillionths(125_000), Share.Lost(Length.FromInches(120), Length.FromInches(105)));
        var lost = Share.Lost(Length.FromInches(360), Length.FromInches(309));
        Assert.Equal((141_667, "14.2%"), (lost.Millionths, lost.ToTenths().ToString()));
        Assert.Equal(Share.None, Share.Lost(Length.Foot, Length.Foot));
        Assert.Equal(Length.Foot * 525, Share.FromMillionths(125_000).After(Length.Foot * 600));
        Assert.Throws<ArgumentOutOfRangeException>(() => Share.Lost(Length.Foot, Length.Foot * 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Share.Lost(Length.Zero, Length.Zero));
    }
}
