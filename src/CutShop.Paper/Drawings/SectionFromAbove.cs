using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>A level cut through the bores of one row, seen from above.</summary>
internal static class SectionFromAbove
{
    /// <summary>Draws the cut.</summary>
    /// <returns>What to say under it.</returns>
    public static IReadOnlyList<string> Draw(List<Shape> shapes, PostWork work, IReadOnlyList<Bore> bores, Point centre, DrawingScale scale, PaperSettings settings)
    {
        var half = scale.Mm(work.Post.Across.Inches) / 2;
        if (work.Post.Shape == PostShape.Round)
            shapes.Add(new Disc(centre, half, Pen.Outline, Fill.Wood));
        else
            shapes.Add(new Box(centre.X - half, centre.Y - half, 2 * half, 2 * half, Pen.Outline, Fill.Wood));

        var holes = bores.SelectMany(bore => PostWays.MouthsOf(work, bore).Select(mouth => new Hole(bore, mouth.Face, mouth.Depth, PostWays.Outward(work, mouth.Face, bore)))).ToList();
        foreach (var hole in holes)
            DrawBore(shapes, work, hole, centre, half, scale);
        // Equal depths are told once; nothing is told of a hole that is there.
        foreach (var hole in holes.Where(hole => !hole.Bore.IsExisting).DistinctBy(hole => hole.Depth))
            DrawDepth(shapes, hole, holes, centre, half, scale, settings);
        if (holes is [{ Bore: { IsExisting: false, SkewDegrees: 0 } } first, ..])
            DrawWall(shapes, first, holes, centre, half, scale);
        foreach (var fixing in work.ScrewHoles.Where(fixing => bores.Contains(PostWays.BoreOf(work, fixing))))
            DrawScrew(shapes, work, fixing, centre, half, scale);
        DrawNeighbours(shapes, work, centre, half);

        var text = settings.Text;
        return
        [
            text[bores[0].IsExisting ? "HoleThere" : "BitOf", settings.Figures.Lead(bores[0].Bit)],
            text["WallOf", settings.Figures.Lead(bores[0].Wall)],
            .. bores[0].SkewDegrees > 0 ? [text["SkewOf", Figures.Degrees(bores[0].SkewDegrees)]] : (string[])[],
            .. RakeText.KinkOf(bores[0], settings) is { } kink ? [kink] : (string[])[],
        ];
    }

    private static void DrawBore(List<Shape> shapes, PostWork work, Hole hole, Point centre, double half, DrawingScale scale)
    {
        var (radius, skew) = (scale.Mm(hole.Bore.Bit.Inches) / 2, PostWays.SkewOf(work, hole.Face, hole.Bore) * Math.PI / 180);
        // Seen from above a raked bore is as deep as its level share.
        var depth = scale.Mm(hole.Depth.Inches * Math.Cos(hole.Bore.RakeDegrees * Math.PI / 180));
        half /= Math.Cos(skew);
        var mouth = work.Post.Shape == PostShape.Round ? Math.Sqrt(Math.Max(half * half - radius * radius, 0)) : half;
        // A face that is not square to the bore cuts one of its edges longer.
        var lean = radius * Math.Tan(skew);
        Point At(double along, double right) => centre.Toward(hole.Outward, along).Toward(hole.Right, right);
        shapes.Add(new Polygon(
            [At(mouth + lean, radius), At(mouth - lean, -radius), At(half - depth, -radius), At(half - depth, radius)],
            hole.Bore.IsExisting ? Pen.Thin : Pen.Outline,
            hole.Bore.IsExisting ? Fill.None : Fill.Bore));
        shapes.Add(new Stroke(At(half + 3, 0), At(half - depth - 2, 0), Pen.Axis));
    }

    private static void DrawDepth(List<Shape> shapes, Hole hole, IReadOnlyList<Hole> all, Point centre, double half, DrawingScale scale, PaperSettings settings)
    {
        var (side, depth) = (FreeSide(hole, all), scale.Mm(hole.Depth.Inches));
        var mouth = half / Math.Cos(hole.Bore.SkewDegrees * Math.PI / 180);
        var (face, end) = (centre.Toward(hole.Outward, mouth).Toward(side, half), centre.Toward(hole.Outward, mouth - depth).Toward(side, half));
        var walk = PostWays.Reverse(hole.Outward);
        var isLeft = Math.Abs(walk.Y - side.X) < 0.5 && Math.Abs(-walk.X - side.Y) < 0.5;
        shapes.AddRange(Dimension.Between(face, end, isLeft ? 4 : -4, settings.Figures.Lead(hole.Depth)));
    }

    /// <summary>Marks the side wall that the caption tells.</summary>
    private static void DrawWall(List<Shape> shapes, Hole hole, IReadOnlyList<Hole> all, Point centre, double half, DrawingScale scale)
    {
        var (outward, side) = (hole.Outward, PostWays.Reverse(FreeSide(hole, all)));
        var radius = scale.Mm(hole.Bore.Bit.Inches) / 2;
        var (edge, bore) = (centre.Toward(outward, half + 3).Toward(side, half), centre.Toward(outward, half + 3).Toward(side, radius));
        shapes.Add(new Stroke(edge.Toward(outward, 1), edge.Toward(outward, -2), Pen.Thin));
        shapes.Add(new Stroke(bore.Toward(outward, 1), bore.Toward(outward, -2), Pen.Thin));
        shapes.Add(new Stroke(edge, bore, Pen.Thin));
        foreach (var end in new[] { edge, bore })
            shapes.Add(new Stroke(end.Moved(-0.9, 0.9), end.Moved(0.9, -0.9), Pen.Outline));
    }

    private static void DrawScrew(List<Shape> shapes, PostWork work, Fixing fixing, Point centre, double half, DrawingScale scale)
    {
        var bore = PostWays.BoreOf(work, fixing);
        var (outward, skew) = (PostWays.Outward(work, fixing.Face, bore), PostWays.SkewOf(work, fixing.Face, bore) * Math.PI / 180);
        var left = new Point(outward.Y, -outward.X);
        var level = Math.Cos(fixing.RakeDegrees * Math.PI / 180);
        foreach (var (right, _) in PostWays.HolesOf(work, fixing))
        {
            // To the right of who looks at the face is to the left of the way that the face looks. A skewed hole goes through the middle.
            var middle = skew == 0 ? centre.Toward(left, scale.Mm(right.Inches)) : centre;
            ScrewInSection.Draw(
                shapes,
                fixing,
                (along, across) => middle.Toward(outward, along).Toward(left, across),
                half / Math.Cos(skew),
                -Math.Tan(skew),
                inches => scale.Mm(inches * level),
                scale.Mm);
        }
    }

    private static void DrawNeighbours(List<Shape> shapes, PostWork work, Point centre, double half)
    {
        if (work.Before is { } before)
            PostSections.Neighbour(shapes, before, PostWays.Reverse(PostWays.Arriving(work.Post)), centre, half);
        if (work.After is { } after)
            PostSections.Neighbour(shapes, after, PostWays.Departing(work.Post), centre, half);
    }

    /// <summary>The side of a bore where no other bore of the row has its face; for bores opposite each other, one side each.</summary>
    private static Point FreeSide(Hole hole, IReadOnlyList<Hole> all)
    {
        var left = new Point(hole.Outward.Y, -hole.Outward.X);
        return all.Any(other => other.Outward.X * left.X + other.Outward.Y * left.Y > 0.8) ? PostWays.Reverse(left) : left;
    }

    /// <summary>A bore from one of its mouths.</summary>
    private sealed record Hole(Bore Bore, Face Face, Length Depth, Point Outward)
    {
        public Point Right => new(-Outward.Y, Outward.X);
    }
}
