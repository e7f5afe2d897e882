namespace CutShop.Takeoff.Tests.Result;

public sealed class CheckCharacterTests
{
    // Published MOD 37,36 values.
    [Theory]
    [InlineData("A12425GABC1234002", 'M')]
    [InlineData("DADPIDA3897722461", 'J')]
    [InlineData("123AB", 'X')]
    [InlineData("RABD", 'A')]
    [InlineData("X0H", 'X')]
    [InlineData("TBR", '1')]
    public void Published_values_come_out(string text, char check)
    {
        Assert.Equal(check, CheckCharacter.Of(text));
        Assert.True(CheckCharacter.Fits(text + check));
    }

    [Theory]
    [InlineData("12-3")]
    [InlineData("abc")]
    public void Only_digits_and_capitals_have_a_value(string text) =>
        Assert.Throws<ArgumentException>(() => CheckCharacter.Of(text));

    [Fact]
    public void An_empty_text_has_no_check_character() => Assert.Throws<ArgumentException>(() => CheckCharacter.Fits(""));
}
