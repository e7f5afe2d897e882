using CutShop.Paper.Drawings;
using CutShop.Paper.Sheets;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace CutShop.Paper.Labels;

/// <summary>Writes labels as a PDF, one to a page of exactly the label's size.</summary>
public static class LabelPdf
{
    /// <summary>The PDF's bytes.</summary>
    /// <param name="title">The document's title.</param>
    /// <param name="labels">The labels of pieces, at least one.</param>
    /// <param name="stock">The labels in the printer.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="progress">Told after each label how many are done.</param>
    /// <returns>The bytes, or for the first label that does not fit, how large it would have to be.</returns>
    /// <exception cref="ArgumentException">There is no label.</exception>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static Parsed<byte[]> Write(
        string title, IReadOnlyCollection<PieceLabel> labels, LabelStock stock, PaperSettings settings, IProgress<int>? progress = null) =>
        Write(title, labels, label => LabelDrawing.Of(label, stock, settings), stock, progress);

    /// <summary>The same of labels of posts.</summary>
    /// <inheritdoc cref="Write(string, IReadOnlyCollection{PieceLabel}, LabelStock, PaperSettings, IProgress{int}?)"/>
    public static Parsed<byte[]> Write(
        string title, IReadOnlyCollection<PostLabel> labels, LabelStock stock, PaperSettings settings, IProgress<int>? progress = null) =>
        Write(title, labels, label => LabelDrawing.Of(label, stock, settings), stock, progress);

    /// <summary>The same of labels of coils.</summary>
    /// <inheritdoc cref="Write(string, IReadOnlyCollection{PieceLabel}, LabelStock, PaperSettings, IProgress{int}?)"/>
    public static Parsed<byte[]> Write(string title, IReadOnlyCollection<CoilLabel> labels, LabelStock stock, PaperSettings settings) =>
        Write(title, labels, label => LabelDrawing.Of(label, stock, settings), stock, progress: null);

    private static Parsed<byte[]> Write<T>(
        string title, IReadOnlyCollection<T> labels, Func<T, Parsed<Drawing>> draw, LabelStock stock, IProgress<int>? progress)
    {
        ArgumentNullException.ThrowIfNull(labels);
        ArgumentNullException.ThrowIfNull(stock);
        if (labels.Count == 0)
            throw new ArgumentException("A PDF of labels needs at least one.", nameof(labels));
        lock (Lettering.Press)
        {
            using var document = new PdfDocument();
            document.Info.Title = CleanText.Of(title);
            document.Info.Creator = "CutShop";
            var done = 0;
            foreach (var label in labels)
            {
                var drawing = draw(label);
                if (drawing.Reason is { } why)
                    return Parsed.Bad<byte[]>(why);
                var page = document.AddPage();
                page.Width = XUnit.FromMillimeter(stock.WidthMm);
                page.Height = XUnit.FromMillimeter(stock.HeightMm);
                using (var graphics = XGraphics.FromPdfPage(page))
                    PdfDrawing.Draw(graphics, drawing.Value, left: 0, top: 0);
                progress?.Report(++done);
            }
            return Parsed.Good(PdfSheets.Bytes(document));
        }
    }
}
