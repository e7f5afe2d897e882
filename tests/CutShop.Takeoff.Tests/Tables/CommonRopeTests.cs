namespace CutShop.Takeoff.Tests.Tables;

/// <summary>Common practice, no source, on dressed posts: 4x4 is 3 1/2 in, 6x6 5 1/2, 8x8 7 1/2 (7 1/4 is allowed too), 10x10 9 1/2, 12x12 11 1/2.</summary>
public class CommonRopeTests
{
    [Theory]
    [InlineData("3 1/2 in", "1 1/4 in to 1 1/2 in")]
    [InlineData("5 1/2 in", "1 1/2 in to 2 in")]
    [InlineData("7 1/4 in", "2 in and up")]
    [InlineData("7 1/2 in", "2 in and up")]
    [InlineData("9 1/2 in", "2 in and up")]
    [InlineData("11 1/2 in", "2 in and up")]
    public void Every_dressed_post_has_its_common_ropes(string across, string sizes) => Assert.Equal(sizes, CommonRope.SizesFor(Read(across)).ToString());

    [Theory]
    [InlineData("3 1/2 in", "1 15/64 in", false)]
    [InlineData("3 1/2 in", "1 1/4 in", true)]
    [InlineData("3 1/2 in", "1 1/2 in", true)]
    [InlineData("3 1/2 in", "1 33/64 in", false)]
    [InlineData("4 in", "1 1/4 in", true)]
    [InlineData("4 1/64 in", "1 1/4 in", false)]
    [InlineData("5 1/2 in", "1 31/64 in", false)]
    [InlineData("5 1/2 in", "2 in", true)]
    [InlineData("6 in", "2 1/64 in", false)]
    [InlineData("6 1/64 in", "2 1/64 in", true)]
    [InlineData("9 1/2 in", "1 63/64 in", false)]
    [InlineData("9 1/2 in", "4 in", true)]
    public void A_rope_is_common_up_to_its_last_size(string across, string rope, bool suits) =>
        Assert.Equal(suits, CommonRope.Suits(Read(across), Read(rope)));

    private static Length Read(string text) => LengthText.Parse(text).OrThrow();
}
