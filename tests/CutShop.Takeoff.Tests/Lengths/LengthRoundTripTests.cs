using System.Globalization;
using CsCheck;

namespace CutShop.Takeoff.Tests.Lengths;

public class LengthRoundTripTests
{
    [Fact]
    public void Any_length_printed_exactly_reads_back_as_itself() =>
        Gen.Long[-long.MaxValue, long.MaxValue].Sample(ReadsBack, iter: 20_000);

    [Fact]
    public void Any_length_of_a_site_printed_exactly_reads_back_as_itself() =>
        Gen.Long[-2_000_000_000_000, 2_000_000_000_000].Sample(ReadsBack, iter: 20_000);

    [Fact]
    public void Any_64th_of_an_inch_reads_back_as_itself() =>
        Gen.Int[-10_000_000, 10_000_000].Sample(n => ReadsBack(n * 396_875L), iter: 20_000);

    [Fact]
    public void A_rounded_length_is_marked_and_an_exact_one_is_not() =>
        Gen.Select(Gen.Long[0, 2_000_000_000_000], Gen.OneOf(1, 2, 4, 8, 16, 32, 64)).Sample((nanometres, denominator) =>
        {
            var length = Length.FromNanometres(nanometres);
            var printed = LengthText.FeetInches(length, denominator);
            var read = LengthText.Parse(printed.TrimStart('≈')).OrThrow();
            Assert.Equal(read == length, !printed.StartsWith('≈'));
            Assert.True((read - length).Abs().Nanometres <= 12_700_000 / denominator);
        });

    [Theory]
    [InlineData("ar-SA")]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    [InlineData("sv-SE")]
    [InlineData("")]
    public void Reading_and_printing_are_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(38_100_000, LengthText.Parse("1.5 IN").OrThrow().Nanometres);
            Assert.Equal(25_400_000, LengthText.Parse("1 INCH").OrThrow().Nanometres);
            Assert.Equal(-1_889_125_000, LengthText.Parse("-6' 2 3/8\"", allowNegative: true).OrThrow().Nanometres);
            Assert.Equal("-1234' 5 3/8\"", LengthText.Exact(Length.FromSixtyFourths(-((((1234 * 12) + 5) * 64) + 24))));
            Assert.Equal("-1234567.891 mm", LengthText.Millimetres(Length.FromNanometres(-1_234_567_891_000), 3));
            Assert.Equal("12.5%", Share.Parse("12.5%").OrThrow().ToString());
            Assert.Equal("wrap 2.5 inside", Treatment.Wrap(5, WrapSide.Inside).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static void ReadsBack(long nanometres)
    {
        var text = LengthText.Exact(Length.FromNanometres(nanometres));
        Assert.Equal(nanometres, LengthText.Parse(text, allowNegative: true).OrThrow().Nanometres);
    }
}
