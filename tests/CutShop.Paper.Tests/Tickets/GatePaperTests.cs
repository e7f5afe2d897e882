using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Tickets;

/// <summary>What paper says of gates, of heavy pieces, of salt air, and of whether a railing is allowed.</summary>
public sealed class GatePaperTests
{
    private static readonly PaperSettings Millimetres = PaperSettings.Default with { Units = UnitsFirst.Millimetres };

    // By hand: 1 in nylon, four tucks, unlaid 4 x 5 1/3 = 21 1/3 in. G1: out and back 4 + 4, half round a pin of 1/2 in 1.5 x pi / 2 = 2.356:
    // throat at 31.69, to the next 1/16 in 31 11/16. G2: round a groove of 1 in, pi = 3.1416: throat at 32.475, 32 1/2.
    [Fact]
    public void A_cut_ticket_tells_the_splices_in_the_trade_s_words()
    {
        var text = TextOf(Ticket("G-gate-1", PaperSettings.Default));
        foreach (var said in new[]
        {
            "Eye at G1", "Eye at G2", "at ≈ 21 5/16 in (≈ 541.9 mm), so far the strands are unlaid", "at ≈ 31 11/16 in (≈ 804.9 mm), there the throat",
            "at ≈ 32 1/2 in", "a pin of 1/2 in (12.7 mm)", "the thimble of 1 in (25.4 mm) groove", "4 in (101.6 mm) from the pin's middle",
            "over one strand and under the next: 4 full tucks", "tails of at least 6 in (152.4 mm)", "2 further tucks",
        })
            Assert.Contains(said, text, StringComparison.Ordinal);
        Assert.Contains("a ≈ 541.9 mm (≈ 21 5/16 in), hasta ahí se descolchan", TextOf(Ticket("G-gate-1", Millimetres with { Text = PaperText.Spanish })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_ticket_with_two_eyes_has_all_that_is_worked_from_on_its_first_page()
    {
        var pdf = PdfSheets.Write("t", [Ticket("G-gate-1", PaperSettings.Default)], PaperSettings.Default);
        Assert.Equal(2, Poppler.PageSizes(pdf).Count);
        var words = Poppler.WordsOf(pdf);
        Assert.InRange(words.IndexOf("Coil it without twist", StringComparison.Ordinal), words.IndexOf("Eye at G2", StringComparison.Ordinal), words.IndexOf("page 1 of 2", StringComparison.Ordinal));
    }

    [Fact]
    public void An_eye_that_no_bore_lets_through_is_left_to_the_site_and_told_there()
    {
        var ticket = TextOf(Ticket("H-top-1", PaperSettings.Default));
        Assert.Contains("Eye at H1", ticket, StringComparison.Ordinal);
        Assert.DoesNotContain("Eye at H4", ticket, StringComparison.Ordinal);
        Assert.Contains("it is spliced on site", ticket, StringComparison.Ordinal);
        var last = Lines("H-top-1")[^1].Text;
        // From the throat to the binding: 4 + 4 + 2.356 in, to the next 1/16 in 10 3/8.
        Assert.StartsWith("H4: the rope is through its bores, so splice this eye now", last, StringComparison.Ordinal);
        Assert.Contains("lies 4 in (101.6 mm) before it, and the binding ≈ 10 3/8 in", last.Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Equal("G2: hang the eye on its pin, and check that every section hangs right.", Lines("G-gate-1")[^1].Text);
    }

    [Fact]
    public void Hardware_is_counted_on_the_summary_and_the_packing_list_and_is_no_screw()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        var summary = JobSummary.Of(takeoff, PaperSettings.Default);
        Assert.Equal(
            [
                ("hook or pin bolt, 1/2 in (12.7 mm) pin, 1 1/2 in (38.1 mm) from the post's face to the pin's middle", "3"),
                ("hook or pin bolt, 5/8 in (≈ 15.9 mm) pin, 1 1/2 in (38.1 mm) from the post's face to the pin's middle", "1"),
                ("thimble, 1 in (25.4 mm) groove", "1"),
                ("staple or eye bolt for 1 in (25.4 mm) rope", "1"),
            ],
            Table(summary, "Hooks, thimbles and staples").Rows.Select(row => (row[0].Replace('\u00A0', ' '), row[1])));
        Assert.Single(Table(summary, "Screws to pick").Rows);

        var list = Packing(takeoff, [new(Hardware.Of(takeoff.Pieces)[0].What, 3, IsIn: true)], PaperSettings.Default);
        Assert.Equal(["3", "☑"], Table(list, "Hooks, thimbles and staples").Rows[0].Skip(1));
    }

    [Fact]
    public void A_label_says_at_which_post_to_unhook_and_that_two_people_lift()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        var heavy = takeoff.Pieces[0] with { WeightLb = 51.1 };
        var drawing = LabelDrawing.Of(PieceLabel.Of("https://shop.example", takeoff.Job, heavy, SampleJobs.Code).OrThrow(), LabelStock.Default, PaperSettings.Default).OrThrow();
        var said = drawing.Shapes.OfType<DrawnText>().Select(text => text.Text).ToList();
        Assert.Contains("G1: eye. UNHOOK HERE", said);
        Assert.Contains("G2: eye. UNHOOK HERE", said);
        Assert.Contains("51.1 lb: TWO PEOPLE LIFT", said);
        Assert.DoesNotContain(LabelDrawing.Of(PieceLabel.Of("https://shop.example", takeoff.Job, heavy with { WeightLb = 51 }, SampleJobs.Code).OrThrow(), LabelStock.Default, PaperSettings.Default)
            .OrThrow().Shapes.OfType<DrawnText>(), text => text.Text.Contains("TWO PEOPLE", StringComparison.Ordinal));
    }

    /// <summary>About 51 lb: NIOSH 94-110.</summary>
    [Theory]
    [InlineData(51.0, "51.0 lb")]
    [InlineData(51.2, "51.2 lb: two people lift it")]
    [InlineData(null, "not known")]
    public void Over_51_pounds_two_people_lift(double? pounds, string said) => Assert.Equal(said, PaperText.English.WeightToLift(pounds));

    [Fact]
    public void Parcels_are_listed_each_with_its_weight()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        Assert.Equal("In the parcel", Assert.Single(Packing(takeoff, [], PaperSettings.Default).Blocks.OfType<TableBlock>()).Caption);
        var two = Packing(takeoff, [], PaperSettings.Default, parcels: [1, 3]);
        var weights = takeoff.Pieces.Select(piece => PaperText.English.Pounds(piece.WeightLb)).ToList();
        Assert.Equal([$"Parcel 1 of 2: {weights[0]}", $"Parcel 2 of 2: {weights[1]}"], two.Blocks.OfType<TableBlock>().Select(table => table.Caption));
        Assert.Contains("posts, screws and hardware come on top", TextOf(two), StringComparison.Ordinal);
    }

    [Fact]
    public void Salt_air_asks_for_316_on_tickets_lists_and_quotes_and_only_there()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        var quote = new QuoteFigures(7, new(2026, 11, 25), new(2026, 12, 25), [], "0", "0 %", "0", "0");
        foreach (var isForSalt in new[] { true, false })
        {
            var settings = PaperSettings.Default with { IsForSalt = isForSalt };
            Sheet[] sheets =
            [
                DrillTicket.All(takeoff, settings).First(),
                Packing(takeoff, [new(Hardware.Of(takeoff.Pieces)[0].What, 3, IsIn: true)], settings),
                QuoteSheet.Of("", "", quote, takeoff, settings),
                JobSummary.Of(takeoff, settings),
            ];
            Assert.All(sheets, sheet => Assert.Equal(isForSalt, TextOf(sheet).Contains("stainless steel 316", StringComparison.Ordinal)));
        }
    }

    // By hand: the gate hangs from 36 in with 3 in of sag, so 33 in at mid-span and 36 - 1/2 = 35 1/2 in open at its pins. 45 in between the
    // pins, arc 45.528981: y = sqrt(45.528981² - 45²) / 2 = 3.4603, T = 200 x 45.528981 / (4 x 3.4603) = 657.9 lb.
    [Fact]
    public void Quote_summary_and_site_pack_answer_what_is_asked_and_say_that_it_is_no_rating()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        var quote = new QuoteFigures(7, new(2026, 11, 25), new(2026, 12, 25), [], "0", "0 %", "0", "0");
        Sheet[] sheets =
        [
            QuoteSheet.Of("", "", quote, takeoff, PaperSettings.Default),
            JobSummary.Of(takeoff, PaperSettings.Default),
            new SitePaper(takeoff, [.. takeoff.Pieces.Select(_ => SampleJobs.Code)], new HashSet<string>(), PaperSettings.Default).Sheets().First(),
        ];
        foreach (var sheet in sheets)
        {
            Assert.Equal(
                ["G, gate", "33 in (838.2 mm)", "35 1/2 in (901.7 mm) to the ground", "658 lb"],
                Table(sheet, "Is it allowed here? For information: not a rating").Rows[0].Select(cell => cell.Replace('\u00A0', ' ')));
            var text = TextOf(sheet);
            Assert.Contains("Beside line G it is 36 in (914.4 mm) down, over 30 in (762 mm): a guard is needed there, and this railing is none.", text, StringComparison.Ordinal);
            Assert.Contains("The local code and a licensed professional decide.", text, StringComparison.Ordinal);
        }
        // A bore of 1 1/8 in in a 5 1/2 in post: 1 - 0.2045 = 79 % along, 1 - 0.0086 = 99 % across, cut off to whole percents.
        Assert.Equal(["79 %", "99 %"], Table(sheets[1], "Wood left in the posts: not a rating").Rows[0].Skip(2).Select(cell => cell.Replace('\u00A0', ' ')));
    }

    [Fact]
    public void The_site_pack_says_how_a_gate_opens_that_it_is_no_barrier_and_that_rope_beds_in()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        var sheets = new SitePaper(takeoff, [.. takeoff.Pieces.Select(_ => SampleJobs.Code)], new HashSet<string>(), PaperSettings.Default).Sheets().ToList();
        var gate = TextOf(sheets[1]);
        Assert.Contains("G1, G2: to open, lift the eye off its pin", gate, StringComparison.Ordinal);
        Assert.Contains("A rope over an opening is no barrier", gate, StringComparison.Ordinal);
        Assert.Contains("New rope beds in", gate, StringComparison.Ordinal);
        var plain = SampleJobs.Takeoff(SampleJobs.TwoPosts());
        Assert.Null(InstallLines.Gate(plain.Pieces[0], PaperText.English));
    }

    private static IReadOnlyList<InstallLine> Lines(string run)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        return InstallLines.Of(takeoff, takeoff.Pieces.Single(piece => piece.Run == run), PaperSettings.Default);
    }

    private static Sheet Packing(JobTakeoff takeoff, IReadOnlyList<PackedHardware> hardware, PaperSettings settings, int[]? parcels = null) => PackingList.Of(
        takeoff.Job,
        [.. takeoff.Pieces.Select((piece, i) => new PackedPiece(piece, SampleJobs.Code, piece.Cut, "L-9", IsPacked: true) { Parcel = parcels?[i] ?? 1 })],
        [],
        [],
        hardware,
        sitePack: null,
        settings);

    private static Sheet Ticket(string run, PaperSettings settings)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        return CutTicket.Of(JobHead.Of(takeoff.Job), takeoff.Pieces.Single(piece => piece.Run == run), settings, SampleJobs.Code);
    }

    private static TableBlock Table(Sheet sheet, string caption) => sheet.Blocks.OfType<TableBlock>().Single(table => table.Caption == caption);

    private static string TextOf(Sheet sheet) => System.Net.WebUtility.HtmlDecode(HtmlSheets.Article(sheet)).Replace('\u00A0', ' ');
}
