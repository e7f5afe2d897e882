namespace CutShop.Takeoff.Tests.Lengths;

public class LengthTextTests
{
    /// <summary>1 in is 25,400,000 nm, so each figure is a multiplication by hand.</summary>
    [Theory]
    [InlineData("0\"", 0)]
    [InlineData("1/64\"", 396_875)]
    [InlineData("1/2\"", 12_700_000)]
    [InlineData("5 1/2\"", 139_700_000)]
    [InlineData("11 63/64\"", 304_403_125)]
    [InlineData("1' 0\"", 304_800_000)]
    [InlineData("1' 0 1/64\"", 305_196_875)]
    [InlineData("6' 0\"", 1_828_800_000)]
    [InlineData("6' 2 3/8\"", 1_889_125_000)]
    [InlineData("9999' 11 63/64\"", 3_047_999_603_125)]
    [InlineData("-8 1/4\"", -209_550_000)]
    [InlineData("-6' 2 3/8\"", -1_889_125_000)]
    [InlineData("0.000001 mm", 1)]
    [InlineData("-0.000001 mm", -1)]
    [InlineData("0.1 mm", 100_000)]
    [InlineData("1000.000001 mm", 1_000_000_001)]
    public void What_is_printed_exactly_reads_back_as_itself(string text, long nanometres)
    {
        Assert.Equal(nanometres, LengthText.Parse(text, allowNegative: true).OrThrow().Nanometres);
        Assert.Equal(text, LengthText.Exact(Length.FromNanometres(nanometres)));
    }

    [Theory]
    [InlineData("72 in", 1_828_800_000)]
    [InlineData("72in", 1_828_800_000)]
    [InlineData("72 IN.", 1_828_800_000)]
    [InlineData("72 inches", 1_828_800_000)]
    [InlineData("1 inch", 25_400_000)]
    [InlineData("72''", 1_828_800_000)]
    [InlineData("6'", 1_828_800_000)]
    [InlineData("6 ft 0 in", 1_828_800_000)]
    [InlineData("6 feet", 1_828_800_000)]
    [InlineData("1 foot 1", 330_200_000)]
    [InlineData("6.0 ft", 1_828_800_000)]
    [InlineData("6 1/2 ft", 1_981_200_000)]
    [InlineData("6'2\"", 1_879_600_000)]
    [InlineData("6'-2\"", 1_879_600_000)]
    [InlineData("6' 2 3/8", 1_889_125_000)]
    [InlineData("  6 ' 2 3/8 \"  ", 1_889_125_000)]
    [InlineData("6′ 2⅜″", 1_889_125_000)]
    [InlineData("6’ 2 3⁄8”", 1_889_125_000)]
    [InlineData("5½\"", 139_700_000)]
    [InlineData("5\u00A01/2\tin", 139_700_000)]
    [InlineData("5 32/64 in", 139_700_000)]
    [InlineData("0/2 in", 0)]
    [InlineData("1.5 in", 38_100_000)]
    [InlineData(".5 in", 12_700_000)]
    [InlineData("1.00001 in", 25_400_254)]
    [InlineData("1828.8 mm", 1_828_800_000)]
    [InlineData("183 cm", 1_830_000_000)]
    [InlineData("1.83 m", 1_830_000_000)]
    [InlineData("000000000000000001 mm", 1_000_000)]
    [InlineData("66-1/2\"", 1_689_100_000)]
    [InlineData("5' 6-1/2\"", 1_689_100_000)]
    [InlineData("5'-6-1/2\"", 1_689_100_000)]
    [InlineData("5 ft 6-1/2 in", 1_689_100_000)]
    [InlineData("5'–6–1/2\"", 1_689_100_000)]
    [InlineData("1,70 m", 1_700_000_000)]
    [InlineData("0,125 m", 125_000_000)]
    [InlineData("1828,8 mm", 1_828_800_000)]
    [InlineData("1234,567 mm", 1_234_567_000)]
    [InlineData("1,5 in", 38_100_000)]
    [InlineData("1m70", 1_700_000_000)]
    [InlineData("1 m 70", 1_700_000_000)]
    [InlineData("1m05", 1_050_000_000)]
    [InlineData("1m705", 1_705_000_000)]
    [InlineData("1 m 70 cm", 1_700_000_000)]
    [InlineData("1 m 7 cm", 1_070_000_000)]
    [InlineData("1 m 705 mm", 1_705_000_000)]
    public void A_length_may_be_written_in_many_ways(string text, long nanometres) =>
        Assert.Equal(nanometres, LengthText.Parse(text).OrThrow().Nanometres);

    /// <summary>39 ft 10 1/4 in is 478.25 in, 5 ft 6 in is 66 in; times 25,400,000 nm by hand.</summary>
    [Theory]
    [InlineData("39 10 1/4", 12_147_550_000)]
    [InlineData("39-10-1/4", 12_147_550_000)]
    [InlineData("39 10-1/4", 12_147_550_000)]
    [InlineData("39 10¼", 12_147_550_000)]
    [InlineData("39 10.25", 12_147_550_000)]
    [InlineData("5 6", 1_676_400_000)]
    [InlineData("5-6", 1_676_400_000)]
    [InlineData("5 0 1/2", 1_536_700_000)]
    [InlineData("-5 6", -1_676_400_000)]
    [InlineData("66 1/2", 1_689_100_000)]
    [InlineData("66-1/2", 1_689_100_000)]
    [InlineData("66", 1_676_400_000)]
    [InlineData("1/2", 12_700_000)]
    [InlineData("1,5", 38_100_000)]
    [InlineData("1.7 m", 1_700_000_000)]
    public void Where_bare_means_inches_two_whole_numbers_are_feet_and_inches(string text, long nanometres) =>
        Assert.Equal(nanometres, LengthText.Parse(text, allowNegative: true, bareUnit: Length.Inch).OrThrow().Nanometres);

    [Theory]
    [InlineData("5 12", "after feet the inches must be under 12")]
    [InlineData("66 1 1/3", "a fraction of an inch must be a proper fraction")]
    [InlineData("1 2 3", "two numbers need their units")]
    [InlineData("1-2-3-4", "two numbers need their units")]
    [InlineData("5 6 -1/2", "two numbers need their units")]
    [InlineData("1,700", "'1,700' can be read as a decimal or as thousands")]
    [InlineData("5 1,700", "'1,700' can be read as a decimal or as thousands")]
    public void What_has_no_one_meaning_is_refused_also_where_bare_means_inches(string text, string problem) =>
        Assert.StartsWith(problem, LengthText.Parse(text, bareUnit: Length.Inch).Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData("5 6", "two numbers need their units")]
    [InlineData("5 1/2", "fractions go with inches")]
    [InlineData("1,700", "'1,700' can be read as a decimal or as thousands")]
    public void Where_bare_is_metric_nothing_is_feet_and_inches(string text, string problem) =>
        Assert.StartsWith(problem, LengthText.Parse(text, bareUnit: Length.Metre).Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData("9223372036854.775807 mm", long.MaxValue)]
    [InlineData("-9223372036854.775807 mm", -long.MaxValue)]
    public void The_longest_length_reads_back(string text, long nanometres) =>
        Assert.Equal(nanometres, LengthText.Parse(text, allowNegative: true).OrThrow().Nanometres);

    [Theory]
    [InlineData(64, "11 63/64 in", "11 63/64 in")]
    [InlineData(32, "11 31/32 in", "11 31/32 in")]
    [InlineData(32, "11 63/64 in", "≈ 12 in")]
    [InlineData(16, "11 15/16 in", "11 15/16 in")]
    [InlineData(16, "11 31/32 in", "≈ 12 in")]
    [InlineData(16, "11 61/64 in", "≈ 11 15/16 in")]
    [InlineData(8, "11 7/8 in", "11 7/8 in")]
    [InlineData(8, "11 15/16 in", "≈ 12 in")]
    [InlineData(4, "11 3/4 in", "11 3/4 in")]
    [InlineData(4, "11 7/8 in", "≈ 12 in")]
    [InlineData(2, "11 1/2 in", "11 1/2 in")]
    [InlineData(2, "11 3/4 in", "≈ 12 in")]
    [InlineData(1, "11 1/2 in", "≈ 12 in")]
    [InlineData(1, "11 31/64 in", "≈ 11 in")]
    [InlineData(64, "304.799999 mm", "≈ 12 in")]
    public void Inches_are_rounded_to_the_tape_and_never_silently(int denominator, string text, string printed) =>
        Assert.Equal(printed, LengthText.Inches(LengthText.Parse(text).OrThrow(), denominator));

    [Theory]
    [InlineData(64, "5' 11 63/64\"", "5' 11 63/64\"")]
    [InlineData(32, "5' 11 63/64\"", "≈ 6' 0\"")]
    [InlineData(16, "5' 11 31/32\"", "≈ 6' 0\"")]
    [InlineData(8, "5' 11 15/16\"", "≈ 6' 0\"")]
    [InlineData(4, "5' 11 7/8\"", "≈ 6' 0\"")]
    [InlineData(2, "5' 11 3/4\"", "≈ 6' 0\"")]
    [InlineData(1, "5' 11 1/2\"", "≈ 6' 0\"")]
    [InlineData(64, "1828.799999 mm", "≈ 6' 0\"")]
    [InlineData(16, "11 31/32\"", "≈ 1' 0\"")]
    [InlineData(16, "0.000001 mm", "≈ 0\"")]
    [InlineData(2, "-5' 11 3/4\"", "≈ -6' 0\"")]
    public void A_fraction_that_carries_carries_into_inches_and_feet(int denominator, string text, string printed) =>
        Assert.Equal(printed, LengthText.FeetInches(LengthText.Parse(text, allowNegative: true).OrThrow(), denominator));

    [Theory]
    [InlineData("5 1/2 in", 1, "139.7 mm")]
    [InlineData("6' 2 3/8\"", 1, "≈ 1889.1 mm")]
    [InlineData("6' 2 3/8\"", 3, "1889.125 mm")]
    [InlineData("1/64 in", 1, "≈ 0.4 mm")]
    [InlineData("0.05 mm", 1, "≈ 0.1 mm")]
    [InlineData("999.95 mm", 1, "≈ 1000 mm")]
    [InlineData("10 m", 1, "10000 mm")]
    public void Millimetres_are_rounded_and_never_silently(string text, int decimals, string printed) =>
        Assert.Equal(printed, LengthText.Millimetres(LengthText.Parse(text).OrThrow(), decimals));

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(128)]
    [InlineData(-64)]
    public void A_tape_is_marked_in_halves(int denominator) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LengthText.Inches(Length.Inch, denominator));
}
