using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Paper.Labels;

/// <summary>Draws the label of a piece, a post or a coil: the square code at the left, and beside it what a person needs when the phone is dead.</summary>
public static class LabelDrawing
{
    private const double EdgeMm = 2;
    private const double ArrowMm = 11;

    /// <summary>The label at its exact size. Text that is too long gets smaller, then ends in an ellipsis.</summary>
    /// <returns>The drawing, or how large the label would have to be.</returns>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static Parsed<Drawing> Of(PieceLabel label, LabelStock stock, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        return Of(label.Address, Lines(label, settings), text["LabelTitle", label.Code.ToString()], text["LabelDescription", label.Address], stock, []);
    }

    /// <summary>The same of a coil.</summary>
    /// <returns>The drawing, or how large the label would have to be.</returns>
    /// <exception cref="FontMissingException">The font is not on this machine.</exception>
    public static Parsed<Drawing> Of(CoilLabel label, LabelStock stock, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        return Of(label.Address, Lines(label, settings), text["CoilLabelTitle", label.Mark], text["CoilLabelDescription", label.Address], stock, []);
    }

    /// <summary>The label of a post, with an arrow that points up.</summary>
    /// <inheritdoc cref="Of(PieceLabel, LabelStock, PaperSettings)"/>
    public static Parsed<Drawing> Of(PostLabel label, LabelStock stock, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(stock);
        ArgumentNullException.ThrowIfNull(settings);
        return Of(
            label.Address,
            Lines(label, settings),
            settings.Text["PostLabelTitle", label.Work.Post.Mark],
            settings.Text["PostLabelDescription", label.Address],
            stock,
            Arrow(stock, settings.Text["Up"]));
    }

    private static Parsed<Drawing> Of(
        string address, LabelLine[] lines, string title, string description, LabelStock stock, IReadOnlyList<Shape> atTheRight)
    {
        ArgumentNullException.ThrowIfNull(stock);
        var code = QrModules.Of(address, stock.Correction);
        var place = QrPlace.Of(code, stock);
        if (place.Reason is { } why)
            return Parsed.Bad<Drawing>(why);
        var room = stock.WidthMm - EdgeMm - (atTheRight.Count == 0 ? 0 : ArrowMm + EdgeMm);
        List<Shape> shapes = [.. QrDrawing.Of(code, place.Value), .. atTheRight];
        AddText(shapes, lines, place.Value, room, stock);
        return Parsed.Good(new Drawing(title, description, stock.WidthMm, stock.HeightMm, shapes));
    }

    /// <summary>An arrow at the right edge, as tall as the label.</summary>
    private static IReadOnlyList<Shape> Arrow(LabelStock stock, string up)
    {
        var (middle, foot) = (stock.WidthMm - EdgeMm - ArrowMm / 2, stock.HeightMm - EdgeMm - 4);
        return
        [
            new Polygon(
                [
                    new(middle, EdgeMm),
                    new(middle + ArrowMm / 2, EdgeMm + ArrowMm),
                    new(middle + ArrowMm / 5, EdgeMm + ArrowMm),
                    new(middle + ArrowMm / 5, foot),
                    new(middle - ArrowMm / 5, foot),
                    new(middle - ArrowMm / 5, EdgeMm + ArrowMm),
                    new(middle - ArrowMm / 2, EdgeMm + ArrowMm),
                ],
                Pen.None,
                Fill.Ink),
            new DrawnText(new(middle, stock.HeightMm - EdgeMm), up, Math.Min(3.6, ArrowMm / Dimension.GuessBoldWidth(up, 1)), TextAnchor.Middle, Bold: true),
        ];
    }

    private static void AddText(List<Shape> shapes, LabelLine[] lines, QrPlace place, double right, LabelStock stock)
    {
        var width = right - place.RightMm;
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
            .. Lifting.TakesTwo(piece) ? [new(text["TwoPeopleLift", text.Pounds(piece.WeightLb)], 3.6, 4.8, Bold: true)] : (LabelLine[])[],
            new(label.Code.ToString(), 5.2, 7.2, Bold: true),
            new(label.IsCancelled ? text["CancelledJobName", label.JobNumber] : text["JobName", label.JobNumber], 3.6, 4.8, Bold: true),
            new(text["LabelPlace", piece.Line, piece.Row], 3.4, 4.6),
            new($"{piece.From.Mark} → {piece.To.Mark}", 4.4, 6, Bold: true),
            new(RopeWords.Of(piece, settings), 3.2, 5),
            new(figures.LongLead(piece.Cut), 5.2, 6, Bold: true),
            new(figures.LongOther(piece.Cut), 3.2, 5),
            new(End(piece.AtPosts[0]), 2.9, 3.9, piece.AtPosts[0].Kind == AtPostKind.Eye),
            new(End(piece.AtPosts[^1]), 2.9, 3.2, piece.AtPosts[^1].Kind == AtPostKind.Eye),
            .. text.WettingOnLabel(piece, figures.Lead) is { } wetting ? [new(wetting, 2.9, 3.9, Bold: true)] : (LabelLine[])[],
        ];

        string End(AtPost at) => at.Kind == AtPostKind.Eye ? text["UnhookHere", at.Post.Mark] : $"{at.Post.Mark}: {text.AtPost(at)}, {text[piece.Rope.IsNatural ? "Bound" : "Sealed"]}";
    }

    private static LabelLine[] Lines(CoilLabel label, PaperSettings settings)
    {
        var (text, figures) = (settings.Text, settings.Figures);
        return
        [
            new(label.Mark, 11, 13.5, Bold: true),
            new(RopeWords.Of(new Rope(label.Kind.Material, label.Kind.Diameter), settings), 4, 5.4, Bold: true),
            new(label.Kind.Colour.Length == 0 ? label.Kind.Construction : $"{label.Kind.Construction}, {label.Kind.Colour}", 3.4, 4.8),
            .. label.Kind.IsPreshrunk ? [new(text["PreshrunkCoil"], 4.4, 6, Bold: true)] : (LabelLine[])[],
            new(text["LabelLot", label.Lot], 4.4, 6, Bold: true),
            new(label.From is { } from ? text["LabelOffcut", from] : text["LabelFullCoil"], 3.4, 4.8),
            new(figures.LongLead(label.Whole), 4.4, 5.6, Bold: true),
            new(figures.LongOther(label.Whole), 3.2, 5),
        ];
    }

    private static LabelLine[] Lines(PostLabel label, PaperSettings settings)
    {
        var text = settings.Text;
        return
        [
            new(label.Work.Post.Mark, 12, 16, Bold: true),
            new(label.IsCancelled ? text["CancelledJobName", label.JobNumber] : text["JobName", label.JobNumber], 4.6, 6.4, Bold: true),
            new(text["LabelLine", label.Work.Line], 4, 6.6),
            new(label.ThisFace is { } faced ? text["LabelThisFace", faced] : "", 4.8, 8, Bold: true),
            new(label.OtherFace is { } other ? text[other.Key, other.Neighbour] : "", 3.6, 6),
        ];
    }

    private sealed record LabelLine(string Text, double Size, double Step, bool Bold = false);
}
