using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Draws what a rope does at a post, seen from the side.</summary>
internal static class ElevationAtPost
{
    private const int MostTurnsDrawn = 12;

    /// <summary>Adds the bore, knot or turns of a piece at the post of index <paramref name="i"/>; <paramref name="at"/> is the rope's height on the post's centre line.</summary>
    public static void Draw(List<Shape> shapes, Piece piece, int i, Point at, DrawingScale scale, Pen pen, double ropeWidth)
    {
        var here = piece.AtPosts[i - piece.First];
        var half = scale.Mm(here.Post.Across.Inches) / 2;
        var leaves = i == piece.First ? 1 : -1;
        var slope = SlopeAt(piece, i);
        switch (here.Kind)
        {
            case AtPostKind.Stopped or AtPostKind.Corner:
                Bore(shapes, at, slope, leaves * half, 0, ropeWidth);
                shapes.Add(new Polyline([Along(at, slope, leaves * half), at], pen, ropeWidth * 0.6));
                break;
            case AtPostKind.Through:
                Bore(shapes, at, slope, -half, half, ropeWidth);
                shapes.Add(new Polyline([Along(at, slope, -half), Along(at, slope, half)], pen, ropeWidth * 0.6));
                break;
            case AtPostKind.Join:
                Bore(shapes, at, slope, -half, half, ropeWidth);
                shapes.Add(new Polyline([Along(at, slope, leaves * half), at], pen, ropeWidth * 0.6));
                break;
            case AtPostKind.Beside:
                shapes.Add(new Polyline([Along(at, slope, -half), Along(at, slope, half)], pen, ropeWidth));
                break;
            case AtPostKind.Eye:
                var pin = at.Moved(leaves * (half + scale.Mm(here.Treatment.Eye!.Reach.Inches)), 0);
                shapes.Add(new Stroke(at.Moved(leaves * half, 0), pin, Pen.Outline));
                shapes.Add(new Disc(pin, Math.Max(scale.Mm(here.Treatment.Eye.Round.Inches) / 2, 0.6), Pen.Outline, Fill.Bore));
                break;
            case AtPostKind.Knot:
                Bore(shapes, at, slope, -half, half, ropeWidth);
                var knot = Math.Max(ropeWidth * 1.3, 0.9);
                shapes.Add(new Polyline([Along(at, slope, leaves * half), Along(at, slope, -leaves * half)], pen, ropeWidth * 0.6));
                shapes.Add(new Disc(Along(at, slope, -leaves * (half + knot)), knot, Pen.Outline, Fill.Bore));
                break;
            case AtPostKind.Wrap:
                Wrap(shapes, here, at, half, pen, ropeWidth);
                break;
            default:
                throw new InvalidOperationException($"No rope at a post is of kind {here.Kind}.");
        }
    }

    private static void Bore(List<Shape> shapes, Point at, double slope, double from, double to, double bit)
    {
        foreach (var side in new[] { -1, 1 })
            shapes.Add(new Stroke(Along(at, slope, from).Moved(0, side * bit * 0.55), Along(at, slope, to).Moved(0, side * bit * 0.55), Pen.Hidden));
    }

    private static void Wrap(List<Shape> shapes, AtPost here, Point at, double half, Pen pen, double width)
    {
        var turns = Math.Clamp((int)Math.Ceiling(here.Treatment.Turns), 1, MostTurnsDrawn);
        for (var k = 0; k < turns; k++)
        {
            var y = at.Y + (k - (turns - 1) / 2.0) * width * 1.15;
            shapes.Add(new Polyline([new(at.X - half - width / 2, y + width * 0.3), new(at.X + half + width / 2, y - width * 0.3)], pen, width));
        }
    }

    private static Point Along(Point at, double slope, double distance) => new(at.X + distance, at.Y - distance * slope);

    private static double SlopeAt(Piece piece, int i)
    {
        double Slope(int section) => piece.Sections[section].Rise.Inches / piece.Sections[section].Level.Inches;
        var k = i - piece.First;
        return k == 0 ? Slope(0) : k == piece.Sections.Count ? Slope(k - 1) : (Slope(k - 1) + Slope(k)) / 2;
    }
}
