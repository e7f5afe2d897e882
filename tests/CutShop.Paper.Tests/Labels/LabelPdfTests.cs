using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Labels;

public sealed class LabelPdfTests
{
    private const string Base = "https://shop.example";
    internal const string Address = "HTTPS://SHOP.EXAMPLE/P/333333333332";

    [Theory]
    [InlineData(203, QrCorrection.Quarter)]
    [InlineData(300, QrCorrection.Quarter)]
    [InlineData(203, QrCorrection.Third)]
    [InlineData(300, QrCorrection.Third)]
    public void The_code_on_a_printed_label_reads_as_the_piece_s_address(int dotsPerInch, QrCorrection correction)
    {
        var stock = LabelStock.Default with { DotsPerInch = dotsPerInch, Correction = correction };
        var page = Poppler.Render(Pdf(stock), dotsPerInch)[0];
        Assert.Equal(Address, CodeReader.Read(page));
    }

    // 4 x 2 in is 288 x 144 points.
    [Fact]
    public void A_page_is_exactly_the_label() => Assert.Equal([(288.0, 144.0)], Poppler.PageSizes(Pdf(LabelStock.Default)));

    // 60 x 40 mm is 170.079 x 113.386 points.
    [Fact]
    public void Another_stock_gives_another_page()
    {
        var (width, height) = Poppler.PageSizes(Pdf(LabelStock.Default with { WidthMm = 60, HeightMm = 40 }))[0];
        Assert.Equal(170.079, width, 2);
        Assert.Equal(113.386, height, 2);
    }

    // By hand: 35 alphanumeric characters at level Q need version 3 (29 modules), with quiet zones 37. 0.42 of 812 dots
    // is 341 dots, so a module is 9 dots and the dark square 29 x 9 = 261 dots.
    [Fact]
    public void A_module_is_a_whole_number_of_printer_dots()
    {
        var page = Poppler.Render(Pdf(LabelStock.Default), 203)[0];
        Assert.Equal((812, 406), (page.Width, page.Height));
        var (left, top, right, bottom) = CodeReader.DarkBox(page, 0, 320);
        Assert.Equal((261, 261), (right - left, bottom - top));
        Assert.Equal(4 * 9, left);
        Assert.True(page.GetPixel(left + 8, top + 8).Green < 64);
        // The finder pattern's light ring starts one module in.
        Assert.True(page.GetPixel(left + 9 + 1, top + 9 + 1).Green > 192);
    }

    // 261 dots of 25.4/203 mm are 32.657 mm, which is 771.4 dots of a 600 dpi picture.
    [Fact]
    public void The_square_measures_what_was_computed()
    {
        var page = Poppler.Render(Pdf(LabelStock.Default), 600)[0];
        var (left, top, right, bottom) = CodeReader.DarkBox(page, 0, 940);
        Assert.InRange(right - left, 770, 773);
        Assert.InRange(bottom - top, 770, 773);
    }

    [Fact]
    public void A_person_reads_all_there_is_to_know()
    {
        var text = Poppler.WordsOf(Pdf(LabelStock.Default));
        // 13' 1 3/4": two arcs of 73.31 in (72 in, 6 in of sag) and 2.75 + 5.5 + 2.75 in at posts, up to the next 1/4 in.
        foreach (var said in new[] { "3333-3333-3332", "LQ-1042", "Line A", "Row top", "A1", "A3", "1 1/2 in polypropylene", "13' 1 3/4\"", "4006.9 mm", "A1: stopped bore, sealed", "A3: corner bore, sealed" })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_are_too_long_get_an_ellipsis_and_stay_on_the_label()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.TwoPosts(number: new string('W', 40), line: new string('M', 20)));
        var label = PieceLabel.Of(Base, takeoff.Job, takeoff.Pieces[0], SampleJobs.Code).OrThrow();
        var pdf = LabelPdf.Write("labels", [label], LabelStock.Default, PaperSettings.Default).OrThrow();
        Assert.Contains("…", Poppler.WordsOf(pdf), StringComparison.Ordinal);
        var page = Poppler.Render(pdf, 300)[0];
        var (left, _, right, bottom) = CodeReader.DarkBox(page, 510, page.Width);
        // Nothing dark in the outermost 1 mm (12 dots) at the right and at the foot.
        Assert.InRange(right, left + 1, page.Width - 12);
        Assert.InRange(bottom, 1, page.Height - 12);
        Assert.Equal(Address, CodeReader.Read(page));
    }

    // 37 modules of 4 dots (0.5005 mm) at 203 dpi are 18.5 mm, and 18.5 / 0.42 is 44.1 mm.
    [Fact]
    public void A_label_that_is_too_small_is_told_what_would_do()
    {
        var problem = LabelPdf.Write("labels", [Label()], LabelStock.Default with { WidthMm = 40, HeightMm = 18 }, PaperSettings.Default).Problem;
        Assert.Equal(
            "the code has 29 modules a side and does not fit a label of 40 x 18 mm: with modules of 4 dots (0.50 mm) it takes a label at least 44.1 mm wide and 18.5 mm tall",
            problem);
        Assert.True(LabelPdf.Write("labels", [Label()], LabelStock.Default with { WidthMm = 44.2, HeightMm = 18.6 }, PaperSettings.Default).IsGood);
    }

    [Fact]
    public void Five_hundred_labels_are_printed_one_to_a_page_and_told_one_by_one()
    {
        var labels = Enumerable.Range(0, 500).Select(_ => Label(PieceCode.Draw())).ToList();
        var told = new Told();
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var pdf = LabelPdf.Write("labels", labels, LabelStock.Default, PaperSettings.Default, told).OrThrow();
        // About half a second where this was written; the bound only catches work that grows with the square.
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 15);
        Assert.Equal(Enumerable.Range(1, 500), told.Counts);
        Assert.Equal(500, Poppler.PageSizes(pdf).Count);
    }

    [Fact]
    public void A_coil_s_label_leads_to_its_page_and_says_its_rope_and_lot()
    {
        var address = PieceAddress.OfCoil(Base, "K0005").OrThrow();
        Assert.EndsWith("/STOCK/K0005", address, StringComparison.Ordinal);
        var label = new CoilLabel(address, "K0005", new RopeKind(RopeMaterial.Polypropylene, Length.FromSixtyFourths(96), RopeKind.ThreeStrand), "P-2611", Length.Foot * 600, From: null);
        var pdf = LabelPdf.Write("coils", [label, label with { Mark = "K0006", From = "K0005" }], LabelStock.Default, PaperSettings.Default).OrThrow();
        Assert.Equal(address, CodeReader.Read(Poppler.Render(pdf, 300)[0]));
        var text = Poppler.WordsOf(pdf);
        foreach (var said in new[] { "K0005", "K0006", "1 1/2 in polypropylene", "three-strand", "Lot P-2611", "When full", "600' 0\"", "Offcut of K0005" })
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public void No_labels_make_no_document() =>
        Assert.Throws<ArgumentException>(() => LabelPdf.Write("labels", (PieceLabel[])[], LabelStock.Default, PaperSettings.Default));

    [Fact]
    public async Task Two_documents_written_at_once_are_both_whole()
    {
        var both = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => Pdf(LabelStock.Default))));
        Assert.All(both, pdf => Assert.Contains("3333-3333-3332", Poppler.WordsOf(pdf), StringComparison.Ordinal));
    }

    internal static byte[] Pdf(LabelStock stock) => LabelPdf.Write("labels", [Label()], stock, PaperSettings.Default).OrThrow();

    private static PieceLabel Label(PieceCode? code = null)
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        return PieceLabel.Of(Base, takeoff.Job, takeoff.Pieces[0], code ?? SampleJobs.Code).OrThrow();
    }

    private sealed class Told : IProgress<int>
    {
        public List<int> Counts { get; } = [];

        public void Report(int value) => Counts.Add(value);
    }
}
