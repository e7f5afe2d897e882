using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Draws a post cut through its bores: from above, and from the side where a bore is raked. The line arrives from the left.</summary>
internal static class PostSections
{
    /// <summary>Width of one section in millimetres.</summary>
    public const double Width = 41;

    private const double WidestPost = 20.2;
    private const double CentreDown = 25;
    private const double CaptionDown = 47;
    private const double CaptionLine = 3.6;
    private const double SmallSize = 2.7;

    /// <summary>The scale of a post's sections.</summary>
    public static DrawingScale ScaleOf(Post post) => DrawingScale.Fitting(post.Across.Inches, WidestPost);

    /// <summary>Draws sections beside each other from their upper left corner.</summary>
    /// <returns>How tall they came out with their captions, in millimetres.</returns>
    public static double Draw(List<Shape> shapes, PostWork work, IReadOnlyList<PostCell> cells, Point corner, PaperSettings settings)
    {
        var (text, scale) = (settings.Text, ScaleOf(work.Post));
        var most = 0;
        foreach (var (i, cell) in cells.Index())
        {
            var centre = corner.Moved((i + 0.5) * Width, CentreDown);
            var captions = cell.FromSide
                ? SectionFromSide.Draw(shapes, work, cell, centre, scale, settings)
                : SectionFromAbove.Draw(shapes, work, cell.Bores, centre, scale, settings);
            var row = cell.Rows.Length <= 18 ? cell.Rows : cell.Rows[..17] + "…";
            Say(cell.FromSide ? text["FromSide", row] : text["FromAbove", row], 3, bold: true);
            most = Math.Max(most, captions.Count);
            foreach (var (line, caption) in captions.Index())
                Say(caption, CaptionDown + line * CaptionLine, bold: false);

            void Say(string words, double down, bool bold)
            {
                var size = Math.Min(SmallSize, (Width - 1) / (bold ? Dimension.GuessBoldWidth(words, 1) : Dimension.GuessWidth(words, 1)));
                shapes.Add(new DrawnText(new(centre.X, corner.Y + down), words, size, TextAnchor.Middle, bold));
            }
        }
        return CaptionDown + ((most - 1) * CaptionLine) + 0.9;
    }

    /// <summary>Points to a neighbour of the post and writes its mark.</summary>
    public static void Neighbour(List<Shape> shapes, string post, Point way, Point centre, double half)
    {
        var at = centre.Toward(way, half + 2.5);
        var side = new Point(-way.Y, way.X);
        var tip = at.Toward(way, 3);
        shapes.Add(new Stroke(at, tip, Pen.Outline));
        shapes.Add(new Polygon([tip, tip.Toward(way, -1.6).Toward(side, 0.9), tip.Toward(way, -1.6).Toward(side, -0.9)], Pen.None, Fill.Ink));
        var mark = post.Length <= 8 ? post : post[..7] + "…";
        var words = tip.Toward(way, 0.8);
        var anchor = way.X < -0.5 ? TextAnchor.End : way.X > 0.5 ? TextAnchor.Start : TextAnchor.Middle;
        var drop = way.Y > 0.5 ? 3 : way.Y < -0.5 ? 0 : 1.2;
        var room = Math.Abs(way.X) > 0.5 ? Width / 2 - half - 7.3 : Width / 2;
        shapes.Add(new DrawnText(words.Moved(0, drop), mark, Math.Min(3.2, room / Dimension.GuessBoldWidth(mark, 1)), anchor, Bold: true));
    }
}
