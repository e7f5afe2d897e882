namespace CutShop.Takeoff.Tests.Rules;

/// <summary>Whole jobs against figures worked out by hand or, for hanging ropes, with another solver and another form of the equation.</summary>
public class WorkedJobTests
{
    /// <summary>
    /// A sag of 6 in across 72 in: c solves c (cosh(36/c) − 1) = 6, c = 109.0011; the arc is 2 c sinh(36/c) = 73.316489.
    /// Net: 2.75 + 73.316489 + 5.5 + 73.316489 + 2.75 = 157.632978, up to 157 3/4.
    /// From the corner: 2.75 − 0.75 + 73.316489 + 5.5 + 12 x 1.5 = 98.816489, up to 99.
    /// Low: 2.75 + 75 + 5.5 + 75 + 2.75 = 161, whole already. To the wrapped post's centre: 77.5 − 2.75 = 74.75, with the slack
    /// 77.75; two turns 2 √((22 + 1.5 π)² + 1.5²) = 53.508942; 2 + 77.75 + 53.508942 = 133.258942, up to 133 1/2.
    /// </summary>
    [Fact]
    public void The_boardwalk()
    {
        var takeoff = Sample.Takeoff(Sample.Example("boardwalk"));
        Assert.Equal(
            [("A-top-1", "A1", "A3"), ("A-top-2", "A3", "A4"), ("A-low-1", "A1", "A3"), ("A-low-2", "A3", "A4")],
            takeoff.Pieces.Select(piece => (piece.Run, piece.From.Mark, piece.To.Mark)));
        Near([157.632978, 98.816489, 161, 133.258942], takeoff.Pieces.Select(piece => piece.Net));
        Assert.Equal(["13' 1 3/4\"", "8' 3\"", "13' 5\"", "11' 1 1/2\""], takeoff.Pieces.Select(piece => piece.Cut.ToString()));
        Near([73.316489, 73.316489, 73.316489, 75, 75, 77.75], takeoff.Pieces.SelectMany(piece => piece.Sections).Select(section => section.Arc));
        Near([6, 6, 6, 9.130210, 9.130210, 9.298093], takeoff.Pieces.SelectMany(piece => piece.Sections).Select(section => section.Sag));
        Near([72, 72, 72, 72, 72, 74.75], takeoff.Pieces.SelectMany(piece => piece.Sections).Select(section => section.Chord));
        Assert.Equal(
            [AtPostKind.Stopped, AtPostKind.Through, AtPostKind.Corner, AtPostKind.Corner, AtPostKind.Knot, AtPostKind.Stopped, AtPostKind.Through, AtPostKind.Corner, AtPostKind.Corner, AtPostKind.Wrap],
            takeoff.Pieces.SelectMany(piece => piece.AtPosts).Select(at => at.Kind));
        Near([2.75, 5.5, 2.75, 2, 23.5, 2.75, 5.5, 2.75, 2, 53.508942], takeoff.Pieces.SelectMany(piece => piece.AtPosts).Select(at => at.Length));

        // 1 1/2 in polypropylene weighs 39 lb a hundred feet: 157.75 in are 13.1458 ft, 5.126875 lb.
        Assert.Equal(5.126875, takeoff.Pieces[0].WeightLb!.Value, 1e-9);
    }

    [Fact]
    public void The_boardwalks_bores()
    {
        var bores = Sample.Takeoff(Sample.Example("boardwalk")).Bores;
        Assert.Equal(
            [
                "A1/top stopped 36\" toward A2 2 3/4\"",
                "A2/top through 36\" toward A1 2 7/8\" toward A3 2 7/8\"",
                "A3/top corner 36\" toward A2 2 3/4\"",
                "A3/top corner 36\" toward A4 2 3/4\"",
                "A4/top knot 36\" toward A3 2 7/8\" away from A3 2 7/8\"",
                "A1/low stopped 18\" toward A2 2 3/4\"",
                "A2/low through 18\" toward A1 2 7/8\" toward A3 2 7/8\"",
                "A3/low corner 18\" toward A2 2 3/4\"",
                "A3/low corner 18\" toward A4 2 3/4\"",
            ],
            bores.Select(bore => $"{bore.Post.Mark}/{bore.Row} {TakeoffJson.Word(bore.Kind)} {bore.Height.Inches}\" {string.Join(' ', bore.Operations.Select(operation => $"{operation.Face} {operation.Depth}"))}"));
        Assert.All(bores, bore => Assert.Equal((1.5625, 1.625, 1.9375), (bore.Wanted.Inches, bore.Bit.Inches, bore.Wall.Inches)));
    }

    [Fact]
    public void The_boardwalks_screws() =>
        Assert.Equal(
            [
                "A1/top end #12 x 4 in stainless deck screw x1 away from A2",
                "A2/top line #12 x 4 in stainless deck screw x1 side, left when facing A3",
                "A3/top corner-first #12 x 4 in stainless deck screw x1 away from A2",
                "A3/top corner-second #12 x 5 in stainless deck screw x1 away from A4",
                "A1/low end #12 x 4 in stainless deck screw x1 away from A2",
                "A2/low line #12 x 4 in stainless deck screw x1 side, left when facing A3",
                "A3/low corner-first #12 x 4 in stainless deck screw x1 away from A2",
                "A3/low corner-second #12 x 5 in stainless deck screw x1 away from A4",
                "A4/low wrap #10 x 3 in stainless deck screw x2 around the post",
            ],
            Sample.Takeoff(Sample.Example("boardwalk")).Fixings
                .Select(fixing => $"{fixing.Post.Mark}/{fixing.Row} {TakeoffJson.Word(fixing.Purpose)} {fixing.Screw} x{fixing.Count} {fixing.Face}"));

    /// <summary>
    /// Up 60 in over 80 (slope 3/4), then down 20 over 80 (−1/4), rope tight. Faces are 74.5 in apart: 74.5 x 5/4 = 93.125, then
    /// 74.5 √(1 + 1/16) = 76.792842. The middle bore rakes by the mean, 1/4: 5.5 √(1 + 1/16) = 5.669270, each half of it and
    /// 1/8 in is 2.959635. The knot takes 5.5 + 18 = 23.5 whatever the slope; its bore rakes by −1/4, 2.959635 too.
    /// Net 2.75 + 93.125 + 5.669270 + 76.792842 + 23.5 = 201.837112, up to 202.
    /// </summary>
    [Fact]
    public void Up_and_down()
    {
        var takeoff = Sample.Takeoff(Sample.Example("up-and-down"));
        var piece = Assert.Single(takeoff.Pieces);
        Near([93.125, 76.792842], piece.Sections.Select(section => section.Arc));
        Near([93.125, 76.792842], piece.Sections.Select(section => section.Chord));
        Near([0, 0], piece.Sections.Select(section => section.Sag));
        Near([2.75, 5.669270, 23.5], piece.AtPosts.Select(at => at.Length));
        Near([201.837113, 202], [piece.Net, piece.Cut]);
        Assert.Null(piece.WeightLb);
        Near([2.75, 2.959635, 2.959635, 2.959635, 2.959635], takeoff.Bores.SelectMany(bore => bore.Operations).Select(operation => operation.Depth));
        Assert.Equal([36.8699, 14.0362, -14.0362], takeoff.Bores.Select(bore => Math.Round(bore.RakeDegrees, 4)));
    }

    /// <summary>
    /// 9 1/2 in pilings, manila measured at 2 1/8 in, so D + d = 11.625. A turn is √((11.625 π)² + 2.125²) = 36.582785: two and a
    /// half are 91.456962, one and a half 54.874177, two 73.165569. The right angle adds 11.625/2 x π/2 = 9.130253 outside and
    /// takes it away inside. Centres 90.5 + 9.5 = 100 and 100; with the slacks 103 and 104.
    /// Outside: 91.456962 + 103 + 64.004430 + 104 + 73.165569 = 435.626961; x 1.1 + 6 = 485.189657, up to 486.
    /// Inside: 417.366455; x 1.1 + 6 = 465.103101, up to 466.
    /// </summary>
    [Fact]
    public void Pilings_with_measured_rope()
    {
        var takeoff = Sample.Takeoff(Sample.Example("pilings"));
        Assert.Equal(["P-top-1", "P-low-1"], takeoff.Pieces.Select(piece => piece.Run));
        Near([91.456962, 64.004431, 73.165569, 91.456962, 45.743923, 73.165569], takeoff.Pieces.SelectMany(piece => piece.AtPosts).Select(at => at.Length));
        Near([103, 104, 103, 104], takeoff.Pieces.SelectMany(piece => piece.Sections).Select(section => section.Arc));
        Near([435.626962, 417.366454], takeoff.Pieces.Select(piece => piece.Net));
        Near([486, 466], takeoff.Pieces.Select(piece => piece.Cut));
        Assert.Empty(takeoff.Bores);

        // Manila of 2 in nominal weighs 102 lb a hundred feet: 486 in are 40.5 ft, 41.31 lb.
        Assert.Equal(41.31, takeoff.Pieces[0].WeightLb!.Value, 1e-9);
        // Two screws on two turns, three on more; one and a half turns are held by two.
        Assert.Equal([3, 2, 2, 3, 2, 2], takeoff.Fixings.Select(fixing => fixing.Count));
    }

    /// <summary>
    /// Sisal at the default 15 %: 2.75 + 75 + 2.75 = 80.5, x 1.15 = 92.575, up to 92 3/4. The nylon row does not shrink:
    /// 2.75 + 72 + 5.5 + 12 = 92 1/4. The second line's section has its own sag and is metric: 1830 mm are 72.047244 in,
    /// less half a post 70.297244 to the wrap's centre line, falling 100/1830 of that; half a turn on 3 1/2 in with 1 1/4 in
    /// rope is √((14 + 1.25 π)² + 1.25²)/2 = 8.985259; knot 3.5 + 15 = 18.5.
    /// </summary>
    [Fact]
    public void Two_lines_of_different_ropes()
    {
        var takeoff = Sample.Takeoff(Sample.Example("two-lines"));
        Assert.Equal(["A-top-1", "A-low-1", "B-top-1"], takeoff.Pieces.Select(piece => piece.Run));
        Near([80.5, 92.25, 98.488059], takeoff.Pieces.Select(piece => piece.Net));
        Near([92.75, 92.25, 98.5], takeoff.Pieces.Select(piece => piece.Cut));
        Near([70.402122, 4, 71.002800], [takeoff.Pieces[2].Sections[0].Chord, takeoff.Pieces[2].Sections[0].Sag, takeoff.Pieces[2].Sections[0].Arc]);
        Near([18.5, 8.985259], takeoff.Pieces[2].AtPosts.Select(at => at.Length));
        Assert.Equal(["sisal", "nylon", "polypropylene"], takeoff.Pieces.Select(piece => piece.Rope.MaterialName));
        // Natural 1 1/2 in: 1 11/16; nylon 1 in: 1 1/16; polypropylene 1 1/4 in: 1 5/16.
        Assert.Equal([1.6875, 1.6875, 1.0625, 1.0625, 1.3125], takeoff.Bores.Select(bore => bore.Wanted.Inches));
    }

    /// <summary>
    /// Posts of 5 33/64 in and rope measured at 1 33/64 in, whose halves end in half a nanometre:
    /// 72 + 2.75 − 0.7578125 + 2.7578125 = 76.75 exactly, which may not become 77.
    /// </summary>
    [Fact]
    public void A_length_that_is_whole_already_is_not_rounded_up()
    {
        const string json = """
            { "number": "H", "rope": { "material": "polyester", "diameter": "1 1/2 in", "measured": "1 33/64 in" },
              "lines": [ { "mark": "A",
                "posts": [
                  { "mark": "1", "shape": "square", "across": "5 33/64 in", "height": "42 in" },
                  { "mark": "2", "shape": "square", "across": "5 1/2 in", "height": "42 in", "turn": "90 left" },
                  { "mark": "3", "shape": "square", "across": "5 33/64 in", "height": "42 in" } ],
                "sections": [ { "clear": "72 in" }, { "clear": "72 in" } ],
                "rows": [ { "mark": "t", "height": "36 in", "sag": "0 in", "start": "stopped", "finish": "stopped" } ] } ] }
            """;
        var takeoff = Sample.Takeoff(json);
        Assert.Equal("6' 4 3/4\"", takeoff.Pieces[1].Cut.ToString());
    }

    private static void Near(double[] expected, IEnumerable<Length> actual)
    {
        var inches = actual.Select(length => length.Inches).ToArray();
        Assert.Equal(expected.Length, inches.Length);
        Assert.All(expected.Zip(inches), pair => Assert.Equal(pair.First, pair.Second, 2e-6));
    }
}
