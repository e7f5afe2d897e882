using System.Globalization;
using CsCheck;

namespace CutShop.Paper.Tests.Drawings;

public sealed class SvgNumberTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(-0.0004, "0")]
    [InlineData(0.0006, "0.001")]
    [InlineData(-0.25, "-0.25")]
    [InlineData(12, "12")]
    [InlineData(12.3456, "12.346")]
    [InlineData(99.9996, "100")]
    [InlineData(-1234567.05, "-1234567.05")]
    public void Three_digits_stand_behind_the_point_at_most(double number, string text) => Assert.Equal(text, new SvgNumber(number).ToString());

    [Fact]
    public void It_reads_as_the_runtime_writes_it() => Gen.Int[-100_000_000, 100_000_000].Sample(thousandths =>
        Assert.Equal((thousandths / 1000.0).ToString("0.###", CultureInfo.InvariantCulture), new SvgNumber(thousandths / 1000.0).ToString()));

    [Fact]
    public void It_fits_or_says_that_it_does_not()
    {
        Span<char> room = stackalloc char[7];
        for (var length = 0; length < room.Length; length++)
            Assert.False(new SvgNumber(-12.345).TryFormat(room[..length], out _, default, provider: null));
        Assert.True(new SvgNumber(-12.345).TryFormat(room, out var written, default, provider: null));
        Assert.Equal("-12.345", room[..written].ToString());
    }
}
