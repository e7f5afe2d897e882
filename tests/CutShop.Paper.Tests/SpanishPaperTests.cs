using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using CutShop.Paper.Tests.Samples;

namespace CutShop.Paper.Tests;

public sealed partial class SpanishPaperTests
{
    private static readonly PaperSettings Spanish = PaperSettings.Default with { Text = PaperText.Spanish };

    /// <summary>Words that are the same in both languages.</summary>
    private static readonly string[] Same = ["No", "SizeOfPost", "Total", "Manila", "Sisal"];

    [Fact]
    public void Every_word_of_paper_and_takeoff_is_another_in_spanish() =>
        Assert.Equal(Same.Order(), WordsOf(typeof(PaperText).Assembly, typeof(PaperWords).FullName!).Concat(WordsOf(typeof(Sentence).Assembly, typeof(TakeoffWords).FullName!)).Order());

    [Fact]
    public void A_sheet_in_spanish_holds_no_english_sentence()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        Assert.NotEmpty(takeoff.Warnings);
        var paper = new JobPaper(takeoff, [.. takeoff.Pieces.Select(_ => SampleJobs.Code)], new Dictionary<string, CutPlace>(), Spanish) { IsCancelled = true };
        var quote = new QuoteFigures(7, new(2026, 11, 25), new(2026, 12, 25), [new("Cuerda", "20 ft", "2.10", "42.00")], "42.00", "8 %", "3.36", "45.36");
        var coils = new[] { new CoilCuts("C-1", "L-9", CoilKind.Full, Length.FromInches(1200), [new("K1", Length.FromInches(90), Length.FromInches(2), Length.FromInches(92))], Length.FromInches(1108), IsKept: true) };
        Sheet[] sheets =
        [
            .. Enum.GetValues<PaperKind>().SelectMany(paper.Sheets),
            .. new SitePaper(takeoff, [.. takeoff.Pieces.Select(_ => SampleJobs.Code)], new HashSet<string>(), Spanish).Sheets(),
            QuoteSheet.Of("Muelle", "Calle 1", quote, takeoff, Spanish),
            CutPlanSheet.Of(new(3, "1 1/2 in", "draft", "–"), coils, new Dictionary<string, PlanPieceName> { ["K1"] = new("K1", "LQ-1042", "A-top-1", IsCancelled: true) }, Spanish),
            PackingList.Of(takeoff.Job, [.. takeoff.Pieces.Select((piece, i) => new PackedPiece(piece, SampleJobs.Code, piece.Cut, "L-9", IsPacked: i > 0))], [new("A1", IsDrilled: true, IsIn: true), new("A2", IsDrilled: false, IsIn: false)], [new(new(ScrewKind.DeckScrew, "#10", Length.Inch * 3), 8, 1, IsIn: false)], [new(new(HardwareKind.Hook, Length.Inch, Length.Inch), 2, IsIn: false)], "https://shop.example/s/1", Spanish),
        ];
        Assert.All(sheets, sheet => Assert.DoesNotMatch(English(), Plain(HtmlSheets.Article(sheet))));
        Assert.Matches(English(), Plain(HtmlSheets.Article(JobSummary.Of(takeoff, PaperSettings.Default))));
    }

    [Fact]
    public void A_gate_beside_a_drop_near_salt_is_all_in_spanish_too()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.Gate);
        var salt = Spanish with { IsForSalt = true };
        PieceCode[] codes = [.. takeoff.Pieces.Select(_ => SampleJobs.Code)];
        Sheet[] sheets =
        [
            .. Enum.GetValues<PaperKind>().SelectMany(new JobPaper(takeoff, codes, new Dictionary<string, CutPlace>(), salt).Sheets),
            .. new SitePaper(takeoff, codes, new HashSet<string>(), salt).Sheets(),
        ];
        Assert.All(sheets, sheet => Assert.DoesNotMatch(English(), Plain(HtmlSheets.Article(sheet))));
    }

    [Fact]
    public void Warnings_on_a_summary_are_said_in_spanish()
    {
        var takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);
        var rows = JobSummary.Of(takeoff, Spanish).Blocks.OfType<TableBlock>().Single(table => table.Caption == "Mirar esto antes de cortar").Rows;
        Assert.Equal(Warning.Alike(takeoff.Warnings).Select(alike => alike.Says.In(CultureInfo.GetCultureInfo("es"))), rows.Select(row => row[1]));
    }

    [Fact]
    public void The_reason_for_a_bit_is_said_in_spanish_whatever_hangs_on_the_rack()
    {
        var (thin, thick) = (Length.FromSixtyFourths(80), Length.FromSixtyFourths(128));
        BitRack[] racks = [new([]), .. Enum.GetValues<BitKind>().Select(kind => new BitRack([new(kind, thin), new(kind, thick)]))];
        var choices = racks.SelectMany(rack => new[] { rack.Choose(thin, thin), rack.Choose(thick, thick) }).DistinctBy(chosen => chosen.Choice).ToList();
        Assert.Equal(3 + 1, choices.Count); // each kind of bit, and that no bit is there
        Assert.All(choices, chosen => Assert.Matches("la mejor|en el estante", PaperText.Spanish[chosen.Choice.ReasonFor(chosen.Bit)]));
    }

    [Fact]
    public void Every_screw_of_the_catalogue_has_its_spanish_name_with_the_same_size_and_length()
    {
        Assert.All(ShopTables.Standard.Screws.Screws, screw =>
        {
            var said = PaperText.Spanish.ScrewName(screw.Name, "");
            Assert.Matches(screw.Kind == ScrewKind.LagScrew ? "^tirafondo inoxidable " : "^tornillo para terraza, inoxidable, ", said);
            Assert.EndsWith($" {screw.Size} x {LengthText.Inches(screw.Length)}", said, StringComparison.Ordinal);
        });
    }

    /// <summary>The keys whose word is the same in both languages.</summary>
    private static IEnumerable<string> WordsOf(System.Reflection.Assembly assembly, string name)
    {
        var words = new ResourceManager(name, assembly);
        var spanish = words.GetResourceSet(CultureInfo.GetCultureInfo("es"), createIfNotExists: true, tryParents: false)!;
        return words.GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>()
            .Where(word => (string)word.Value! == spanish.GetString((string)word.Key)).Select(word => (string)word.Key);
    }

    private static string Plain(string html) => Markup().Replace(html, " ");

    /// <summary>Small words that every English sentence has and no Spanish one.</summary>
    [GeneratedRegex(@"\b(the|of|and|with|from|not|is|are|this|post|rope|bore|deep)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex English();

    [GeneratedRegex("<[^>]*>", RegexOptions.None, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex Markup();
}
