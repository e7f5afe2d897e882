namespace CutShop.Shop.Tests.Care;

public sealed class CsvLineTests
{
    [Fact]
    public void Cells_are_quoted_as_the_standard_says() =>
        Assert.Equal("plain,\"a, b\",\"say \"\"rope\"\"\",\"two\r\nlines\",", CsvLine.Of(["plain", "a, b", "say \"rope\"", "two\r\nlines", ""]));

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1+2")]
    [InlineData("-")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    public void A_text_that_a_spreadsheet_would_run_is_written_as_text(string text) => Assert.Equal($"'{text}", CsvLine.Of([text]));

    [Theory]
    [InlineData("-1")]
    [InlineData("-12.75")]
    [InlineData("38100000")]
    public void A_number_stays_a_number(string text) => Assert.Equal(text, CsvLine.Of([text]));
}
