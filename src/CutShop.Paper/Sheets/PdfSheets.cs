using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using PdfSharp.Pdf;

namespace CutShop.Paper.Sheets;

/// <summary>Writes sheets as one PDF, each starting on a new page and going on over as many as it needs.</summary>
public static class PdfSheets
{
    /// <summary>Blank edge of a page in millimetres.</summary>
    public const double Margin = 12;

    /// <summary>The PDF's bytes.</summary>
    /// <param name="title">The document's title.</param>
    /// <param name="sheets">The sheets, in order.</param>
    /// <param name="settings">Page size and words.</param>
    /// <param name="progress">Told after each sheet how many are done.</param>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static byte[] Write(string title, IEnumerable<Sheet> sheets, PaperSettings settings, IProgress<int>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(settings);
        lock (Lettering.Press)
        {
            using var document = new PdfDocument();
            document.Info.Title = CleanText.Of(title);
            document.Info.Creator = "CutShop";
            document.Language = settings.Text["Language"];
            var done = 0;
            foreach (var sheet in sheets)
            {
                WriteSheet(document, sheet, settings);
                progress?.Report(++done);
            }
            return Bytes(document);
        }
    }

    /// <summary>The document as bytes. A PDF cannot be without a page.</summary>
    internal static byte[] Bytes(PdfDocument document)
    {
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    private static void WriteSheet(PdfDocument document, Sheet sheet, PaperSettings settings)
    {
        var pages = new SheetPages(document, sheet, settings);
        foreach (var block in sheet.Blocks)
            PdfBlocks.Write(pages, block);
        pages.Finish();
    }
}
