using System.Globalization;
using System.Text;

namespace CutShop.Paper;

/// <summary>
/// Writes a drawing as an inline SVG picture. It takes its colour from the text around it, so it works on light and dark
/// ground, and holds no style attribute and no script.
/// </summary>
public static class SvgDrawing
{
    /// <summary>The picture. Classes are <c>pen-</c> and <c>fill-</c> with the style's name in small letters.</summary>
    public static string Write(Drawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var svg = new StringBuilder(4096);
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"img\" ")
            .Append(CultureInfo.InvariantCulture, $"width=\"{N(drawing.Width)}mm\" height=\"{N(drawing.Height)}mm\" ")
            .Append(CultureInfo.InvariantCulture, $"viewBox=\"0 0 {N(drawing.Width)} {N(drawing.Height)}\" ")
            .Append("fill=\"none\" stroke=\"none\" stroke-linejoin=\"round\" font-family=\"'DejaVu Sans', sans-serif\">")
            .Append("<title>").Append(CleanText.Escaped(drawing.Title)).Append("</title>")
            .Append("<desc>").Append(CleanText.Escaped(drawing.Description)).Append("</desc>\n");
        foreach (var shape in drawing.Shapes)
            Append(svg, shape);
        return svg.Append("</svg>").ToString();
    }

    private static void Append(StringBuilder svg, Shape shape)
    {
        switch (shape)
        {
            case Stroke s:
                svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{N(s.From.X)}\" y1=\"{N(s.From.Y)}\" x2=\"{N(s.To.X)}\" y2=\"{N(s.To.Y)}\"{Look(s.Pen)}/>\n");
                break;
            case Polyline p:
                svg.Append(CultureInfo.InvariantCulture, $"<polyline points=\"{Points(p.Points)}\"{Look(p.Pen, Fill.None, p.Width)}/>\n");
                break;
            case Polygon p:
                svg.Append(CultureInfo.InvariantCulture, $"<polygon points=\"{Points(p.Points)}\"{Look(p.Pen, p.Fill)}/>\n");
                break;
            case Box b:
                svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{N(b.X)}\" y=\"{N(b.Y)}\" width=\"{N(b.Width)}\" height=\"{N(b.Height)}\"{Look(b.Pen, b.Fill)}/>\n");
                break;
            case Disc d:
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{N(d.Centre.X)}\" cy=\"{N(d.Centre.Y)}\" r=\"{N(d.Radius)}\"{Look(d.Pen, d.Fill)}/>\n");
                break;
            case Words w:
                AppendWords(svg, w);
                break;
            default:
                throw new NotSupportedException($"No SVG for {shape.GetType().Name}.");
        }
    }

    private static void AppendWords(StringBuilder svg, Words words)
    {
        var anchor = words.Anchor switch { TextAnchor.Middle => " text-anchor=\"middle\"", TextAnchor.End => " text-anchor=\"end\"", _ => "" };
        var turn = words.TurnDegrees == 0 ? "" : $" transform=\"rotate({N(words.TurnDegrees)} {N(words.At.X)} {N(words.At.Y)})\"";
        var weight = words.Bold ? " font-weight=\"bold\"" : "";
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{N(words.At.X)}\" y=\"{N(words.At.Y)}\" font-size=\"{N(words.Size)}\" fill=\"currentColor\"{anchor}{weight}{turn}>")
            .Append(CleanText.Escaped(words.Text)).Append("</text>\n");
    }

    private static string Look(Pen pen, Fill fill = Fill.None, double? width = null)
    {
        var look = new StringBuilder();
        var classes = (pen, fill) switch
        {
            (_, Fill.None) => $"pen-{Name(pen)}",
            (Pen.None, _) => $"fill-{Name(fill)}",
            _ => $"pen-{Name(pen)} fill-{Name(fill)}",
        };
        look.Append(" class=\"").Append(classes).Append('"');
        if (pen != Pen.None)
        {
            var style = PenStyle.Of(pen);
            look.Append(" stroke=\"currentColor\" stroke-width=\"").Append(N(width ?? style.Width)).Append('"');
            if (style.Dashes.Count > 0)
                look.Append(" stroke-dasharray=\"").AppendJoin(' ', style.Dashes.Select(N)).Append('"');
            if (style.Shade < 1)
                look.Append(" stroke-opacity=\"").Append(N(style.Shade)).Append('"');
        }
        if (fill != Fill.None)
        {
            look.Append(" fill=\"currentColor\"");
            if (PenStyle.ShadeOf(fill) < 1)
                look.Append(" fill-opacity=\"").Append(N(PenStyle.ShadeOf(fill))).Append('"');
        }
        return look.ToString();
    }

    private static string Name<T>(T style) where T : struct, Enum => style.ToString().ToLowerInvariant();

    private static string Points(IReadOnlyList<Point> points) => string.Join(' ', points.Select(p => $"{N(p.X)},{N(p.Y)}"));

    private static string N(double number) => Math.Round(number, 3).ToString("0.###", CultureInfo.InvariantCulture);
}
