using System.Globalization;
using System.Text;

namespace CutShop.Paper.Drawings;

/// <summary>
/// Writes a drawing as an inline SVG picture. It takes its colour from the text around it, so it works on light and dark
/// ground, and holds no style attribute and no script.
/// </summary>
public static class SvgDrawing
{
    private static readonly Dictionary<Pen, string> PenClasses = Classes<Pen>("pen-");
    private static readonly Dictionary<Fill, string> FillClasses = Classes<Fill>("fill-");

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
                svg.Append(CultureInfo.InvariantCulture, $"<line x1=\"{N(s.From.X)}\" y1=\"{N(s.From.Y)}\" x2=\"{N(s.To.X)}\" y2=\"{N(s.To.Y)}\"");
                AppendLook(svg, s.Pen).Append("/>\n");
                break;
            case Polyline p:
                AppendPoints(svg.Append("<polyline"), p.Points);
                AppendLook(svg, p.Pen, Fill.None, p.Width).Append("/>\n");
                break;
            case Polygon p:
                AppendPoints(svg.Append("<polygon"), p.Points);
                AppendLook(svg, p.Pen, p.Fill).Append("/>\n");
                break;
            case Box b:
                svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{N(b.X)}\" y=\"{N(b.Y)}\" width=\"{N(b.Width)}\" height=\"{N(b.Height)}\"");
                AppendLook(svg, b.Pen, b.Fill).Append("/>\n");
                break;
            case Disc d:
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{N(d.Centre.X)}\" cy=\"{N(d.Centre.Y)}\" r=\"{N(d.Radius)}\"");
                AppendLook(svg, d.Pen, d.Fill).Append("/>\n");
                break;
            case DrawnText w:
                AppendWords(svg, w);
                break;
            default:
                throw new NotSupportedException($"No SVG for {shape.GetType().Name}.");
        }
    }

    private static void AppendWords(StringBuilder svg, DrawnText words)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{N(words.At.X)}\" y=\"{N(words.At.Y)}\" font-size=\"{N(words.Size)}\" fill=\"currentColor\"");
        svg.Append(words.Anchor switch { TextAnchor.Middle => " text-anchor=\"middle\"", TextAnchor.End => " text-anchor=\"end\"", _ => "" });
        if (words.Bold)
            svg.Append(" font-weight=\"bold\"");
        if (words.TurnDegrees != 0)
            svg.Append(CultureInfo.InvariantCulture, $" transform=\"rotate({N(words.TurnDegrees)} {N(words.At.X)} {N(words.At.Y)})\"");
        svg.Append('>').Append(CleanText.Escaped(words.Text)).Append("</text>\n");
    }

    private static void AppendPoints(StringBuilder svg, IReadOnlyList<Point> points)
    {
        svg.Append(" points=\"");
        for (var i = 0; i < points.Count; i++)
            svg.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? "" : " ")}{N(points[i].X)},{N(points[i].Y)}");
        svg.Append('"');
    }

    private static StringBuilder AppendLook(StringBuilder svg, Pen pen, Fill fill = Fill.None, double? width = null)
    {
        svg.Append(" class=\"").Append((pen, fill) switch
        {
            (_, Fill.None) => PenClasses[pen],
            (Pen.None, _) => FillClasses[fill],
            _ => $"{PenClasses[pen]} {FillClasses[fill]}",
        }).Append('"');
        if (pen != Pen.None)
        {
            var style = PenStyle.Of(pen);
            svg.Append(CultureInfo.InvariantCulture, $" stroke=\"currentColor\" stroke-width=\"{N(width ?? style.Width)}\"");
            if (style.Dashes.Count > 0)
                svg.Append(" stroke-dasharray=\"").AppendJoin(' ', style.Dashes.Select(N)).Append('"');
            if (style.Shade < 1)
                svg.Append(CultureInfo.InvariantCulture, $" stroke-opacity=\"{N(style.Shade)}\"");
        }
        if (fill != Fill.None)
        {
            svg.Append(" fill=\"currentColor\"");
            if (PenStyle.ShadeOf(fill) < 1)
                svg.Append(CultureInfo.InvariantCulture, $" fill-opacity=\"{N(PenStyle.ShadeOf(fill))}\"");
        }
        return svg;
    }

    private static Dictionary<T, string> Classes<T>(string before) where T : struct, Enum =>
        Enum.GetValues<T>().ToDictionary(style => style, style => before + style.ToString().ToLowerInvariant());

    private static SvgNumber N(double number) => new(number);
}
