using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Words;

/// <summary>
/// What is done about the shrinking of natural rope. That new rope is soaked, dried slack on a grating and never made fast while it dries:
/// The Ashley Book of Knots, no. 118. Lengths: manila 1 1/2 in, two bays of 72 in, 5 1/2 in posts, 5 in of sag, stopped at both ends, net
/// 156.835479 in; with 12.5 % lost it is cut at 179.25 in, which loses 22.40625 in; hung long its dry sag is 19.123254 in.
/// </summary>
public sealed class WettingTextTests
{
    private static readonly string[] Manners = ["preshrunk", "trimmed", "hung-long"];

    [Fact]
    public void A_ticket_of_preshrunk_rope_asks_for_a_preshrunk_coil_and_for_no_water()
    {
        var text = TicketText("preshrunk");
        Assert.Contains("1 1/2 in (38.1 mm) manila, preshrunk", text, StringComparison.Ordinal);
        Assert.Contains("only from a coil marked preshrunk", text, StringComparison.Ordinal);
        Assert.Contains("hang it as it is", text, StringComparison.Ordinal);
        Assert.DoesNotContain("soak it for a day", text, StringComparison.Ordinal);
        Assert.DoesNotContain("trim", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ticket_of_rope_that_is_trimmed_says_to_soak_it_dry_it_slack_fit_it_and_trim_it()
    {
        var piece = Takeoff("trimmed").Pieces[0];
        Assert.Equal(22.40625, piece.Shrinks.Inches, 0.001);
        var text = TicketText("trimmed");
        foreach (var said in new[]
        {
            // To the next 1/4 in: 22 1/2 in.
            $"about {PaperSettings.Default.Figures.Both(Length.FromSixtyFourths(22 * 64 + 32))} longer", "soak it for a day", "dry it slack on a grating", "never make it fast while it dries", "trim what is over",
        })
            Assert.Contains(said.Replace('\u00A0', ' '), text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_trimmed_has_a_figure_where_it_is_worth_one()
    {
        // With 4 in added once a piece, 4 × 0.875 = 3.5 in are over once it has shrunk, and what was rounded up.
        var piece = Takeoff("trimmed", perPiece: "4 in").Pieces[0];
        Assert.Equal(3.5, piece.Trim.Inches, 0.22);
        Assert.EndsWith($"trim what is over, about {PaperSettings.Default.Figures.Both(piece.Trim.RoundUpTo(Length.FromSixtyFourths(16)))}.", PaperText.English.WettingBeforeLastEnd(piece, PaperSettings.Default.Figures.Both), StringComparison.Ordinal);
        Assert.EndsWith("trim what is over.", PaperText.English.WettingBeforeLastEnd(Takeoff("trimmed").Pieces[0], PaperSettings.Default.Figures.Both), StringComparison.Ordinal);
    }

    [Fact]
    public void Rope_that_is_hung_long_is_hung_dry_with_more_sag_and_loose_turns_and_is_not_trimmed()
    {
        var lines = Lines("hung-long", start: "wrap 2");
        Assert.Contains("Hang it dry", lines[0], StringComparison.Ordinal);
        Assert.Contains(lines, line => line.Contains("loose", StringComparison.Ordinal) && line.Contains("turns", StringComparison.Ordinal));
        Assert.Contains(Lines("hung-long"), line => line.Contains("19 1/8 in", StringComparison.Ordinal) && line.Contains("once it has shrunk, 5 in", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.Contains("trim what is over", StringComparison.Ordinal));
        Assert.DoesNotContain(Lines("trimmed", start: "wrap 2"), line => line.Contains("loose", StringComparison.Ordinal));
    }

    [Fact]
    public void On_site_rope_is_soaked_first_and_trimmed_once_its_sag_is_set_before_the_last_end_goes_in()
    {
        var lines = Lines("trimmed");
        Assert.Contains("soak it for a day", lines[0], StringComparison.Ordinal);
        Assert.EndsWith("Never haul wet rope taut, and never make it fast while it dries.", lines[0], StringComparison.Ordinal);
        Assert.Contains("stretch a string", lines[^3], StringComparison.Ordinal);
        Assert.Contains("trim what is over", lines[^2], StringComparison.Ordinal);
    }

    [Fact]
    public void Rope_for_which_nothing_is_added_has_no_step_of_trimming()
    {
        var lines = Lines("trimmed", loses: "0%");
        Assert.Equal("Never haul wet rope taut, and never make it fast while it dries.", lines[0]);
        Assert.All(lines, line => Assert.False(string.IsNullOrEmpty(line) || line.Contains("trim", StringComparison.Ordinal), line));
    }

    [Fact]
    public void Each_manner_has_words_in_both_languages()
    {
        foreach (var manner in Manners)
        {
            var (english, spanish) = (Lines(manner, "wrap 2"), Lines(manner, "wrap 2", PaperText.Spanish));
            Assert.Equal(english.Count, spanish.Count);
            Assert.All(english.Zip(spanish), pair => Assert.NotEqual(pair.First, pair.Second));
        }
    }

    [Theory]
    [InlineData("preshrunk", "preshrunk: hang it as it is")]
    [InlineData("trimmed", "soak, dry slack, fit, trim what is over")]
    [InlineData("hung-long", "hang it dry with more sag, do not trim")]
    public void A_piece_s_label_says_what_water_does_to_it(string manner, string said)
    {
        var takeoff = Takeoff(manner);
        var label = PieceLabel.Of("HTTPS://SHOP.EXAMPLE", takeoff.Job, takeoff.Pieces[0], SampleJobs.Code).OrThrow();
        Assert.Contains(said, Texts(LabelDrawing.Of(label, LabelStock.Default, PaperSettings.Default).OrThrow()));
    }

    [Fact]
    public void A_coil_s_label_says_that_it_is_preshrunk_how_it_is_laid_and_its_colour()
    {
        var kind = new RopeKind(RopeMaterial.Manila, Length.FromSixtyFourths(96), "four-strand", "tarred", IsPreshrunk: true);
        var texts = Texts(LabelDrawing.Of(new CoilLabel("HTTPS://SHOP.EXAMPLE/STOCK/K0005", "K0005", kind, "M-1", Length.Foot * 525, From: null), LabelStock.Default, PaperSettings.Default).OrThrow());
        Assert.Contains("preshrunk", texts);
        Assert.Contains("four-strand, tarred", texts);
    }

    [Fact]
    public void A_ticket_of_natural_rope_fits_one_page() => Assert.All(
        Manners, manner => Assert.Single(Poppler.PageSizes(PdfSheets.Write("t", [Ticket(manner)], PaperSettings.Default))));

    private static IEnumerable<string> Texts(Drawing drawing) => drawing.Shapes.OfType<DrawnText>().Select(text => text.Text.Replace('\u00A0', ' '));

    private static List<string> Lines(string manner, string start = "stopped", PaperText? text = null, string loses = "12.5%")
    {
        var takeoff = Takeoff(manner, start, loses: loses);
        var settings = text is null ? PaperSettings.Default : PaperSettings.Default with { Text = text };
        return [.. InstallLines.Of(takeoff, takeoff.Pieces[0], settings).Select(line => line.Text.Replace('\u00A0', ' '))];
    }

    private static string TicketText(string manner) => System.Net.WebUtility.HtmlDecode(HtmlSheets.Article(Ticket(manner))).Replace('\u00A0', ' ');

    private static Sheet Ticket(string manner)
    {
        var takeoff = Takeoff(manner);
        return CutTicket.Of(JobHead.Of(takeoff.Job), takeoff.Pieces[0], PaperSettings.Default, SampleJobs.Code);
    }

    private static JobTakeoff Takeoff(string manner, string start = "stopped", string perPiece = "0 in", string loses = "12.5%") => SampleJobs.Takeoff(
        $$"""
        {
          "number": "LQ-9", "rope": { "material": "manila", "diameter": "1 1/2 in" },
          "allowances": { "wetting": { "loses": "{{loses}}", "manner": "{{manner}}" }, "perPiece": "{{perPiece}}" },
          "lines": [ {
            "mark": "A",
            "posts": [
              { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A3", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "72 in" }, { "clear": "72 in" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "5 in", "start": "{{start}}", "finish": "stopped" } ]
          } ]
        }
        """);
}
