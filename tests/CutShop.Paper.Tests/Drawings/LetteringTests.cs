namespace CutShop.Paper.Tests.Drawings;

public sealed class LetteringTests
{
    [Fact]
    public void A_text_that_fits_stays_as_it_is() => Assert.Equal(("A1", 3.0), Lettering.Fit("A1", 50, 3, 2));

    [Fact]
    public void A_longer_text_first_gets_smaller()
    {
        var (text, size) = Lettering.Fit("A fairly long text", 22, 3, 2);
        Assert.Equal("A fairly long text", text);
        Assert.InRange(size, 2, 2.95);
        Assert.InRange(Lettering.Width(text, size), 20, 22);
    }

    [Fact]
    public void A_much_longer_text_ends_in_an_ellipsis()
    {
        var (text, size) = Lettering.Fit(new string('m', 200), 25, 3, 2);
        Assert.Equal(2, size);
        Assert.EndsWith("m…", text, StringComparison.Ordinal);
        Assert.InRange(Lettering.Width(text, size), 20, 25);
    }

    [Fact]
    public void A_pair_of_surrogates_is_never_torn()
    {
        var (text, _) = Lettering.Fit(string.Concat(Enumerable.Repeat("\U0001F6A2", 100)), 25, 3, 2);
        Assert.Equal(text, CleanText.Of(text));
        Assert.DoesNotContain('\uFFFD', text);
    }

    [Fact]
    public void Wrapped_lines_keep_every_word_and_stay_within_the_width()
    {
        const string Text = "Pull the rope off the coil straight along the bench tape, averyverylongwordthatfitsnowhereatallonaline and on";
        var lines = Lettering.Wrap(Text, 40, 3);
        Assert.Equal(Text.Replace(" ", "", StringComparison.Ordinal), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
        Assert.All(lines, line => Assert.InRange(Lettering.Width(line, 3), 0.1, 40));
    }
}
