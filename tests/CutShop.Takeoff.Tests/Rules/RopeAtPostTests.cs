namespace CutShop.Takeoff.Tests.Rules;

public class RopeAtPostTests
{
    /// <summary>
    /// Common practice: about 108 in. On the rope's centre line a turn is √((π 11.5)² + 2²) = √(36.1283² + 4) = 36.1836 in;
    /// three are 108.551. Round the post's own girth it would be 3 π 9.5 = 89.535 in and come up short.
    /// </summary>
    [Fact]
    public void Three_turns_of_2_in_rope_on_a_piling_take_about_108_in()
    {
        var wrap = Wrap(PostShape.Round, "9 1/2 in", "2 in", halfTurns: 6);
        Assert.Equal(108.551, wrap, 0.001);
    }

    /// <summary>4 W + π d for 5 1/2 and 1 1/2 in is 22 + 4.712 = 26.712 in; a helix of pitch 1.5 makes it √(26.712² + 1.5²) = 26.754.</summary>
    [Fact]
    public void A_turn_on_a_square_post_follows_its_sides_and_rounds_its_corners()
    {
        var wrap = Wrap(PostShape.Square, "5 1/2 in", "1 1/2 in", halfTurns: 2);
        Assert.Equal(26.754, wrap, 0.001);
        Assert.Equal(26.712, Math.Sqrt((wrap * wrap) - (1.5 * 1.5)), 0.001);
    }

    /// <summary>Half of 36.1836 and one and a half of it.</summary>
    [Theory]
    [InlineData(1, 18.0918)]
    [InlineData(3, 54.2754)]
    public void Turns_come_in_halves(int halfTurns, double inches) =>
        Assert.Equal(inches, Wrap(PostShape.Round, "9 1/2 in", "2 in", halfTurns), 0.001);

    /// <summary>
    /// A quarter of 4 W + π d round a square post of 7 1/2 in with 1 1/2 in rope, 34.712 / 4 = 8.678 in, and of π (W + d) round a round
    /// one, 28.274 / 4 = 7.069 in; 45 degrees half of that.
    /// </summary>
    [Theory]
    [InlineData(PostShape.Square, 90, WrapSide.Outside, 8.6781)]
    [InlineData(PostShape.Square, 90, WrapSide.Inside, -8.6781)]
    [InlineData(PostShape.Square, 45, WrapSide.Outside, 4.3390)]
    [InlineData(PostShape.Round, 90, WrapSide.Outside, 7.0686)]
    [InlineData(PostShape.Round, 22.5, WrapSide.Inside, -1.7671)]
    public void A_turn_adds_its_part_of_a_turn_outside_and_saves_it_inside(PostShape shape, double degrees, WrapSide side, double inches)
    {
        var post = PostOf(shape, "7 1/2 in") with { Turn = new Turn((decimal)degrees, TurnSide.Left) };
        Assert.Equal(inches, RopeAtPost.TurnedPart(post, Read("1 1/2 in"), side).Inches, 0.0001);
    }

    [Fact]
    public void A_straight_line_adds_nothing_to_a_wrap() =>
        Assert.Equal(Length.Zero, RopeAtPost.TurnedPart(PostOf(PostShape.Round, "9 1/2 in"), Read("2 in"), WrapSide.Outside));

    /// <summary>5 1/2 in along a 3-4-5 slope is 5.5 x 5/4 = 6.875 in.</summary>
    [Theory]
    [InlineData(0.0, 5.5)]
    [InlineData(0.75, 6.875)]
    [InlineData(-0.75, 6.875)]
    public void A_raking_bore_is_longer_than_the_post_is_wide(double slope, double inches) =>
        Assert.Equal(inches, RopeAtPost.Through(Read("5 1/2 in"), slope).Inches, 1e-9);

    /// <summary>5.5 / 2 = 2.75; 5.5 + 12 x 1.5 = 23.5; 2.75 − 0.75 = 2.</summary>
    [Fact]
    public void The_ends_take_what_the_rules_say()
    {
        var (across, rope) = (Read("5 1/2 in"), Read("1 1/2 in"));
        Assert.Equal(Read("2 3/4 in"), RopeAtPost.Stopped(across));
        Assert.Equal(Read("23 1/2 in"), RopeAtPost.Knot(across, rope));
        Assert.Equal(Read("2 3/4 in"), RopeAtPost.CornerFirst(across));
        Assert.Equal(Read("2 in"), RopeAtPost.CornerSecond(across, rope));
    }

    /// <summary>A 64th is an odd number of nanometres: 5 33/64 in is 140,096,875 nm, half of it 70,048,437.5.</summary>
    [Fact]
    public void Two_halves_are_never_more_than_the_whole()
    {
        var across = Read("5 33/64 in");
        Assert.Equal(70_048_437, RopeAtPost.Stopped(across).Nanometres);
        Assert.True(RopeAtPost.Stopped(across) * 2 <= across);
        Assert.True(RopeAtPost.CornerSecond(across, Read("1 1/2 in")) * 2 <= across - Read("1 1/2 in"));
    }

    private static double Wrap(PostShape shape, string across, string rope, int halfTurns) =>
        RopeAtPost.Wrap(PostOf(shape, across), Read(rope), Treatment.Wrap(halfTurns)).Inches;

    private static Post PostOf(PostShape shape, string across) => new("A1", shape, Read(across), Read("42 in"), Turn: null);

    private static Length Read(string text) => LengthText.Parse(text).OrThrow();
}
