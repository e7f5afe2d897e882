using System.Xml.Linq;
using CutShop.Paper.Tests.Samples;
using CutShop.Testing.Rendering;

namespace CutShop.Paper.Tests.Installing;

public sealed class SitePaperTests
{
    private static readonly JobTakeoff Takeoff = SampleJobs.Takeoff(SampleJobs.LanternQuay);

    private static readonly IReadOnlyList<PieceCode> Codes = [.. Takeoff.Pieces.Select(_ => PieceCode.Draw())];

    [Fact]
    public void Each_line_is_followed_by_its_pieces_and_no_sheet_names_customer_or_day()
    {
        var sheets = Paper(PaperSettings.Default).Sheets().ToList();
        Assert.Equal(["line-A", "line-Pier"], sheets.Where(sheet => sheet.Title == "Line").Select(sheet => sheet.Anchor));
        Assert.Equal(Codes.Select(code => code.Plain).Order(), sheets.Where(sheet => sheet.Title == "Piece").Select(sheet => sheet.Anchor).Order());
        var html = Paper(PaperSettings.Default).Html();
        Assert.DoesNotContain("Lantern Quay", html, StringComparison.Ordinal);
        Assert.DoesNotContain("2027", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_link_of_the_file_s_contents_leads_to_a_sheet_in_it()
    {
        var html = Paper(PaperSettings.Default).Html();
        var body = XDocument.Parse(html[html.IndexOf("<body>", StringComparison.Ordinal)..].Replace("</html>", "", StringComparison.Ordinal));
        var links = body.Descendants("nav").Descendants("a").Select(a => a.Attribute("href")!.Value[1..]).ToList();
        var sheets = body.Descendants("article").Select(article => article.Attribute("id")!.Value).ToList();
        Assert.Equal(Codes.Count + 2, links.Count);
        Assert.Equal(sheets, links.Select(Uri.UnescapeDataString));
    }

    [Fact]
    public void The_pdf_tells_sags_steps_and_bores()
    {
        var words = Poppler.WordsOf(Paper(PaperSettings.Default).Pdf());
        foreach (var said in new[] { "Sag to set", "Order of work", "Posts that the shop drills", "stretch a string where the rope meets the two posts", Codes[0].ToString() })
            Assert.Contains(said, words, StringComparison.Ordinal);
    }

    [Fact]
    public void It_speaks_spanish()
    {
        var words = Poppler.WordsOf(Paper(PaperSettings.Default with { Text = PaperText.Spanish }).Pdf());
        foreach (var said in new[] { "Comba por dar", "Orden del trabajo", "Postes que perfora el taller" })
            Assert.Contains(said, words, StringComparison.Ordinal);
        Assert.DoesNotContain("Order of work", words, StringComparison.Ordinal);
    }

    private static SitePaper Paper(PaperSettings settings) => new(Takeoff, Codes, new HashSet<string>(), settings);
}
