using PdfSharp.Drawing;

namespace CutShop.Paper.Drawings;

/// <summary>Puts a drawing on a PDF page, in shades of black. The caller holds <see cref="Lettering.Press"/>.</summary>
internal static class PdfDrawing
{
    private static readonly XSolidBrush?[] Brushes =
        [.. Enum.GetValues<Fill>().Select(fill => fill == Fill.None ? null : new XSolidBrush(Grey(PenStyle.ShadeOf(fill))))];

    /// <summary>Draws at a place given in millimetres from the page's upper left corner.</summary>
    public static void Draw(XGraphics page, Drawing drawing, double left, double top)
    {
        var state = page.Save();
        page.TranslateTransform(PaperUnits.Points(left), PaperUnits.Points(top));
        foreach (var shape in drawing.Shapes)
            Draw(page, shape);
        page.Restore(state);
    }

    private static void Draw(XGraphics page, Shape shape)
    {
        switch (shape)
        {
            case Stroke s:
                page.DrawLine(PenOf(s.Pen)!, At(s.From), At(s.To));
                break;
            case Polyline p:
                page.DrawLines(PenOf(p.Pen, p.Width)!, [.. p.Points.Select(At)]);
                break;
            case Polygon p:
                page.DrawPolygon(PenOf(p.Pen), BrushOf(p.Fill), [.. p.Points.Select(At)], XFillMode.Winding);
                break;
            case Box b:
                page.DrawRectangle(PenOf(b.Pen), BrushOf(b.Fill), PaperUnits.Points(b.X), PaperUnits.Points(b.Y), PaperUnits.Points(b.Width), PaperUnits.Points(b.Height));
                break;
            case Disc d:
                var size = PaperUnits.Points(2 * d.Radius);
                page.DrawEllipse(PenOf(d.Pen), BrushOf(d.Fill), PaperUnits.Points(d.Centre.X - d.Radius), PaperUnits.Points(d.Centre.Y - d.Radius), size, size);
                break;
            case DrawnText w:
                DrawWords(page, w);
                break;
            default:
                throw new NotSupportedException($"No PDF for {shape.GetType().Name}.");
        }
    }

    private static void DrawWords(XGraphics page, DrawnText words)
    {
        var text = CleanText.Of(words.Text);
        if (text.Length == 0)
            return;
        var format = words.Anchor switch
        {
            TextAnchor.Middle => XStringFormats.BaseLineCenter,
            TextAnchor.End => XStringFormats.BaseLineRight,
            _ => XStringFormats.BaseLineLeft,
        };
        var at = At(words.At);
        var state = words.TurnDegrees == 0 ? null : page.Save();
        if (state is not null)
            page.RotateAtTransform(words.TurnDegrees, at);
        page.DrawString(text, Lettering.Font(words.Size, words.Bold), XBrushes.Black, at, format);
        if (state is not null)
            page.Restore(state);
    }

    private static XPoint At(Point point) => new(PaperUnits.Points(point.X), PaperUnits.Points(point.Y));

    private static XPen? PenOf(Pen pen, double? width = null)
    {
        if (pen == Pen.None)
            return null;
        var style = PenStyle.Of(pen);
        var mm = width ?? style.Width;
        var made = new XPen(Grey(style.Shade), PaperUnits.Points(mm)) { LineJoin = XLineJoin.Round };
        if (style.Dashes.Count > 0)
            made.DashPattern = [.. style.Dashes.Select(dash => dash / mm)];
        return made;
    }

    private static XSolidBrush? BrushOf(Fill fill) => Brushes[(int)fill];

    private static XColor Grey(double shade) => XColor.FromGrayScale(1 - shade);
}
