using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using CutShop.Takeoff.Tests.Rules;

namespace CutShop.Takeoff.Tests.Result;

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
        Assert.Contains("format 4", Assert.Throws<InvalidDataException>(() => PartText.ReadPiece(text, 4)).Message, StringComparison.Ordinal);
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

    /// <summary>Warnings of format 1 are English texts; they are shown as they are.</summary>
    [Fact]
    public void A_post_of_format_1_keeps_the_text_of_its_warnings()
    {
        const string Text =
            """
            {"post":"A1","line":"A","after":"A2","size":{"shape":"square","across_nm":139700000,"height_nm":1066800000},"runs":[],
             "warnings":[{"number":2,"code":"thin-wall","where":"A1/top","path":"$.lines[0].posts[0].across","text":"The 4 1/16 in bore leaves a {side} wall of 11/16 in, under 3/4 in."}]}
            """;
        var warning = Assert.Single(PartText.ReadPost(Text, 1).Warnings);
        Assert.Equal(("thin-wall", 2, "A1"), (warning.Code, warning.Number, warning.Post));
        Assert.Equal("The 4 1/16 in bore leaves a {side} wall of 11/16 in, under 3/4 in.", warning.Text);
        Assert.Equal(warning.Text, warning.Says.In(CultureInfo.GetCultureInfo("es")));
        var again = PartText.Write(PartText.ReadPost(Text, 1));
        Assert.Equal(warning, Assert.Single(PartText.ReadPost(again, PartText.Format).Warnings));
    }

    /// <summary>What was written once must be read for ever: each sentence that a part of format 2 may hold, with its values.</summary>
    [Theory]
    [InlineData("""["TurnAtEnd","A1"]""", "Post A1 ends its line, so its turn changes nothing.")]
    [InlineData("""["CornerNotSquare","A3","60.5"]""", "Post A3 turns by 60.5°: the lengths and bores of a bored corner are those of a right angle; check how the two bores meet.")]
    [InlineData("""["NoShrinkage",["Manila"],"0 %"]""", "Natural rope shrinks when wet; manila with a shrinkage of 0 % will come up short. Common practice is 10 to 15 %.")]
    [InlineData("""["NoWeight",["Cotton"],"3 in"]""", "No published weight covers cotton rope of 3 in, so weights and pulls are left out.")]
    [InlineData("""["MeasuredFarOff","3 in","2 in"]""", "The rope was measured at 3 in, more than a quarter off its nominal 2 in. Measure again.")]
    [InlineData("""["BoresForRow",["NoBit","2 in"]]""", "Bores for this row: no 2 in bit on the rack: get a threaded Forstner.")]
    [InlineData("""["UncommonRope","1 in","5 1/2 in",["SizesBetween","1 1/2 in","2 in"]]""", "1 in rope on a post 5 1/2 in across; common is 1 1/2 in to 2 in.")]
    [InlineData("""["UncommonRope","1 in","8 in",["SizesUp","2 in"]]""", "1 in rope on a post 8 in across; common is 2 in and up.")]
    [InlineData("""["ThinWall","4 1/16 in","11/16 in","3/4 in"]""", "The 4 1/16 in bore leaves a side wall of 11/16 in, under 3/4 in.")]
    [InlineData("""["OutOfTop","2 in"]""", "The 2 in bore breaks out of the top of the post.")]
    [InlineData("""["LittleWoodAbove","1/2 in","2 in"]""", "1/2 in of wood above the 2 in bore, less than one bit diameter.")]
    [InlineData("""["LittleWoodBetween","1/2 in","top"]""", "1/2 in of wood between this bore and that of row top, less than one bit diameter.")]
    [InlineData("""["BoresMeet","top"]""", "This bore runs into that of row top.")]
    [InlineData("""["DeepSag","16 in","30 in"]""", "A sag of 16 in is over half of the row's height of 30 in.")]
    [InlineData("""["SagToGround","30 in"]""", "A sag of 30 in brings the rope to the ground.")]
    [InlineData("""["SagToRow","16 in","low"]""", "A sag of 16 in brings the rope to row low.")]
    [InlineData("""["NoScrewReaches","1 in","2 in"]""", "No screw in the catalogue fits; one that reaches from 1 in to 2 in into the post would.")]
    public void A_warning_of_format_2_is_read_in_both_languages(string says, string english)
    {
        var text = $$"""
            {"post":"A1","line":"A","size":{"shape":"square","across_nm":139700000,"height_nm":1066800000},"runs":[],
             "warnings":[{"code":"c","where":"A1","path":"$","text":{{says}}}]}
            """;
        var warning = Assert.Single(PartText.ReadPost(text, 2).Warnings);
        Assert.Equal(english, warning.Text);
        var spanish = warning.Says.In(CultureInfo.GetCultureInfo("es"));
        Assert.DoesNotMatch(@"\b(the|of|and|with|rope|bore)\b|\{", spanish);
        Assert.Contains("\"text\":" + says, PartText.Write(PartText.ReadPost(text, 2)), StringComparison.Ordinal);
    }

    /// <summary>What was written once must be read for ever: a post of format 3 that is told from its foot.</summary>
    [Fact]
    public void A_post_of_format_3_says_where_its_heights_are_told_from()
    {
        const string Text =
            """
            {"post":"A1","line":"A","after":"A2","size":{"shape":"square","across_nm":139700000,"height_nm":1066800000,"buried_nm":762000000},"datum":"foot","runs":[]}
            """;
        var work = PartText.ReadPost(Text, 3);
        Assert.Equal((Datum.Foot, 30.0, 42.0), (work.Datum, work.Post.Buried!.Value.Inches, work.Post.Height.Inches));
        Assert.Equal(Text, PartText.Write(work));
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
