namespace CutShop.Paper.Drawings;

/// <summary>Dimension lines: two extension lines, a line with oblique ticks, and the figure beside it.</summary>
public static class Dimension
{
    /// <summary>Size of a dimension's figure in millimetres.</summary>
    public const double TextSize = 2.7;

    private const double Gap = 0.8;
    private const double Tick = 0.9;

    /// <summary>
    /// A dimension from <paramref name="a"/> to <paramref name="b"/>, drawn <paramref name="offset"/> mm to the left of
    /// that direction (negative: to the right). The figure stands along the line where it fits, else past its end.
    /// </summary>
    public static IEnumerable<Shape> Between(Point a, Point b, double offset, string text)
    {
        var length = Math.Max(Math.Sqrt(Square(b.X - a.X) + Square(b.Y - a.Y)), 1e-6);
        var along = new Point((b.X - a.X) / length, (b.Y - a.Y) / length);
        // Left of the walking direction, on paper where y grows downward.
        var left = new Point(along.Y, -along.X);
        var side = Math.Sign(offset) == 0 ? 1 : Math.Sign(offset);
        var (from, to) = (a.Toward(left, offset), b.Toward(left, offset));
        yield return new Stroke(a.Toward(left, side * Gap), from.Toward(left, side * Gap), Pen.Thin);
        yield return new Stroke(b.Toward(left, side * Gap), to.Toward(left, side * Gap), Pen.Thin);
        yield return new Stroke(from, to, Pen.Thin);
        foreach (var end in new[] { from, to })
        {
            var slant = new Point(along.X + left.X, along.Y + left.Y);
            yield return new Stroke(end.Toward(slant, -Tick), end.Toward(slant, Tick), Pen.Outline);
        }
        yield return Figure(from, to, along, length, text);
    }

    /// <summary>A fair guess of a text's width in millimetres, with no font at hand.</summary>
    public static double GuessWidth(string text, double size) => text.Length * size * 0.6;

    /// <summary>The same for bold letters.</summary>
    public static double GuessBoldWidth(string text, double size) => text.Length * size * 0.7;

    private static DrawnText Figure(Point from, Point to, Point along, double length, string text)
    {
        var turn = Math.Atan2(along.Y, along.X) * 180 / Math.PI;
        var upsideDown = turn is > 90.5 or <= -90.5;
        if (upsideDown)
        {
            (from, to) = (to, from);
            along = new Point(-along.X, -along.Y);
            turn = turn > 0 ? turn - 180 : turn + 180;
        }
        var above = new Point(along.Y, -along.X);
        var fits = GuessWidth(text, TextSize) < length - 1;
        var middle = new Point((from.X + to.X) / 2, (from.Y + to.Y) / 2);
        return fits
            ? new(middle.Toward(above, Gap), text, TextSize, TextAnchor.Middle, TurnDegrees: turn)
            : new(to.Toward(along, 1.6).Toward(above, -TextSize * 0.35), text, TextSize, TextAnchor.Start, TurnDegrees: turn);
    }

    private static double Square(double x) => x * x;
}
