namespace CutShop.Takeoff.Solids;

/// <summary>The side of a post, seen along its line, at which a rope that ends in it leaves it.</summary>
internal enum Bearing
{
    /// <summary>Back along the line: the rope comes to the post from there.</summary>
    Arriving,

    /// <summary>On along the line.</summary>
    Leaving,
}

/// <summary>The line that a bore follows, through the post's middle.</summary>
/// <param name="Angle">Its section's direction in radians to the left of X.</param>
/// <param name="Bearing">Where its mouth is.</param>
/// <param name="Height">Its height at the middle.</param>
/// <param name="Slope">How much it climbs along the line.</param>
/// <param name="IsRound">True in a round post.</param>
internal readonly record struct BoreAxis(double Angle, Bearing Bearing, double Height, double Slope, bool IsRound)
{
    private Point3 Line => Angle == 0 ? new(1, 0, 0) : new(Math.Cos(Angle), Math.Sin(Angle), 0);

    private int Sign => Bearing == Bearing.Leaving ? 1 : -1;

    /// <summary>From the middle to the mouth, of length 1.</summary>
    public Point3 Outward => (Line + (Point3.Up * Slope)) * (Sign / double.Hypot(1, Slope));

    /// <summary>The level distance from the middle to the mouth: half the post's width, by the cosine of the skew.</summary>
    public double ToMouth(double half) => IsRound || Angle == 0 ? half : half / Math.Max(Math.Abs(Line.X), Math.Abs(Line.Y));

    /// <summary>The middle of the mouth, and the direction square to the face there.</summary>
    public (Point3 Middle, Point3 Cut) Mouth(double half)
    {
        var (line, m) = (Line, Sign * ToMouth(half));
        var cut = IsRound || Angle == 0 ? line * Sign
            : Math.Abs(line.X) >= Math.Abs(line.Y) ? new(Math.Sign(line.X) * Sign, 0, 0)
            : new Point3(0, Math.Sign(line.Y) * Sign, 0);
        return ((line * m) + (Point3.Up * (Height + (m * Slope))), cut);
    }

    /// <summary>The middle of where it would come out opposite its mouth.</summary>
    public Point3 FarMouth(double half)
    {
        var m = -Sign * ToMouth(half);
        return (Line * m) + (Point3.Up * (Height + (m * Slope)));
    }
}
