using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Draws what a rope does at a post, seen from the side.</summary>
internal static class ElevationAtPost
{
    private const int MostTurnsDrawn = 12;

    /// <summary>Adds the bore, knot, eye or turns of a piece at the station <paramref name="i"/>; <paramref name="at"/> is the rope's height on the post's centre line.</summary>
    /// <param name="shapes">Where to.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="i">A station of it.</param>
    /// <param name="bore">Its bore there, or null.</param>
    /// <param name="at">The rope's height on the post's centre line.</param>
    /// <param name="scale">The drawing's scale.</param>
    /// <param name="pen">What the rope is drawn with.</param>
    /// <param name="ropeWidth">How wide it is drawn.</param>
    public static void Draw(List<Shape> shapes, Piece piece, int i, BoreFromSide? bore, Point at, DrawingScale scale, Pen pen, double ropeWidth)
    {
        var here = piece.AtPosts[i - piece.First];
        var half = scale.Mm(here.Post.Across.Inches) / 2;
        var leaves = i == piece.First ? 1 : -1;
        var slope = bore?.Slope ?? SlopeAt(piece, i);
        switch (here.Kind)
        {
            case AtPostKind.Stopped or AtPostKind.Corner:
                DrawBore(leaves * half, 0);
                Inside(leaves * half, 0);
                break;
            case AtPostKind.Through:
                DrawBore(-half, half);
                Inside(-half, half);
                break;
            case AtPostKind.Join:
                DrawBore(-half, half);
                Inside(leaves * half, 0);
                // Where both ends meet, and the screw of this one.
                shapes.Add(new Stroke(at.Moved(0, -ropeWidth * 0.55), at.Moved(0, ropeWidth * 0.55), Pen.Outline));
                shapes.Add(new Disc(Along(at, slope, leaves * half / 2), Math.Max(half / 16, 0.25), Pen.None, Fill.Ink));
                break;
            case AtPostKind.Beside:
                shapes.Add(new Polyline([Along(at, slope, -half), Along(at, slope, half)], pen, ropeWidth));
                shapes.Add(new Stroke(at.Moved(0, -ropeWidth * 0.8), at.Moved(0, ropeWidth * 0.8), Pen.Outline));
                break;
            case AtPostKind.Eye:
                // It is drawn with the section that it ends.
                break;
            case AtPostKind.Knot:
                DrawBore(-half, half);
                var knot = Math.Max(ropeWidth * 1.3, 0.9);
                Inside(leaves * half, -leaves * half);
                shapes.Add(new Disc(Along(at, slope, -leaves * (half + knot)), knot, Pen.Outline, Fill.Bore));
                break;
            case AtPostKind.Wrap:
                Wrap(shapes, here, at, half, pen, ropeWidth);
                break;
            default:
                throw new InvalidOperationException($"No rope at a post is of kind {here.Kind}.");
        }

        void DrawBore(double from, double to)
        {
            // As wide as it is bored, and no narrower than the rope that is drawn in it.
            var radius = Math.Max(scale.Mm((bore?.Across ?? piece.Rope.Across).Inches) / 2, ropeWidth * 0.55);
            foreach (var side in new[] { -1, 1 })
                shapes.Add(new Stroke(Along(at, slope, from).Moved(0, side * radius), Along(at, slope, to).Moved(0, side * radius), bore is { IsThere: true } ? Pen.Thin : Pen.Hidden));
        }

        void Inside(double from, double to) => shapes.Add(new Polyline([Along(at, slope, from), Along(at, slope, to)], pen, ropeWidth * 0.6));
    }

    /// <summary>An eye round its pin, which a hook or bolt holds before the post's face: a loop as long as it is spliced.</summary>
    /// <param name="shapes">Where to.</param>
    /// <param name="eye">The eye.</param>
    /// <param name="pin">The pin's centre.</param>
    /// <param name="throat">Where the rope leaves the eye.</param>
    /// <param name="reach">From the pin's centre to the post's face: to the right, or to the left where negative.</param>
    /// <param name="scale">The drawing's scale.</param>
    /// <param name="pen">What the rope is drawn with.</param>
    /// <param name="ropeWidth">How wide it is drawn.</param>
    public static void DrawEye(List<Shape> shapes, Eye eye, Point pin, Point throat, double reach, DrawingScale scale, Pen pen, double ropeWidth)
    {
        const int Steps = 16;
        const double ShankInPost = 2;
        var length = double.Hypot(throat.X - pin.X, throat.Y - pin.Y);
        var along = new Point((throat.X - pin.X) / length, (throat.Y - pin.Y) / length);
        var aside = new Point(-along.Y, along.X);
        // Two straight legs from the throat that touch the rope's round about the pin.
        var round = Math.Min((scale.Mm(eye.Round.Inches) + ropeWidth) / 2, length / 1.2);
        var touch = Math.Acos(round / length);
        var loop = Enumerable.Range(0, Steps + 1).Select(k => touch + ((2 * Math.PI) - (2 * touch)) * k / Steps)
            .Select(angle => pin.Toward(along, round * Math.Cos(angle)).Toward(aside, round * Math.Sin(angle)));
        shapes.Add(new Polyline([throat, .. loop, throat], pen, ropeWidth * 0.8));
        shapes.Add(new Stroke(pin.Moved(reach + (Math.Sign(reach) * ShankInPost), 0), pin, Pen.Outline));
        shapes.Add(new Disc(pin, Math.Max(scale.Mm(eye.Pin.Inches) / 2, 0.35), Pen.Outline, Fill.Ink));
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
