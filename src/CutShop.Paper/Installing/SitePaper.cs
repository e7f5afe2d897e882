using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Installing;

/// <summary>
/// A job's site pack for those without signal: each line, how it is set out, its posts to bore where they stand, then its pieces in the order to hang them, as one HTML file or a
/// PDF. It names no customer, no day and no price.
/// </summary>
/// <param name="takeoff">The job's takeoff.</param>
/// <param name="codes">The code of each piece, in the takeoff's order.</param>
/// <param name="drilled">The marks of posts that the shop has drilled.</param>
/// <param name="settings">Units, page and words.</param>
public sealed class SitePaper(JobTakeoff takeoff, IReadOnlyList<PieceCode> codes, IReadOnlySet<string> drilled, PaperSettings settings)
{
    private string Title => $"{settings.Text["JobName", takeoff.Job.Number]}: {settings.Text["SitePack"]}";

    /// <summary>The sheets, in order.</summary>
    public IEnumerable<Sheet> Sheets()
    {
        var standing = PostWork.Of(takeoff).Where(work => work.IsForSite).ToLookup(work => work.Line);
        var bored = takeoff.Bores.Select(bore => bore.Post.Mark).ToHashSet();
        var all = takeoff.Pieces.Zip(codes).ToLookup(pair => pair.First.Line);
        foreach (var line in takeoff.Job.Lines.Where(line => all.Contains(line.Mark)))
        {
            List<(Piece Piece, PieceCode Code)> pieces = [.. Installation.InOrder(all[line.Mark], pair => pair.First)];
            yield return LineSheet.Of(takeoff, line, pieces, drilled, settings);
            if (SetOut.Of(takeoff.Job, line) is { } setOut)
                yield return SetOutSheet.Of(takeoff, setOut, bored, settings);
            if (standing[line.Mark].ToList() is [_, ..] posts)
                yield return SiteDrillSheet.Of(takeoff, line, posts, settings);
            foreach (var (piece, code) in pieces)
                yield return PieceSheet.Of(takeoff, piece, code, settings);
        }
    }

    /// <summary>One HTML file with everything inside it and no script: its contents lead to each piece.</summary>
    public string Html() => HtmlSheets.Document(Title, Sheets(), settings.Text);

    /// <summary>The same as a PDF.</summary>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public byte[] Pdf() => PdfSheets.Write(Title, Sheets(), settings);
}
