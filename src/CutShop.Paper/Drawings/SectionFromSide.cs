using CutShop.Paper.Words;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>An upright cut along a raked bore, seen from the side, uphill or downhill as the line goes to the right.</summary>
internal static class SectionFromSide
{
    private const double Beyond = 3;

    /// <summary>Draws the cut.</summary>
    /// <returns>What to say under it.</returns>
    public static IReadOnlyList<string> Draw(List<Shape> shapes, PostWork work, Bore bore, Point centre, DrawingScale scale, PaperSettings settings)
    {
        var half = scale.Mm(work.Post.Across.Inches) / 2;
        const double Tall = 17.5;
        shapes.Add(new Box(centre.X - half, centre.Y - Tall, 2 * half, 2 * Tall, Pen.Outline, Fill.Wood));
        var radians = bore.RakeDegrees * Math.PI / 180;
        var (along, across) = (new Point(Math.Cos(radians), -Math.Sin(radians)), new Point(Math.Sin(radians), Math.Cos(radians)));
        var radius = scale.Mm(bore.Bit.Inches) / 2;
        foreach (var operation in bore.Operations)
            DrawOperation(shapes, work, bore, operation, new Rake(along, across, Math.Tan(radians)), centre, half, radius, scale);
        shapes.Add(new Stroke(centre.Toward(along, -half - Beyond), centre.Toward(along, half + Beyond), Pen.Axis));
        shapes.Add(new Stroke(centre.Moved(-half - Beyond, 0), centre.Moved(half + Beyond, 0), Pen.Thin));
        return [RakeText.Of(bore, work, settings), settings.Text["BitOf", settings.Figures.Lead(bore.Bit)]];
    }

    private static void DrawOperation(
        List<Shape> shapes, PostWork work, Bore bore, BoreOperation operation, Rake rake, Point centre, double half, double radius, DrawingScale scale)
    {
        var mark = operation.Mark;
        // The face that looks along the line is on the right; its mark is higher than the bore's height where the line climbs.
        var side = Math.Sign((mark - bore.Height).Nanometres) * Math.Sign(bore.RakeDegrees);
        var depth = scale.Mm(operation.Depth.Inches);
        var mouth = half / rake.Along.X;
        Point At(double distance, double off) => centre.Toward(rake.Along, side * distance).Toward(rake.Across, off);
        // The mouth is cut by the upright face, so its two corners lie at different distances along the bore.
        var skew = side * radius * rake.Slope;
        shapes.Add(new Polygon([At(mouth + skew, -radius), At(mouth - skew, radius), At(mouth - depth, radius), At(mouth - depth, -radius)], Pen.Outline, Fill.Bore));
        if (operation.Face.Sight == FaceSight.Toward)
            PostSections.Neighbour(shapes, operation.Face.Neighbour, new(side, 0), centre, half);
    }

    private readonly record struct Rake(Point Along, Point Across, double Slope);
}
