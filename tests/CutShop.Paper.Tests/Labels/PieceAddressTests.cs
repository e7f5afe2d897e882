using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests.Labels;

public sealed class PieceAddressTests
{
    [Theory]
    [InlineData("https://shop.example", "HTTPS://SHOP.EXAMPLE/P/333333333332")]
    [InlineData("https://Shop.example/", "HTTPS://SHOP.EXAMPLE/P/333333333332")]
    [InlineData("http://10.0.0.7:8080", "HTTP://10.0.0.7:8080/P/333333333332")]
    [InlineData("http://[fe80::1]:8080", "HTTP://[FE80::1]:8080/P/333333333332")]
    [InlineData("https://shop.example/CutShop", "HTTPS://SHOP.EXAMPLE/CutShop/P/333333333332")]
    public void Scheme_host_and_code_are_capitals(string baseAddress, string address) =>
        Assert.Equal(address, PieceAddress.Of(baseAddress, SampleJobs.Code).OrThrow());

    [Theory]
    [InlineData("")]
    [InlineData("shop.example")]
    [InlineData("ftp://shop.example")]
    [InlineData("https://shop.example/?a=1")]
    [InlineData("https://me@shop.example/")]
    public void Anything_but_a_plain_web_address_is_told_what_is_accepted(string baseAddress) =>
        Assert.Contains(PieceAddress.Accepted.ToString(), PieceAddress.Of(baseAddress, SampleJobs.Code).Problem, StringComparison.Ordinal);

    // "HTTPS://" and "/P/" and the code are 23 characters, so a host of 97 makes 120.
    [Theory]
    [InlineData(97, true)]
    [InlineData(98, false)]
    public void An_address_has_a_longest_length(int host, bool fits)
    {
        var labels = string.Join('.', Enumerable.Repeat("abcdefghi", 10))[..(host - 1)].TrimEnd('.');
        var name = labels + new string('x', host - labels.Length);
        var address = PieceAddress.Of($"https://{name}", SampleJobs.Code);
        Assert.Equal(fits, address.IsGood);
        if (!fits)
            Assert.Equal("the piece's address has 121 characters, a label takes 120; use a shorter base address", address.Problem);
    }
}
