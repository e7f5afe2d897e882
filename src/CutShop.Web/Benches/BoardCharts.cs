using System.Globalization;
using System.Text;
using CutShop.Shop.Benches;

using static CutShop.Web.Stock.StockWords;

namespace CutShop.Web.Benches;

/// <summary>The board's pictures: how far each job is, and the pieces of each hour. Drawn with classes, coloured by the style sheet.</summary>
internal static class BoardCharts
{
    private const int Width = 600;
    private const int BarHeight = 22;
    private const int HourHeight = 140;
    private const int HourFoot = 18;

    /// <summary>A job as a bar: packed, cut, at the bench, waiting.</summary>
    public static string JobBar(BoardJob job)
    {
        var parts = new[] { ("packed", job.Packed), ("cut", job.Cut), ("bench", job.AtTheBench), ("waiting", job.Waiting) };
        var svg = Start(BarHeight, T["JobBar", job.Job, job.Packed, job.Cut, job.AtTheBench, job.Waiting]);
        var x = 0.0;
        foreach (var (name, count) in parts.Where(part => part.Item2 > 0))
        {
            var width = Width * (double)count / job.Pieces;
            Box(svg, $"bar-{name}", x, 0, width, BarHeight);
            x += width;
        }
        return svg.Append("</svg>").ToString();
    }

    /// <summary>Pieces cut in each hour as columns, the hour of the day under every third.</summary>
    public static string Hours(IReadOnlyList<BoardHour> hours, TimeProvider time)
    {
        var most = Math.Max(1, hours.Max(hour => hour.Pieces));
        var svg = Start(HourHeight + HourFoot, T["HoursChart", hours.Count, hours.Sum(hour => hour.Pieces), most]);
        var step = (double)Width / hours.Count;
        foreach (var (i, hour) in hours.Index())
        {
            var height = (HourHeight - 20.0) * hour.Pieces / most;
            if (hour.Pieces > 0)
            {
                Box(svg, "bar-cut", i * step + 2, HourHeight - height, step - 4, height);
                Text(svg, i * step + step / 2, HourHeight - height - 4, hour.Pieces.ToString(CultureInfo.InvariantCulture));
            }
            if (i % 3 == 0)
                Text(svg, i * step + step / 2, HourHeight + 14, TimeZoneInfo.ConvertTime(hour.From, time.LocalTimeZone).ToString("HH", CultureInfo.InvariantCulture));
        }
        svg.Append(CultureInfo.InvariantCulture, $"<line class=\"axis\" x1=\"0\" y1=\"{HourHeight}\" x2=\"{Width}\" y2=\"{HourHeight}\"/>");
        return svg.Append("</svg>").ToString();
    }

    private static StringBuilder Start(int height, string says) => new StringBuilder()
        .Append(CultureInfo.InvariantCulture, $"<svg class=\"chart\" viewBox=\"0 0 {Width} {height}\" role=\"img\" aria-label=\"")
        .Append(System.Net.WebUtility.HtmlEncode(says)).Append("\">");

    private static void Box(StringBuilder svg, string kind, double x, double y, double width, double height) => svg.Append(
        CultureInfo.InvariantCulture, $"<rect class=\"{kind}\" x=\"{x:0.##}\" y=\"{y:0.##}\" width=\"{width:0.##}\" height=\"{height:0.##}\"/>");

    private static void Text(StringBuilder svg, double x, double y, string text) => svg.Append(
        CultureInfo.InvariantCulture, $"<text x=\"{x:0.##}\" y=\"{y:0.##}\" text-anchor=\"middle\">{text}</text>");
}
