namespace CutShop.Takeoff.Solids;

/// <summary>
/// A round body in a post: a bore, a rope, a screw or a hole for one. An end may be cut aslant, as the face of a post cuts a raked bore.
/// </summary>
/// <remarks>Exact geometry in inches. The ends may not cross: the body is as long as it needs to be for its rims to stay apart.</remarks>
public readonly record struct Cylinder
{
    private const double Tiny = 1e-12;

    /// <summary>A body with flat ends.</summary>
    /// <param name="from">The middle of one end.</param>
    /// <param name="to">The middle of the other.</param>
    /// <param name="radius">Half its diameter.</param>
    public Cylinder(in Point3 from, in Point3 to, double radius)
    {
        var way = to - from;
        (From, To, Radius, Depth) = (from, to, radius, way.Size);
        Along = way * (1 / Depth);
        (FromCut, ToCut) = (-Along, Along);
    }

    /// <summary>A body whose ends are cut by planes.</summary>
    /// <param name="from">The middle of one end.</param>
    /// <param name="to">The middle of the other.</param>
    /// <param name="radius">Half its diameter.</param>
    /// <param name="fromCut">Square to the cut at one end and out of the body; of length 1.</param>
    /// <param name="toCut">The same at the other end.</param>
    public Cylinder(in Point3 from, in Point3 to, double radius, in Point3 fromCut, in Point3 toCut)
        : this(from, to, radius) => (FromCut, ToCut) = (fromCut, toCut);

    /// <summary>The middle of one end.</summary>
    public Point3 From { get; }

    /// <summary>The middle of the other end.</summary>
    public Point3 To { get; }

    /// <summary>Half its diameter.</summary>
    public double Radius { get; private init; }

    /// <summary>From one end's middle to the other's.</summary>
    public double Depth { get; }

    /// <summary>The direction from one end to the other, of length 1.</summary>
    public Point3 Along { get; }

    /// <summary>Square to the cut at <see cref="From"/> and out of the body.</summary>
    public Point3 FromCut { get; }

    /// <summary>Square to the cut at <see cref="To"/> and out of the body.</summary>
    public Point3 ToCut { get; }

    /// <summary>The same body around the same axis, with another radius.</summary>
    public Cylinder Of(double radius) => this with { Radius = radius };

    /// <summary>From where to where the body reaches in a direction of length 1, measured from the post's middle at the ground.</summary>
    public (double Least, double Most) Extent(in Point3 direction)
    {
        var (from, to) = (From.Dot(direction), To.Dot(direction));
        var (atFrom, atTo) = (Radius * OnRim(FromCut, direction).Size, Radius * OnRim(ToCut, direction).Size);
        return (Math.Min(from - atFrom, to - atTo), Math.Max(from + atFrom, to + atTo));
    }

    /// <summary>The point of the body that lies farthest in a direction, which may have any length but none.</summary>
    public Point3 Farthest(in Point3 direction)
    {
        var (one, other) = (RimPoint(From, FromCut, direction), RimPoint(To, ToCut, direction));
        return one.Dot(direction) > other.Dot(direction) ? one : other;
    }

    /// <summary>True for a point in the body, give or take some inches at its ends.</summary>
    public bool IsBetweenCuts(in Point3 point, double give = 0) =>
        (point - From).Dot(FromCut) <= give && (point - To).Dot(ToCut) <= give;

    /// <summary>True for a point in the body.</summary>
    public bool Contains(in Point3 point)
    {
        var from = point - From;
        var along = from.Dot(Along);
        return from.Dot(from) - (along * along) <= Radius * Radius && IsBetweenCuts(point);
    }

    /// <summary>Where a straight way between two points comes into the body and out of it, in inches from its start; null where it misses.</summary>
    public (double In, double Out)? On(Point3 start, Point3 end)
    {
        var (way, from) = (end - start, start - From);
        var (wayAlong, fromAlong) = (way.Dot(Along), from.Dot(Along));
        // The part across the axis: |from + share way| = Radius.
        var (a, b, c) = (way.Dot(way) - (wayAlong * wayAlong), from.Dot(way) - (fromAlong * wayAlong), from.Dot(from) - (fromAlong * fromAlong) - (Radius * Radius));
        var (least, most) = (0.0, 1.0);
        if (a > Tiny)
        {
            var root = (b * b) - (a * c);
            if (root <= 0)
                return null;
            (least, most) = (Math.Max(least, (-b - Math.Sqrt(root)) / a), Math.Min(most, (-b + Math.Sqrt(root)) / a));
        }
        else if (c >= 0)
        {
            return null;
        }
        CutOff(From, FromCut);
        CutOff(To, ToCut);
        return most > least ? (least * way.Size, most * way.Size) : null;

        void CutOff(in Point3 middle, in Point3 cut)
        {
            var (over, speed) = ((middle - start).Dot(cut), way.Dot(cut));
            if (speed > Tiny)
                most = Math.Min(most, over / speed);
            else if (speed < -Tiny)
                least = Math.Max(least, over / speed);
            else if (over < 0)
                most = -1;
        }
    }

    private Point3 RimPoint(in Point3 middle, in Point3 cut, in Point3 direction)
    {
        var across = OnRim(cut, direction);
        var size = across.Size;
        if (size < Tiny)
            return middle;
        across *= Radius / size;
        return middle + across - (Along * (across.Dot(cut) / Along.Dot(cut)));
    }

    /// <summary>
    /// A point of a rim is the middle + w − Along (w · cut) / (Along · cut), with w square to the axis and as long as the radius. In a
    /// direction d it lies farthest where w goes with d − cut (d · Along) / (Along · cut), which is square to the axis itself.
    /// </summary>
    private Point3 OnRim(in Point3 cut, in Point3 direction) => direction - (cut * (direction.Dot(Along) / Along.Dot(cut)));
}
