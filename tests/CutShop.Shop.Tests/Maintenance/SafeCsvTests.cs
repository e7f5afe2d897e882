using System.Globalization;
using CsvHelper;

namespace CutShop.Shop.Tests.Maintenance;

public sealed class SafeCsvTests
{
    [Fact]
    public void Cells_are_quoted_as_the_standard_says() =>
        Assert.Equal("plain,\"a, b\",\"say \"\"rope\"\"\",\"two\r\nlines\",x\r\n", Written(csv => csv.WriteRecord(["plain", "a, b", "say \"rope\"", "two\r\nlines", "x"])));

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1+2")]
    [InlineData("-")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("\n=1")]
    public void A_text_that_a_spreadsheet_would_run_is_written_as_text(string text) =>
        Assert.Equal($"\"'{text}\"\r\n", Written(csv => csv.WriteRecord([text])));

    [Theory]
    [InlineData("-1")]
    [InlineData("-12.75")]
    [InlineData("38100000")]
    public void A_number_stays_a_number(string number) => Assert.Equal($"{number}\r\n", Written(csv =>
    {
        csv.WriteField(decimal.Parse(number, CultureInfo.InvariantCulture), default, CultureInfo.InvariantCulture);
        csv.EndRecord();
    }));

    private static string Written(Action<CsvWriter> write)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, SafeCsv.Options, leaveOpen: true))
            write(csv);
        return text.ToString();
    }
}
