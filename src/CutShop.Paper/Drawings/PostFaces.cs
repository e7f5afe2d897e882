using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>Draws a post seen from its drilled faces, to scale, each hole's centre measured from foot and top.</summary>
internal static class PostFaces
{
    private const double Head = 20;
    private const double Tallest = 100;
    private const double LabelRoom = 16;
    private const double ThreeLines = 9.6;
    private const double OneLine = 3.3;

    public static Drawing Draw(PostWork work, IReadOnlyList<Drilling> drillings, IReadOnlyList<Face> faces, PaperSettings settings)
    {
        var text = settings.Text;
        var cell = Elevation.PaperWidth / Math.Max(faces.Count, 3);
        var byHeight = DrawingScale.Fitting(work.Post.Height.Inches, Tallest, 2);
        var byWidth = DrawingScale.Fitting(work.Post.Across.Inches, cell - 2 * LabelRoom - 1, 2);
        var scale = byHeight.OneTo > byWidth.OneTo ? byHeight : byWidth;

        var title = text.FacesTitle(work.Post.Mark, scale.OneTo);
        var holes = faces.Select(face => HolesOf(work, drillings, face)).ToList();
        var most = holes.Max(h => h.Count);
        var tall = Math.Clamp(most * ThreeLines > 160 ? most * OneLine : most * ThreeLines, scale.Mm(work.Post.Height.Inches), 190);
        var shapes = new List<Shape> { new Words(new(0, 5), title, 3.4, Bold: true) };
        for (var i = 0; i < faces.Count; i++)
            DrawFace(shapes, work, faces[i], holes[i], new Point((i + 0.5) * cell, Head), cell, tall, scale, settings);
        return new(title, text.FacesDescription(string.Join("; ", faces.Select(text.FaceName))), Elevation.PaperWidth, Head + tall + 6, shapes);
    }

    private static List<Hole> HolesOf(PostWork work, IReadOnlyList<Drilling> drillings, Face face) =>
    [
        .. drillings.Where(d => d.Operation.Face == face)
            .Select(d => new Hole(d.Bore.Row.Mark, d.Mark, d.Bore.Bit, IsPilot: false))
            .Concat(work.Fixings.Where(f => f.Face == face)
                .Select(f => new Hole(f.Row.Mark, work.MarkHeight(f), Length.Max(f.Pilot, f.Counterbore), IsPilot: true)))
            .OrderByDescending(hole => hole.Height),
    ];

    private static void DrawFace(
        List<Shape> shapes, PostWork work, Face face, List<Hole> holes, Point top, double cell, double tall, DrawingScale scale, PaperSettings settings)
    {
        var post = work.Post;
        var (half, height) = (scale.Mm(post.Across.Inches) / 2, scale.Mm(post.Height.Inches));
        var name = settings.Text.FaceName(face);
        var size = Math.Min(3.2, (cell - 3) / Math.Max(Dimension.GuessWidth(name, 1), 1));
        shapes.Add(new Words(top.Moved(0, -9.5), name, size, TextAnchor.Middle, Bold: true));
        shapes.Add(new Words(top.Moved(-half - 3, -4), settings.Text.FromTop, 2.6, TextAnchor.End));
        shapes.Add(new Words(top.Moved(half + 3, -4), settings.Text.FromFoot, 2.6));
        shapes.Add(new Box(top.X - half, top.Y, 2 * half, height, Pen.Outline, Fill.Wood));
        shapes.Add(new Stroke(top.Moved(0, -2), top.Moved(0, height + 2), Pen.Axis));
        shapes.Add(new Stroke(top.Moved(-half - 8, height), top.Moved(half + 8, height), Pen.Ground));
        foreach (var hole in holes)
            DrawHole(shapes, hole, top.Moved(0, scale.Mm((post.Height - hole.Height).Inches)), half, scale);
        DrawHeights(shapes, post, holes, top, half, cell, tall, scale, settings);
    }

    private static void DrawHole(List<Shape> shapes, Hole hole, Point centre, double half, DrawingScale scale)
    {
        var radius = Math.Max(scale.Mm(hole.Across.Inches) / 2, hole.IsPilot ? 0.5 : 1);
        shapes.Add(new Disc(centre, radius, Pen.Outline, hole.IsPilot ? Fill.None : Fill.Bore));
        shapes.Add(new Stroke(centre.Moved(-half, 0), centre.Moved(half, 0), Pen.Thin));
        shapes.Add(new Stroke(centre.Moved(0, -radius - 1), centre.Moved(0, radius + 1), Pen.Thin));
    }

    private static void DrawHeights(
        List<Shape> shapes, Post post, List<Hole> holes, Point top, double half, double cell, double tall, DrawingScale scale, PaperSettings settings)
    {
        var figures = settings.Figures;
        var centres = holes.Select(hole => top.Y + scale.Mm((post.Height - hole.Height).Inches)).ToList();
        var isRoomy = holes.Count * ThreeLines <= tall + 1;
        var places = Spread.Apart(centres, isRoomy ? ThreeLines : OneLine, top.Y + 2, top.Y + tall - 2);
        var size = holes.Count < 2 ? 2.6 : Math.Min(2.6, (places[^1] - places[0]) / (holes.Count - 1) * 0.8);
        for (var i = 0; i < holes.Count; i++)
        {
            var (hole, y) = (holes[i], places[i]);
            var mark = hole.Row.Length <= 9 ? hole.Row : hole.Row[..8] + "…";
            var name = hole.IsPilot ? settings.Text.ScrewAt(mark) : mark;
            var nameSize = Math.Min(size, (cell / 2 - half - 4) / Dimension.GuessBoldWidth(name, 1));
            foreach (var side in new[] { -1, 1 })
            {
                var (edge, anchor) = (top.X + side * half, side < 0 ? TextAnchor.End : TextAnchor.Start);
                shapes.Add(new Polyline([new(edge, centres[i]), new(edge + side * 0.8, centres[i]), new(edge + side * 2.4, y)], Pen.Thin));
                var figure = side < 0 ? post.Height - hole.Height : hole.Height;
                var at = new Point(edge + side * 3, y);
                if (isRoomy)
                {
                    if (side > 0)
                        shapes.Add(new Words(at.Moved(0, -2), name, nameSize, anchor, Bold: true));
                    shapes.Add(new Words(at.Moved(0, size * 0.4), figures.Lead(figure), Fitting(figures.Lead(figure), size, cell / 2 - half - 4), anchor));
                    shapes.Add(new Words(at.Moved(0, size * 0.4 + 2.7), figures.Other(figure), Fitting(figures.Other(figure), size * 0.9, cell / 2 - half - 4), anchor));
                }
                else
                {
                    shapes.Add(new Words(at.Moved(0, size * 0.4), side > 0 ? $"{name} {figures.Lead(figure)}" : figures.Lead(figure), size, anchor));
                }
            }
        }
    }

    /// <summary>The letters' size wanted, or the largest at which the text keeps within its width.</summary>
    private static double Fitting(string text, double size, double width) => Math.Min(size, width / Dimension.GuessWidth(text, 1));

    private sealed record Hole(string Row, Length Height, Length Across, bool IsPilot);
}
