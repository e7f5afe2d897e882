namespace CutShop.Takeoff.Solids;

/// <summary>How much lies between two round bodies.</summary>
public static class Gap
{
    private const double Square = 1e-9;
    private const double Close = 1e-9;
    private const double Relative = 1e-9;
    private const int MostSteps = 100;

    /// <summary>
    /// The least distance between two bodies in inches; zero or less where they meet. Where it is not under <paramref name="upTo"/>, any
    /// figure that is not.
    /// </summary>
    /// <remarks>
    /// The shortest line between the two axes is nearly always square to both and comes out of the bodies' sides: then it is that line less
    /// both radii. Where an end is in the way, it is the distance of two convex bodies. Source: "A fast procedure for
    /// computing the distance between complex objects", IEEE Journal of Robotics and Automation 4 (1988).
    /// </remarks>
    public static double Between(in Cylinder a, in Cylinder b, double upTo = double.PositiveInfinity)
    {
        var (onA, onB) = NearestOnAxes(a, b);
        var between = onA - onB;
        var (size, radii) = (between.Size, a.Radius + b.Radius);
        if (size - radii >= upTo)
            return size - radii;
        if (Math.Abs(between.Dot(a.Along)) <= Square * size && Math.Abs(between.Dot(b.Along)) <= Square * size
            && a.IsBetweenCuts(onA, Close) && b.IsBetweenCuts(onB, Close))
        {
            if (size < Close)
                return -radii;
            var way = between * (1 / size);
            if (a.IsBetweenCuts(onA - (way * a.Radius), Close) && b.IsBetweenCuts(onB + (way * b.Radius), Close))
                return size - radii;
        }
        return OfConvex(a, b, upTo);
    }

    /// <summary>The nearest points on the axes, which go on as far as any part of the body beside them.</summary>
    private static (Point3 OnA, Point3 OnB) NearestOnAxes(in Cylinder a, in Cylinder b)
    {
        var (aLeast, aMost) = Extent(a);
        var (bLeast, bMost) = Extent(b);
        var from = a.From - b.From;
        var (cosine, c, f) = (a.Along.Dot(b.Along), a.Along.Dot(from), b.Along.Dot(from));
        var denominator = 1 - (cosine * cosine);
        double s;
        if (denominator > 1e-10)
        {
            s = Math.Clamp(((cosine * f) - c) / denominator, aLeast, aMost);
        }
        else
        {
            // Side by side: the middle of where both are, if they are anywhere.
            var (one, other) = ((bLeast * cosine) - c, (bMost * cosine) - c);
            var (least, most) = (Math.Max(aLeast, Math.Min(one, other)), Math.Min(aMost, Math.Max(one, other)));
            s = Math.Clamp((least + most) / 2, aLeast, aMost);
        }
        var t = Math.Clamp((cosine * s) + f, bLeast, bMost);
        s = Math.Clamp((cosine * t) - c, aLeast, aMost);
        return (a.From + (a.Along * s), b.From + (b.Along * t));
    }

    private static (double Least, double Most) Extent(in Cylinder body) =>
        (-Beyond(body.Along.Dot(body.FromCut), body.Radius), body.Depth + Beyond(body.Along.Dot(body.ToCut), body.Radius));

    /// <summary>How far a rim that is cut aslant goes beyond its middle: the radius times the tangent of the slant.</summary>
    private static double Beyond(double cosine, double radius) => radius * Math.Sqrt(Math.Max(0, (1 / (cosine * cosine)) - 1));

    private static double OfConvex(in Cylinder a, in Cylinder b, double upTo)
    {
        Span<Point3> corners = stackalloc Point3[4];
        var count = 0;
        var nearest = ((a.From + a.To) - (b.From + b.To)) * 0.5;
        for (var step = 0; step < MostSteps; step++)
        {
            var squared = nearest.Dot(nearest);
            if (squared < Close * Close)
                return 0;
            var next = a.Farthest(-nearest) - b.Farthest(nearest);
            var bound = nearest.Dot(next);
            if (squared - bound <= Relative * squared)
                break;
            // The bodies lie at least so far apart.
            if (bound > 0 && bound * bound >= upTo * upTo * squared)
                return bound / Math.Sqrt(squared);
            corners[count++] = next;
            nearest = Nearest(corners, ref count);
            if (count == 4)
                return 0;
        }
        return nearest.Size;
    }

    /// <summary>The point nearest to the origin of what the corners span. Corners that it does not need are let go; four are kept where they enclose it.</summary>
    private static Point3 Nearest(Span<Point3> corners, ref int count)
    {
        switch (count)
        {
            case 1:
                return corners[0];
            case 2:
                return OnEdge(corners, ref count);
            case 3:
                return OnTriangle(corners, ref count);
            default:
                return InTetrahedron(corners, ref count);
        }
    }

    private static Point3 OnEdge(Span<Point3> corners, ref int count)
    {
        var (a, b) = (corners[0], corners[1]);
        var edge = b - a;
        var share = -a.Dot(edge) / edge.Dot(edge);
        if (!(share > 0))
            return Keep(corners, ref count, a);
        return share >= 1 ? Keep(corners, ref count, b) : a + (edge * share);
    }

    /// <summary>By the regions that a triangle's corners, edges and inside divide space into. Source: plane geometry.</summary>
    private static Point3 OnTriangle(Span<Point3> corners, ref int count)
    {
        var (a, b, c) = (corners[0], corners[1], corners[2]);
        var (ab, ac) = (b - a, c - a);
        var (d1, d2) = (-ab.Dot(a), -ac.Dot(a));
        if (d1 <= 0 && d2 <= 0)
            return Keep(corners, ref count, a);
        var (d3, d4) = (-ab.Dot(b), -ac.Dot(b));
        if (d3 >= 0 && d4 <= d3)
            return Keep(corners, ref count, b);
        var vc = (d1 * d4) - (d3 * d2);
        if (vc <= 0 && d1 >= 0 && d3 <= 0)
            return Keep(corners, ref count, a, b, a + (ab * (d1 / (d1 - d3))));
        var (d5, d6) = (-ab.Dot(c), -ac.Dot(c));
        if (d6 >= 0 && d5 <= d6)
            return Keep(corners, ref count, c);
        var vb = (d5 * d2) - (d1 * d6);
        if (vb <= 0 && d2 >= 0 && d6 <= 0)
            return Keep(corners, ref count, a, c, a + (ac * (d2 / (d2 - d6))));
        var va = (d3 * d6) - (d5 * d4);
        if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
            return Keep(corners, ref count, b, c, b + ((c - b) * ((d4 - d3) / (d4 - d3 + d5 - d6))));
        var share = 1 / (va + vb + vc);
        return a + (ab * (vb * share)) + (ac * (vc * share));
    }

    private static Point3 InTetrahedron(Span<Point3> corners, ref int count)
    {
        Span<Point3> face = stackalloc Point3[3];
        Span<Point3> best = stackalloc Point3[3];
        var (nearest, least, kept) = (default(Point3), double.PositiveInfinity, 0);
        for (var opposite = 0; opposite < 4; opposite++)
        {
            var (a, b, c) = (corners[(opposite + 1) % 4], corners[(opposite + 2) % 4], corners[(opposite + 3) % 4]);
            var normal = (b - a).Cross(c - a);
            // The origin and the fourth corner on one side: the nearest point is not on this face.
            if (-a.Dot(normal) * (corners[opposite] - a).Dot(normal) > 0)
                continue;
            (face[0], face[1], face[2]) = (a, b, c);
            var faceCount = 3;
            var onFace = OnTriangle(face, ref faceCount);
            if (onFace.Dot(onFace) >= least)
                continue;
            (nearest, least, kept) = (onFace, onFace.Dot(onFace), faceCount);
            face.CopyTo(best);
        }
        if (kept == 0)
            return default;
        best[..kept].CopyTo(corners);
        count = kept;
        return nearest;
    }

    private static Point3 Keep(Span<Point3> corners, ref int count, in Point3 corner)
    {
        corners[0] = corner;
        count = 1;
        return corner;
    }

    private static Point3 Keep(Span<Point3> corners, ref int count, in Point3 one, in Point3 other, in Point3 nearest)
    {
        (corners[0], corners[1]) = (one, other);
        count = 2;
        return nearest;
    }
}
