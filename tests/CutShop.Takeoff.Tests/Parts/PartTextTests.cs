using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;

namespace CutShop.Takeoff.Tests.Parts;

public sealed class PartTextTests
{
    private static readonly JobHead Head = new("R-1", "", Due: null, OneLot: false);

    [Fact]
    public void The_parts_of_any_job_read_back_are_the_same_takeoff() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                var takeoff = Sample.Takeoff(RandomJob.Of(seed).ToJsonString());
                Assert.Equal(Json(takeoff), Json(ThroughText(takeoff)));
            },
            iter: 300);

    /// <summary>Each field of each record, so that one which the output does not show is held too.</summary>
    [Fact]
    public void Every_field_of_every_part_comes_back() =>
        Gen.Int[0, int.MaxValue - 1].Sample(
            seed =>
            {
                var takeoff = Sample.Takeoff(RandomJob.Of(seed).ToJsonString());
                var again = ThroughText(takeoff);
                Same(takeoff.Pieces, again.Pieces);
                Same(takeoff.Bores, again.Bores);
                Same(takeoff.Fixings, again.Fixings);
                Same(takeoff.Warnings, again.Warnings);
                Same(takeoff.Job.Lines, again.Job.Lines);
                Same(PostWork.Of(takeoff).ToList(), PostWork.Of(takeoff).Select(work => PartText.ReadPost(PartText.Write(work), PartText.Format)).ToList());
                Same(JobFrame.Of(takeoff).Totals, PartText.ReadFrame(PartText.Write(JobFrame.Of(takeoff)), PartText.Format).Totals);
            },
            iter: 100);

    /// <summary>The bound that the program promises: the parts of a line of a usual length take no more room than the takeoff's output without blanks.</summary>
    [Theory]
    [InlineData(9)]
    [InlineData(200)]
    public void Parts_are_no_larger_than_the_output_without_blanks(int posts)
    {
        var takeoff = Sample.Takeoff(Sample.Line(Sample.PlainRow, posts: posts));
        var output = JsonNode.Parse(Json(takeoff))!.ToJsonString(new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        var parts = Texts(takeoff).Sum(text => Encoding.UTF8.GetByteCount(text));
        Assert.True(parts <= Encoding.UTF8.GetByteCount(output), $"{parts} bytes of parts, {Encoding.UTF8.GetByteCount(output)} of output");
    }

    [Fact]
    public void A_text_that_is_no_part_is_refused_with_what_is_wrong()
    {
        var takeoff = Sample.Takeoff(Sample.Example("pilings"));
        var text = PartText.Write(PieceWork.Of(takeoff).First());
        foreach (var broken in new[] { "", "{", "null", "[]", "{}", text[..^2], text.Replace("\"kind\":\"wrap\"", "\"kind\":\"sewn\"", StringComparison.Ordinal), text.Replace("cut_nm", "cut_mm", StringComparison.Ordinal) })
            Assert.NotEmpty(Assert.Throws<InvalidDataException>(() => PartText.ReadPiece(broken, PartText.Format)).Message);
        Assert.Contains("format 2", Assert.Throws<InvalidDataException>(() => PartText.ReadPiece(text, 2)).Message, StringComparison.Ordinal);
    }

    /// <summary>What was written once must be read for ever: this is format 1, written by hand from docs/parts.md.</summary>
    [Fact]
    public void A_piece_of_format_1_is_read()
    {
        const string Text =
            """
            {"run":"A-top-1","line":"A","row":"top","height_nm":914400000,"rope":{"material":"manila","diameter_nm":38100000,"measured_nm":39687500},
             "net_nm":2006600000,"cut_nm":2311400000,"weight_lb":4.5,
             "sizes":[{"shape":"square","across_nm":139700000,"height_nm":1066800000}],
             "spans":[{"level_nm":1828800000,"sag_nm":127000000,"arc_nm":1852110571,"parameter_in":130.5,"pull_lb":7.25}],
             "screws":[{"kind":"lag","size":"1/4 in","length_nm":114300000,"pilot_nm":3571875,"shank_hole_nm":6350000,"counterbore_nm":12700000,"counterbore_depth_nm":4762500}],
             "posts":[{"post":"A1","kind":"stopped","length_nm":69850000,"screws":{"for":"end","face":"away:A2"}},{"post":"A2","turn":"90 left","kind":"wrap","half_turns":5,"inside":true,"length_nm":1000000000}]}
            """;
        var (piece, fixings) = PartText.ReadPiece(Text, 1);
        Assert.Equal(("A-top-1", 91.0, 79.0, 1.5625), (piece.Run, piece.Cut.Inches, piece.Net.Inches, piece.Rope.Across.Inches));
        Assert.Equal(("A1", "A2", 72.0, 5.0), (piece.From.Mark, piece.To.Mark, piece.Sections[0].Chord.Inches, piece.Sections[0].Sag.Inches));
        Assert.Equal((AtPostKind.Wrap, 2.5m, WrapSide.Inside), (piece.AtPosts[1].Kind, piece.AtPosts[1].Treatment.Turns, piece.AtPosts[1].Treatment.Side));
        Assert.Equal(new Turn(90, TurnSide.Left), piece.To.Turn);
        var screw = Assert.Single(fixings);
        Assert.Equal((new Face(FaceSight.AwayFrom, "A2"), 36.0, 36.0, 4.5), (screw.Face, screw.Height.Inches, screw.Mark.Inches, screw.Length.Inches));
        Assert.Equal("1/4 in x 4 1/2 in stainless lag screw", screw.Screw!.ToString());
    }

    private static JobTakeoff ThroughText(JobTakeoff takeoff) => PartText.ReadFrame(PartText.Write(JobFrame.Of(takeoff)), PartText.Format).ToTakeoff(
        Head,
        [.. PieceWork.Of(takeoff).Select(work => PartText.ReadPiece(PartText.Write(work), PartText.Format))],
        [.. PostWork.Of(takeoff).Select(work => PartText.ReadPost(PartText.Write(work), PartText.Format))]);

    private static IEnumerable<string> Texts(JobTakeoff takeoff) =>
        [PartText.Write(JobFrame.Of(takeoff)), .. PieceWork.Of(takeoff).Select(PartText.Write), .. PostWork.Of(takeoff).Select(PartText.Write)];

    private static string Json(JobTakeoff takeoff)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(takeoff, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Same<T>(T one, T other) => Assert.Equivalent(one, other, strict: true);
}
