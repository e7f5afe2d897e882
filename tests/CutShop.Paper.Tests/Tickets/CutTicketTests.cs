using System.Text.RegularExpressions;
using CsCheck;
using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Tickets;

public sealed partial class CutTicketTests
{
    private static readonly Gen<string> Ends = OneOf("stopped", "knot", "wrap 2", "wrap 3.5");

    [Fact]
    public void A_ticket_says_everything_that_the_cutter_needs()
    {
        var text = TextOf(Ticket(SampleJobs.LanternQuay, "A-top-1"));
        // 13' 1 3/4": two arcs of 73.31 in and 2.75 + 5.5 + 2.75 in at posts make 157.62 in, up to the next 1/4 in.
        foreach (var said in new[]
        {
            "Cut ticket", "A-top-1", "LQ-1042", "3333-3333-3332", "A1 to A3", "2027-03-12", "1 1/2 in (38.1 mm) polypropylene",
            "13' 1 3/4\"", "≈ 4006.9 mm", "stopped bore", "corner bore", "Hot cut square and seal",
        })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Millimetres_come_first_where_the_shop_wants_them()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var ticket = CutTicket.Of(JobHead.Of(takeoff.Job), takeoff.Pieces[0], PaperSettings.Default with { Units = UnitsFirst.Millimetres });
        var big = Assert.Single(ticket.Blocks.OfType<BigFigureBlock>());
        Assert.Equal(("≈ 4006.9 mm", "13' 1 3/4\""), (big.Figure.Replace('\u00A0', ' '), big.Other.Replace('\u00A0', ' ')));
    }

    [Fact]
    public void Without_a_cut_plan_there_are_boxes_to_write_in()
    {
        var fields = FieldsOf(Ticket(SampleJobs.LanternQuay, "A-top-1"));
        foreach (var label in new[] { "Coil", "Place on coil", "Tape mark, start", "Tape mark, end", "Measured after cutting", "Cut by" })
            Assert.Null(fields[label]);
    }

    [Fact]
    public void With_a_cut_plan_the_boxes_are_filled()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var place = new CutPlace("PP-15-07", 3, Length.FromInches(400), Length.FromInches(557));
        var fields = FieldsOf(CutTicket.Of(JobHead.Of(takeoff.Job), takeoff.Pieces[0], PaperSettings.Default, SampleJobs.Code, place));
        Assert.Equal("PP-15-07", fields["Coil"]);
        Assert.Equal("3", fields["Place on coil"]);
        Assert.Equal("33' 4\" (10160 mm)", fields["Tape mark, start"]!.Replace('\u00A0', ' '));
        Assert.Equal("46' 5\" (14147.8 mm)", fields["Tape mark, end"]!.Replace('\u00A0', ' '));
        Assert.Null(fields["Measured after cutting"]);
    }

    [Fact]
    public void Natural_rope_is_bound_and_cut_cold_and_nothing_hot_is_ever_said() =>
        Gen.Select(OneOf("manila", "sisal", "hemp", "jute", "cotton"), Ends, Ends).Sample((material, start, finish) =>
        {
            var text = TextOf(Ticket(SampleJobs.TwoPosts(material, start, finish), "B-top-1"));
            Assert.DoesNotMatch(Hot(), text);
            Assert.Contains("cut cold between", text, StringComparison.Ordinal);
            Assert.Contains("tape or whip", text, StringComparison.OrdinalIgnoreCase);
        });

    [Fact]
    public void Synthetic_rope_is_cut_hot_and_sealed_with_its_cautions() =>
        Gen.Select(OneOf("polypropylene", "polyester", "nylon", "polyethylene"), Ends, Ends).Sample((material, start, finish) =>
        {
            var text = TextOf(Ticket(SampleJobs.TwoPosts(material, start, finish), "B-top-1"));
            foreach (var said in new[] { "Hot cut square and seal", "burns", "ventilate", "Fire", "gloves", "clear the bench" })
                Assert.Contains(said, text, StringComparison.Ordinal);
            Assert.DoesNotContain("whip", text, StringComparison.OrdinalIgnoreCase);
        });

    [Fact]
    public void A_ticket_fits_one_page() =>
        Assert.All(
            SampleJobs.Takeoff(SampleJobs.LanternQuay).Pieces,
            piece => Assert.Single(Poppler.PageSizes(PdfSheets.Write("t", [Ticket(SampleJobs.LanternQuay, piece.Run)], PaperSettings.Default))));

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static Sheet Ticket(string json, string run)
    {
        var takeoff = SampleJobs.Takeoff(json);
        return CutTicket.Of(JobHead.Of(takeoff.Job), takeoff.Pieces.Single(p => p.Run == run), PaperSettings.Default, SampleJobs.Code);
    }

    private static Dictionary<string, string?> FieldsOf(Sheet sheet) =>
        sheet.Blocks.OfType<FieldsBlock>().SelectMany(b => b.Fields).ToDictionary(f => f.Label, f => f.Value);

    private static string TextOf(Sheet sheet) => System.Net.WebUtility.HtmlDecode(HtmlSheets.Article(sheet)).Replace('\u00A0', ' ');

    [GeneratedRegex("\\bhot\\b|\\bmelt(ed|ing)\\b|\\bseal", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Hot();
}
