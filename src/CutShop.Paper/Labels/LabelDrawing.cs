using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Labels;

/// <summary>Draws the label of a piece or a coil: the square code at the left, and beside it what a person needs when the phone is dead.</summary>
public static class LabelDrawing
{
    private const double EdgeMm = 2;

    /// <summary>The label at its exact size. Text that is too long gets smaller, then ends in an ellipsis.</summary>
    /// <returns>The drawing, or how large the label would have to be.</returns>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static Parsed<Drawing> Of(PieceLabel label, LabelStock stock, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        return Of(label.Address, text["LabelTitle", label.Code.ToString()], text["LabelDescription", label.Address], Lines(label, settings), stock);
    }

    /// <summary>The same of a coil.</summary>
    /// <returns>The drawing, or how large the label would have to be.</returns>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static Parsed<Drawing> Of(CoilLabel label, LabelStock stock, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        return Of(label.Address, text["CoilLabelTitle", label.Mark], text["CoilLabelDescription", label.Address], Lines(label, settings), stock);
    }

    private static Parsed<Drawing> Of(string address, string title, string description, LabelLine[] lines, LabelStock stock)
    {
        ArgumentNullException.ThrowIfNull(stock);
        var code = QrModules.Of(address, stock.Correction);
        var place = QrPlace.Of(code, stock);
        if (place.Reason is { } why)
            return Parsed.Bad<Drawing>(why);
        var shapes = QrDrawing.Of(code, place.Value).ToList();
        AddText(shapes, lines, place.Value, stock);
        return Parsed.Good(new Drawing(title, description, stock.WidthMm, stock.HeightMm, shapes));
    }

    private static void AddText(List<Shape> shapes, LabelLine[] lines, QrPlace place, LabelStock stock)
    {
        var width = stock.WidthMm - EdgeMm - place.RightMm;
        // Sizes below are for a 2 in label; a smaller one shrinks them all alike.
        var scale = (stock.HeightMm - 2 * EdgeMm) / lines.Sum(line => line.Step);
        var y = EdgeMm;
        foreach (var line in lines)
        {
            var (text, size) = Lettering.Fit(line.Text, width, line.Size * scale, line.Size * scale * 0.72, line.Bold);
            shapes.Add(new DrawnText(new(place.RightMm, y + line.Size * scale), text, size, Bold: line.Bold));
            y += line.Step * scale;
        }
    }

    private static LabelLine[] Lines(PieceLabel label, PaperSettings settings)
    {
        var (text, figures, piece) = (settings.Text, settings.Figures, label.Piece);
        return
        [
            new(label.Code.ToString(), 5.2, 7.2, Bold: true),
            new(label.IsCancelled ? text["CancelledJobName", label.JobNumber] : text["JobName", label.JobNumber], 3.6, 4.8, Bold: true),
            new(text["LabelPlace", piece.Line, piece.Row], 3.4, 4.6),
            new($"{piece.From.Mark} → {piece.To.Mark}", 4.4, 6, Bold: true),
            new(RopeWords.Of(piece.Rope, settings), 3.2, 5),
            new(figures.LongLead(piece.Cut), 5.2, 6, Bold: true),
            new(figures.LongOther(piece.Cut), 3.2, 5),
            new(End(piece.AtPosts[0]), 2.9, 3.9),
            new(End(piece.AtPosts[^1]), 2.9, 3.2),
        ];

        string End(AtPost at) => $"{at.Post.Mark}: {text.AtPost(at)}, {text[piece.Rope.IsNatural ? "Bound" : "Sealed"]}";
    }

    private static LabelLine[] Lines(CoilLabel label, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return
        [
            new(label.Mark, 11, 13.5, Bold: true),
            new(RopeWords.Of(label.Rope, settings), 4, 5.4, Bold: true),
            new(label.Construction, 3.4, 4.8),
            new(text["LabelLot", label.Lot], 4.4, 6, Bold: true),
            new(label.From is { } from ? text["LabelOffcut", from] : text["LabelFullCoil"], 3.4, 4.8),
            new(figures.LongLead(label.Whole), 4.4, 5.6, Bold: true),
            new(figures.LongOther(label.Whole), 3.2, 5),
        ];
    }

    private sealed record LabelLine(string Text, double Size, double Step, bool Bold = false);
}
