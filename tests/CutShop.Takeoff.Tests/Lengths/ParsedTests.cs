namespace CutShop.Takeoff.Tests.Lengths;

public sealed class ParsedTests
{
    [Fact]
    public void A_value_is_there_or_the_reason_and_never_a_made_up_value()
    {
        Assert.Equal(5, Parsed.Good(5).Value);
        var bad = Parsed.Bad<int>(Sentence.Plain("accepted: a number"));
        Assert.Equal((false, "accepted: a number"), (bad.IsGood, bad.Problem));
        Assert.Throws<InvalidOperationException>(() => bad.Value);
        Assert.Throws<FormatException>(() => bad.OrThrow());
    }

    [Fact]
    public void A_length_is_whole_in_steps_above_zero_only() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Length.Inch.IsWhole(Length.Zero));
}
