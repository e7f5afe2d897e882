namespace CutShop.Takeoff.Tests.Result;

public sealed class ScannedCodeTests
{
    private const string Good = "333333333332";

    [Theory]
    [InlineData("3333-3333-3332")]
    [InlineData("HTTPS://SHOP.EXAMPLE/P/333333333332")]
    [InlineData("http://127.0.0.1:5000/p/3333-3333-3332/")]
    [InlineData(" https://another.example/rope/p/333333333332/line?reported=1#mark ")]
    public void A_code_and_any_shops_address_of_it_are_read_alike(string text)
    {
        Assert.Equal(Good, ScannedCode.Parse(text).OrThrow().Plain);
        Assert.Null(ScannedCode.SlipIn(text));
    }

    [Theory]
    [InlineData("3333-3333-3333", "the last character does not match")]
    [InlineData("https://shop.example/P/333333333333", "the last character does not match")]
    [InlineData("https://shop.example/p/33333", "a piece code has 12 characters, this has 5")]
    [InlineData("https://shop.example/p/33333333333O", "no piece code has 'O' in it")]
    public void A_slip_in_what_is_meant_as_a_code_is_named(string text, string slip) =>
        Assert.Contains(slip, ScannedCode.SlipIn(text)!.ToString(), StringComparison.Ordinal);

    [Theory]
    [InlineData("LQ-1042 A-top-1")]
    [InlineData("K0003")]
    [InlineData("https://shop.example/jobs/LQ-1042")]
    [InlineData("/")]
    [InlineData("")]
    public void What_is_meant_as_something_else_has_no_slip(string text)
    {
        Assert.Null(ScannedCode.SlipIn(text));
        Assert.False(ScannedCode.Parse(text).IsGood);
    }
}
