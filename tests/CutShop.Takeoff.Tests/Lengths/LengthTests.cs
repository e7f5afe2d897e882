using CsCheck;

namespace CutShop.Takeoff.Tests.Lengths;

public class LengthTests
{
    /// <summary>Far enough inside the range that sums of a few cannot leave it.</summary>
    private static readonly Gen<Length> Lengths = Gen.Long[-1_000_000_000_000_000, 1_000_000_000_000_000].Select(Length.FromNanometres);

    private static readonly Gen<Length> Steps = Gen.Long[1, 10_000_000_000].Select(Length.FromNanometres);

    [Fact]
    public void Lengths_add_and_subtract_like_whole_numbers() =>
        Gen.Select(Lengths, Lengths, Lengths).Sample((a, b, c) =>
        {
            Assert.Equal(a, a + Length.Zero);
            Assert.Equal(a + b, b + a);
            Assert.Equal(a + (b + c), a + b + c);
            Assert.Equal(a, a + b - b);
            Assert.Equal(Length.Zero, a + -a);
            Assert.Equal(a + a + a, 3 * a);
            Assert.Equal(3 * a, a * 3);
        });

    [Fact]
    public void Lengths_are_in_one_order() =>
        Gen.Select(Lengths, Lengths).Sample((a, b) =>
        {
            Assert.Equal(a < b, b > a);
            Assert.Equal(a <= b, !(a > b));
            Assert.Equal(a >= b, !(a < b));
            Assert.Equal(a < b, a.CompareTo(b) < 0);
            Assert.Equal(a == b, a.CompareTo(b) == 0);
            Assert.Equal(a < b, (a - b).IsNegative);
            Assert.Equal(a > b, (a - b).IsPositive);
            Assert.True(Length.Min(a, b) <= Length.Max(a, b));
            Assert.Equal(a + b, Length.Min(a, b) + Length.Max(a, b));
            Assert.False(a.Abs().IsNegative);
        });

    [Fact]
    public void Rounding_up_reaches_the_next_whole_step_and_no_further() =>
        Gen.Select(Lengths, Steps).Sample((length, step) =>
        {
            var up = length.RoundUpTo(step);
            Assert.True(up.IsWhole(step));
            Assert.True(up >= length && up - length < step);
            var down = length.RoundDownTo(step);
            Assert.True(down.IsWhole(step));
            Assert.True(down <= length && length - down < step);
            var near = length.RoundTo(step);
            Assert.True(near == up || near == down);
            Assert.True((near - length).Abs() * 2 <= step);
        });

    [Theory]
    [InlineData("5 in", "1/4 in", "5 in")]
    [InlineData("0 in", "1/4 in", "0 in")]
    [InlineData("5 1/64 in", "1/4 in", "5 1/4 in")]
    [InlineData("127.000001 mm", "1/4 in", "5 1/4 in")]
    [InlineData("126.999999 mm", "1/4 in", "5 in")]
    [InlineData("-5 in", "1/4 in", "-5 in")]
    [InlineData("-5 1/64 in", "1/4 in", "-5 in")]
    [InlineData("-127.000001 mm", "1/4 in", "-5 in")]
    [InlineData("-126.999999 mm", "1/4 in", "-4 3/4 in")]
    public void Rounding_up_goes_up_on_both_sides_of_zero(string length, string step, string expected) =>
        Assert.Equal(Read(expected), Read(length).RoundUpTo(Read(step)));

    [Theory]
    [InlineData("1/8 in", "1/4 in", "1/4 in")]
    [InlineData("-1/8 in", "1/4 in", "-1/4 in")]
    [InlineData("7/64 in", "1/4 in", "0 in")]
    [InlineData("-7/64 in", "1/4 in", "0 in")]
    public void Halves_round_away_from_zero(string length, string step, string expected) =>
        Assert.Equal(Read(expected), Read(length).RoundTo(Read(step)));

    [Theory]
    [InlineData(7, 2, 4)]
    [InlineData(-7, 2, -4)]
    [InlineData(7, 3, 2)]
    [InlineData(8, 3, 3)]
    [InlineData(-8, 3, -3)]
    [InlineData(long.MaxValue, 1, long.MaxValue)]
    [InlineData(long.MaxValue, 2, 4_611_686_018_427_387_904)]
    public void Sharing_out_rounds_to_the_nearest_nanometre(long nanometres, long parts, long expected) =>
        Assert.Equal(expected, (Length.FromNanometres(nanometres) / parts).Nanometres);

    [Fact]
    public void Leaving_the_range_throws_and_never_wraps()
    {
        var longest = Length.FromNanometres(long.MaxValue);
        var one = Length.FromNanometres(1);
        Assert.Equal(longest, longest - one + one);
        Assert.Throws<OverflowException>(() => longest + one);
        Assert.Throws<OverflowException>(() => -longest - one - one);
        Assert.Throws<OverflowException>(() => -Length.FromNanometres(long.MinValue));
        Assert.Throws<OverflowException>(() => Length.FromNanometres(long.MinValue).Abs());
        Assert.Throws<OverflowException>(() => longest * 2);
        Assert.Throws<OverflowException>(() => longest.RoundUpTo(Length.Inch));
        Assert.Throws<OverflowException>(() => Length.FromInches(363_124_883_341));
        Assert.Equal(9_223_372_036_836_000_000, Length.FromInches(363_124_883_340).Nanometres);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(3.7e11)]
    [InlineData(-3.7e11)]
    public void Geometry_that_is_no_length_throws(double inches) =>
        Assert.Throws<OverflowException>(() => Length.RoundedFromInches(inches));

    [Theory]
    [InlineData(1.0, 25_400_000)]
    [InlineData(-1.0, -25_400_000)]
    [InlineData(1e-8, 0)]
    [InlineData(2e-8, 1)]
    [InlineData(-2e-8, -1)]
    public void Geometry_becomes_a_length_to_the_nearest_nanometre(double inches, long nanometres) =>
        Assert.Equal(nanometres, Length.RoundedFromInches(inches).Nanometres);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_step_must_be_positive(long nanometres)
    {
        var step = Length.FromNanometres(nanometres);
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inch.RoundUpTo(step));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inch.RoundDownTo(step));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inch.RoundTo(step));
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inch / nanometres);
    }

    private static Length Read(string text) => LengthText.Parse(text, allowNegative: true).OrThrow();
}
