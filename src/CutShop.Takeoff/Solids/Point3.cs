namespace CutShop.Takeoff.Solids;

/// <summary>A point or a direction in a post, in inches, as <see cref="PostSolid"/> lays its axes.</summary>
/// <param name="X">Along the line.</param>
/// <param name="Y">To the left of it.</param>
/// <param name="Z">Up.</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>Straight up.</summary>
    public static Point3 Up => new(0, 0, 1);

    /// <summary>The distance from the origin.</summary>
    public double Size => Math.Sqrt(Dot(this));

    /// <summary>The scalar product.</summary>
    public double Dot(in Point3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>The vector product.</summary>
    public Point3 Cross(in Point3 other) =>
        new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>The sum.</summary>
    public static Point3 operator +(in Point3 a, in Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>The difference.</summary>
    public static Point3 operator -(in Point3 a, in Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite.</summary>
    public static Point3 operator -(in Point3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>So many times as far.</summary>
    public static Point3 operator *(in Point3 a, double times) => new(a.X * times, a.Y * times, a.Z * times);
}
