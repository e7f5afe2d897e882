namespace CutShop.Paper.Drawings;

/// <summary>A place on paper, in millimetres from the upper left corner; y grows downward.</summary>
/// <param name="X">To the right.</param>
/// <param name="Y">Downward.</param>
public readonly record struct Point(double X, double Y)
{
    /// <summary>The point moved.</summary>
    public Point Moved(double right, double down) => new(X + right, Y + down);

    /// <summary>The point moved <paramref name="distance"/> along a direction.</summary>
    public Point Toward(Point direction, double distance) => new(X + direction.X * distance, Y + direction.Y * distance);
}

/// <summary>A drawing on paper: what it shows, its size in millimetres and its shapes, drawn in order.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Description">What it shows, for someone who cannot see it.</param>
/// <param name="Width">Width in millimetres.</param>
/// <param name="Height">Height in millimetres.</param>
/// <param name="Shapes">The shapes.</param>
public sealed record Drawing(string Title, string Description, double Width, double Height, IReadOnlyList<Shape> Shapes);

/// <summary>Something drawn. All sizes are millimetres on paper.</summary>
public abstract record Shape;

/// <summary>A straight line.</summary>
public sealed record Stroke(Point From, Point To, Pen Pen) : Shape;

/// <summary>A chain of straight lines. <paramref name="Width"/> replaces the pen's own width where a thing is drawn to scale.</summary>
public sealed record Polyline(IReadOnlyList<Point> Points, Pen Pen, double? Width = null) : Shape;

/// <summary>A closed figure.</summary>
public sealed record Polygon(IReadOnlyList<Point> Points, Pen Pen, Fill Fill) : Shape;

/// <summary>An upright rectangle from its upper left corner.</summary>
public sealed record Box(double X, double Y, double Width, double Height, Pen Pen, Fill Fill) : Shape;

/// <summary>A circle.</summary>
public sealed record Disc(Point Centre, double Radius, Pen Pen, Fill Fill) : Shape;

/// <summary>A line of text; <paramref name="At"/> is on its base line, <paramref name="Size"/> the letters' size in millimetres.</summary>
public sealed record DrawnText(
    Point At, string Text, double Size, TextAnchor Anchor = TextAnchor.Start, bool Bold = false, double TurnDegrees = 0) : Shape;

/// <summary>Which point of a text its place is.</summary>
public enum TextAnchor
{
    /// <summary>Where it starts.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Where it ends.</summary>
    End,
}
