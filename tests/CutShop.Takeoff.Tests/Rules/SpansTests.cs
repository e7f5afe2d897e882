namespace CutShop.Takeoff.Tests.Rules;

public class SpansTests
{
    private static readonly Post Narrow = new("A1", PostShape.Square, Read("5 1/2 in"), Read("42 in"), Turn: null);
    private static readonly Post Wide = new("A2", PostShape.Round, Read("9 1/2 in"), Read("42 in"), Turn: null);

    private static readonly Hold Mouth = new(HoldKind.Mouth, Read("36 in"), Length.Zero, IsLevel: false, HalfTurn: 0, Skew: 0);

    /// <summary>72 in between the faces and half of both posts, 2 3/4 and 4 3/4 in: 79 1/2 in from centre to centre.</summary>
    [Fact]
    public void Clear_and_centres_are_two_ways_to_say_the_same()
    {
        Assert.Equal(Read("79 1/2 in"), Spans.Centres(Clear("72 in"), Narrow, Wide));
        Assert.Equal(Read("79 1/2 in"), Spans.Centres(AtCentres("79 1/2 in"), Narrow, Wide));
    }

    [Theory]
    [InlineData(false, false, "72 in")]
    [InlineData(true, false, "74 3/4 in")]
    [InlineData(false, true, "76 3/4 in")]
    [InlineData(true, true, "79 1/2 in")]
    public void A_bore_holds_the_rope_at_the_face_and_a_wrap_at_the_centre_line(bool wrapBefore, bool wrapAfter, string between)
    {
        var (before, after) = (At(wrapBefore), At(wrapAfter));
        Assert.Equal(Read(between), Spans.Between(Clear("72 in"), Narrow, before, Wide, after).Level);
        Assert.Equal(Read(between), Spans.Between(AtCentres("79 1/2 in"), Narrow, before, Wide, after).Level);

        static Hold At(bool wrap) => wrap ? Mouth with { Kind = HoldKind.Centre, IsLevel = true } : Mouth;
    }

    /// <summary>Both halves of 5 33/64 in end in half a nanometre; together they are whole.</summary>
    [Fact]
    public void The_smallest_clear_section_keeps_its_width()
    {
        var post = Narrow with { Across = Read("5 33/64 in") };
        Assert.Equal(1, Spans.Between(Clear("0.000001 mm"), post, Mouth, post, Mouth).Level.Nanometres);
    }

    /// <summary>8 in over 80 in is a tenth.</summary>
    [Fact]
    public void The_slope_is_the_rise_over_the_centres()
    {
        Assert.Equal(0.1, Spans.Between(AtCentres("80 in") with { Rise = Read("8 in") }, Narrow, Mouth, Wide, Mouth).Slope, 1e-12);
        Assert.Equal(-0.1, Spans.Between(Clear("72 1/2 in") with { Rise = -Read("8 in") }, Narrow, Mouth, Wide, Mouth).Slope, 1e-12);
    }

    private static Section Clear(string width) => new(SpacingKind.Clear, Read(width), Length.Zero, Hang: null);

    private static Section AtCentres(string width) => new(SpacingKind.Centres, Read(width), Length.Zero, Hang: null);

    private static Length Read(string text) => LengthText.Parse(text).OrThrow();
}
