namespace CutShop.Paper.Tests.Labels;

public sealed class QrModulesTests
{
    // ISO/IEC 18004: alphanumeric characters that versions 2 to 4 take at levels Q and H; a side is 4 v + 17 modules.
    [Theory]
    [InlineData(29, QrCorrection.Quarter, 25)]
    [InlineData(30, QrCorrection.Quarter, 29)]
    [InlineData(47, QrCorrection.Quarter, 29)]
    [InlineData(48, QrCorrection.Quarter, 33)]
    [InlineData(20, QrCorrection.Third, 25)]
    [InlineData(21, QrCorrection.Third, 29)]
    [InlineData(35, QrCorrection.Third, 29)]
    [InlineData(36, QrCorrection.Third, 33)]
    public void Capitals_take_the_smallest_code_of_the_standard(int characters, QrCorrection correction, int side) =>
        Assert.Equal(side, QrModules.Of(("HTTPS://" + new string('A', 60))[..characters], correction).Side);

    // Bytes: version 2 takes 20 at level Q.
    [Theory]
    [InlineData(20, 25)]
    [InlineData(21, 29)]
    public void Small_letters_take_more_room(int characters, int side) =>
        Assert.Equal(side, QrModules.Of(new string('a', characters), QrCorrection.Quarter).Side);

    [Fact]
    public void The_three_corners_have_their_finder_patterns_right_at_the_edge()
    {
        var code = QrModules.Of("HTTPS://SHOP.EXAMPLE", QrCorrection.Quarter);
        var far = code.Side - 1;
        foreach (var (x, y) in new[] { (0, 0), (far, 0), (0, far), (3, 3), (far - 3, 3), (3, far - 3) })
            Assert.True(code.IsDark(x, y));
        foreach (var (x, y) in new[] { (1, 1), (far - 1, 1), (1, far - 1) })
            Assert.False(code.IsDark(x, y));
    }
}
