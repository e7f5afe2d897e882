using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>A level cut through the bores of one row, seen from above.</summary>
internal static class SectionFromAbove
{
    private static readonly Point Along = new(1, 0);

    /// <summary>Draws the cut.</summary>
    /// <returns>What to say under it.</returns>
    public static IReadOnlyList<string> Draw(List<Shape> shapes, PostWork work, IReadOnlyList<Bore> bores, Point centre, DrawingScale scale, PaperSettings settings)
    {
        var half = scale.Mm(work.Post.Across.Inches) / 2;
        if (work.Post.Shape == PostShape.Round)
            shapes.Add(new Disc(centre, half, Pen.Outline, Fill.Wood));
        else
            shapes.Add(new Box(centre.X - half, centre.Y - half, 2 * half, 2 * half, Pen.Outline, Fill.Wood));

        var operations = bores.SelectMany(bore => bore.Operations.Select(operation => (Bore: bore, Operation: operation))).ToList();
        var directions = operations.Select(o => Outward(work, o.Operation.Face)).ToList();
        for (var i = 0; i < operations.Count; i++)
            DrawBore(shapes, work.Post, operations[i].Bore, operations[i].Operation, directions[i], centre, half, scale);
        // Equal depths are told once.
        foreach (var (i, one) in operations.Index().DistinctBy(numbered => numbered.Item.Operation.Depth))
            DrawDepth(shapes, one.Operation, directions[i], FreeSide(directions[i], directions), centre, half, scale, settings);
        if (directions.Count > 0)
            DrawWall(shapes, bores[0], directions[0], FreeSide(directions[0], directions), centre, half, scale);
        foreach (var fixing in work.ScrewHoles.Where(f => bores.Any(bore => bore.Run == f.Run)))
            DrawScrewHole(shapes, fixing, Outward(work, fixing.Face), centre, half, scale);
        DrawNeighbours(shapes, work, centre, half);

        return [settings.Text["BitOf", settings.Figures.Lead(bores[0].Bit)], settings.Text["WallOf", settings.Figures.Lead(bores[0].Wall)]];
    }

    /// <summary>The way a face looks, on paper.</summary>
    private static Point Outward(PostWork work, Face face)
    {
        var isNext = face.Neighbour == work.After;
        // A straight bore through a corner lies square to the post, which stands on the bisector.
        var facing = work.Post.Corner == CornerKind.Through ? isNext ? Along : Reverse(Along)
            : isNext ? Departing(work.Post) : Reverse(Arriving(work.Post));
        return face.Sight switch
        {
            FaceSight.Toward => facing,
            FaceSight.AwayFrom => Reverse(facing),
            FaceSight.Side => new(facing.Y, -facing.X),
            _ => throw new InvalidOperationException($"A hole has no face {face.Sight}."),
        };
    }

    /// <summary>The way in which the line comes to the post, seen in the post's own position.</summary>
    private static Point Arriving(Post post) => Way(post.StandsTurnedBy);

    private static Point Departing(Post post) =>
        Way(post.StandsTurnedBy - (post.Turn is { } turn ? (double)turn.Degrees * (turn.Side == TurnSide.Left ? 1 : -1) : 0));

    /// <summary>A way so many degrees to the right of the post's own.</summary>
    private static Point Way(double degrees) =>
        new(Math.Round(Math.Cos(degrees * Math.PI / 180), 9), Math.Round(Math.Sin(degrees * Math.PI / 180), 9));

    private static void DrawBore(
        List<Shape> shapes, Post post, Bore bore, BoreOperation operation, Point outward, Point centre, double half, DrawingScale scale)
    {
        var (radius, side) = (scale.Mm(bore.Bit.Inches) / 2, new Point(-outward.Y, outward.X));
        // Seen from above a raked bore is as deep as its level share.
        var depth = scale.Mm(operation.Depth.Inches * Math.Cos(bore.RakeDegrees * Math.PI / 180));
        half /= Math.Cos(bore.SkewDegrees * Math.PI / 180);
        var mouth = post.Shape == PostShape.Round ? Math.Sqrt(Math.Max(half * half - radius * radius, 0)) : half;
        Point At(double along, double across) => centre.Toward(outward, along).Toward(side, across);
        shapes.Add(new Polygon([At(mouth, radius), At(mouth, -radius), At(half - depth, -radius), At(half - depth, radius)], Pen.Outline, Fill.Bore));
        shapes.Add(new Stroke(At(half + 3, 0), At(half - depth - 2, 0), Pen.Axis));
    }

    private static void DrawDepth(
        List<Shape> shapes, BoreOperation operation, Point outward, Point side, Point centre, double half, DrawingScale scale, PaperSettings settings)
    {
        var depth = scale.Mm(operation.Depth.Inches);
        var (face, end) = (centre.Toward(outward, half).Toward(side, half), centre.Toward(outward, half - depth).Toward(side, half));
        var walk = new Point(-outward.X, -outward.Y);
        var isLeft = Math.Abs(walk.Y - side.X) < 0.5 && Math.Abs(-walk.X - side.Y) < 0.5;
        shapes.AddRange(Dimension.Between(face, end, isLeft ? 4 : -4, settings.Figures.Lead(operation.Depth)));
    }

    /// <summary>Marks the side wall that the caption tells.</summary>
    private static void DrawWall(List<Shape> shapes, Bore bore, Point outward, Point occupied, Point centre, double half, DrawingScale scale)
    {
        var side = Reverse(occupied);
        var radius = scale.Mm(bore.Bit.Inches) / 2;
        var (edge, hole) = (centre.Toward(outward, half + 3).Toward(side, half), centre.Toward(outward, half + 3).Toward(side, radius));
        shapes.Add(new Stroke(edge.Toward(outward, 1), edge.Toward(outward, -2), Pen.Thin));
        shapes.Add(new Stroke(hole.Toward(outward, 1), hole.Toward(outward, -2), Pen.Thin));
        shapes.Add(new Stroke(edge, hole, Pen.Thin));
        foreach (var end in new[] { edge, hole })
            shapes.Add(new Stroke(end.Moved(-0.9, 0.9), end.Moved(0.9, -0.9), Pen.Outline));
    }

    private static void DrawScrewHole(List<Shape> shapes, Fixing fixing, Point outward, Point centre, double half, DrawingScale scale)
    {
        var side = new Point(-outward.Y, outward.X);
        Point At(double along, double across) => centre.Toward(outward, along).Toward(side, across);
        var (depth, radius) = (scale.Mm(fixing.CounterboreDepth.Inches), scale.Mm(fixing.Counterbore.Inches) / 2);
        if (depth > 0)
            shapes.Add(new Polygon([At(half, radius), At(half, -radius), At(half - depth, -radius), At(half - depth, radius)], Pen.Outline, Fill.None));
        var reach = scale.Mm(fixing.Length.Inches) + depth;
        var pilot = Math.Max(scale.Mm(fixing.Pilot.Inches) / 2, 0.35);
        foreach (var edge in new[] { -pilot, pilot })
            shapes.Add(new Stroke(At(half - depth, edge), At(half - reach, edge), Pen.Hidden));
        shapes.Add(new Stroke(At(half + 3, 0), At(half, 0), Pen.Axis));
    }

    private static void DrawNeighbours(List<Shape> shapes, PostWork work, Point centre, double half)
    {
        if (work.Before is { } before)
            PostSections.Neighbour(shapes, before, Reverse(Arriving(work.Post)), centre, half);
        if (work.After is { } after)
            PostSections.Neighbour(shapes, after, Departing(work.Post), centre, half);
    }

    /// <summary>The side of a bore where no other bore of the row has its face; for bores opposite each other, one side each.</summary>
    private static Point FreeSide(Point outward, List<Point> directions)
    {
        var left = new Point(outward.Y, -outward.X);
        return directions.Any(d => Math.Abs(d.X - left.X) < 0.3 && Math.Abs(d.Y - left.Y) < 0.3) ? Reverse(left) : left;
    }

    private static Point Reverse(Point way) => new(-way.X, -way.Y);
}
