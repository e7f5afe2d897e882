using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Draws a screw's hole in a cut along it: the hole for its head, the one for its shank and its pilot, each as deep as it is drilled.</summary>
internal static class ScrewInSection
{
    private const double Beyond = 3;
    private const double ThinnestDrawn = 0.7;

    /// <summary>Draws it.</summary>
    /// <param name="shapes">Where to.</param>
    /// <param name="fixing">The screw.</param>
    /// <param name="at">A place by its distance from the middle of the hole's axis outward along it, and from the axis to the left of that way.</param>
    /// <param name="mouth">The distance at which the axis comes out of the face.</param>
    /// <param name="lean">How much farther out the face lies for each millimetre to the left of the axis; zero where it is square to it.</param>
    /// <param name="mm">Millimetres on paper for so many inches along the hole.</param>
    /// <param name="wide">The same across it.</param>
    public static void Draw(
        List<Shape> shapes, Fixing fixing, Func<double, double, Point> at, double mouth, double lean, Func<double, double> mm, Func<double, double> wide)
    {
        var (head, sunk) = (wide(fixing.Counterbore.Inches) / 2, mm(fixing.CounterboreDepth.Inches));
        if (sunk > 0)
            shapes.Add(new Polygon([at(mouth + head * lean, head), at(mouth - head * lean, -head), at(mouth - sunk, -head), at(mouth - sunk, head)], Pen.Outline, Fill.None));
        else if (head > 0)
            shapes.Add(new Polygon([at(mouth + head * lean, head), at(mouth - head * lean, -head), at(mouth - head, 0)], Pen.Outline, Fill.None));
        // Shank and pilot are drawn apart where paper can tell them apart.
        var pilot = Math.Max(wide(fixing.Pilot.Inches), ThinnestDrawn) / 2;
        var shank = Math.Max(wide(fixing.ShankHole.Inches) / 2, pilot + 0.2);
        var plain = mm(fixing.ShankDepth.Inches);
        if (plain > sunk)
            shapes.Add(new Polygon([at(mouth - sunk, shank), at(mouth - plain, shank), at(mouth - plain, -shank), at(mouth - sunk, -shank)], Pen.Hidden, Fill.None));
        var end = mouth - mm(fixing.PilotDepth.Inches);
        shapes.Add(new Polyline([at(mouth - Math.Max(sunk, plain), pilot), at(end, pilot), at(end - pilot, 0), at(end, -pilot), at(mouth - Math.Max(sunk, plain), -pilot)], Pen.Hidden));
        shapes.Add(new Stroke(at(mouth + Beyond, 0), at(mouth, 0), Pen.Axis));
    }
}
