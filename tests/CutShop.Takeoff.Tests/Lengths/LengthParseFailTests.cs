namespace CutShop.Takeoff.Tests.Lengths;

public class LengthParseFailTests
{
    private const string Accepted = "accepted: a length with its unit, such as \"72 in\", \"5 1/2 in\", \"6 ft 0 in\", \"6' 2 3/8\" or \"1828.8 mm\"";
    private const string Fraction = "a fraction of an inch must be a proper fraction in halves, quarters, eighths, 16ths, 32nds or 64ths";

    private const string Metres = "after whole metres go centimetres or millimetres: two or three digits, such as 1m70 or 1m705";

    [Theory]
    [InlineData("", "a number is missing")]
    [InlineData("   ", "a number is missing")]
    [InlineData("in", "a number is missing")]
    [InlineData("+5 in", "a number is missing")]
    [InlineData("٥ in", "a number is missing")]
    [InlineData("NaN in", "a number is missing")]
    [InlineData("72", "the unit is missing")]
    [InlineData("5 1/2", "the unit is missing")]
    [InlineData("5 yards", "'yards' is not a unit of length")]
    [InlineData("1e3 in", "'e' is not a unit of length")]
    [InlineData("5. in", "'.' is not a unit of length")]
    [InlineData("1,828.8 mm", "'1,828' can be read as a decimal or as thousands; write a point for decimals and nothing for thousands")]
    [InlineData("1,700 m", "'1,700' can be read as a decimal or as thousands; write a point for decimals and nothing for thousands")]
    [InlineData("1,700", "'1,700' can be read as a decimal or as thousands; write a point for decimals and nothing for thousands")]
    [InlineData("17,000,000 mm", "'17,000' can be read as a decimal or as thousands; write a point for decimals and nothing for thousands")]
    [InlineData("1.234,5 mm", "',5 mm' is not understood")]
    [InlineData("1, 7 m", "', 7 m' is not understood")]
    [InlineData("5 6", "two numbers need their units, such as 5 ft 6 in")]
    [InlineData("5-6", "two numbers need their units, such as 5 ft 6 in")]
    [InlineData("5 6 in", "two numbers need their units, such as 5 ft 6 in")]
    [InlineData("39 10 1/4 in", "two numbers need their units, such as 5 ft 6 in")]
    [InlineData("66 - 1/2 in", "'- 1/2 in' is not understood")]
    [InlineData("66 -1/2 in", "'-1/2 in' is not understood")]
    [InlineData("66--1/2 in", "'--1/2 in' is not understood")]
    [InlineData("1m7", Metres)]
    [InlineData("1m7050", Metres)]
    [InlineData("1 m 70 in", Metres)]
    [InlineData("1 m 100 cm", Metres)]
    [InlineData("1 m 7.5 cm", Metres)]
    [InlineData("1.5 m 20", "'20' is not understood")]
    [InlineData("1 m 70 cm 5", "'5' is not understood")]
    [InlineData("5 in 3", "'3' is not understood")]
    [InlineData("5 in 3 in", "'3 in' is not understood")]
    [InlineData("5 in\nrm", "'rm' is not understood")]
    [InlineData("5 in x\ny", "'x\\u000ay' is not understood")]
    [InlineData("72 in ft", "'ft' is not understood")]
    [InlineData("5 1/3 in", Fraction)]
    [InlineData("5 3/2 in", Fraction)]
    [InlineData("64/64 in", Fraction)]
    [InlineData("5 1/128 in", Fraction)]
    [InlineData("5 1/0 in", Fraction)]
    [InlineData("5.5 1/2 in", "'1/2 in' is not understood")]
    [InlineData("1.5/2 in", Fraction)]
    [InlineData("5 1/2 mm", "fractions go with inches; write metric lengths with decimals")]
    [InlineData("1/2 m", "fractions go with inches; write metric lengths with decimals")]
    [InlineData("6.5' 2\"", "feet must be whole when inches follow")]
    [InlineData("6 1/2 ft 2 in", "feet must be whole when inches follow")]
    [InlineData("6' 12\"", "after feet the inches must be under 12")]
    [InlineData("6' 11.99999\" x", "'x' is not understood")]
    [InlineData("6' 2'", "only inches go after feet")]
    [InlineData("6 ft 50 mm", "only inches go after feet")]
    [InlineData("6' -", "a number is missing")]
    [InlineData("-5 in", "a negative length is not accepted here")]
    [InlineData("−5 in", "a negative length is not accepted here")]
    [InlineData("-0 in", "a negative length is not accepted here")]
    [InlineData("00000000000000000001 mm", "too many digits")]
    [InlineData("0.0000000000000000001 in", "too many digits")]
    public void A_text_that_is_no_length_says_why_and_what_is_accepted(string text, string problem) =>
        Assert.Equal($"{problem}; {Accepted}", LengthText.Parse(text).Problem);

    [Theory]
    [InlineData("0.0000001 mm")]
    [InlineData("1.000001 in")]
    [InlineData("0.000000000000000001 m")]
    public void Nothing_finer_than_a_nanometre_is_rounded(string text) =>
        Assert.Equal("finer than a nanometre; write fewer decimals, or a fraction of an inch to 1/64", LengthText.Parse(text).Problem);

    [Theory]
    [InlineData("9223372036854.775808 mm")]
    [InlineData("-9223372036854.775808 mm")]
    [InlineData("9999999999999999999 m")]
    public void One_nanometre_beyond_the_longest_is_refused(string text) =>
        Assert.Equal("longer than any length this program can hold", LengthText.Parse(text, allowNegative: true).Problem);

    [Fact]
    public void The_text_is_at_most_64_characters()
    {
        Assert.Equal(1_000_000, LengthText.Parse(new string(' ', 60) + "1 mm").OrThrow().Nanometres);
        Assert.Equal($"longer than 64 characters; {Accepted}", LengthText.Parse(new string(' ', 61) + "1 mm").Problem);
    }

    [Fact]
    public void The_throwing_form_says_the_same()
    {
        var e = Assert.Throws<FormatException>(() => LengthText.Parse("72").OrThrow());
        Assert.Equal($"the unit is missing; {Accepted}", e.Message);
    }
}
