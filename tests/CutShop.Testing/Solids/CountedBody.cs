namespace CutShop.Testing.Solids;

/// <summary>
/// A round body between two planes, of which random points are taken: three random shares make a point of it. What is asked of it is what
/// its points say; shares of good points are tried again with smaller and smaller changes.
/// </summary>
internal sealed class CountedBody
{
    private const int Steps = 300;
    private const int Starts = 150;
    private const double First = 0.6;
    private const double Last = 0.001;

    private readonly double[] _middle;
    private readonly double[] _way;
    private readonly double[] _one;
    private readonly double[] _other;
    private readonly double _radius;
    private readonly (double[] Normal, double Most)[] _planes;

    /// <param name="middle">A point of the axis.</param>
    /// <param name="way">The axis, of length 1.</param>
    /// <param name="radius">Half the diameter.</param>
    /// <param name="planes">Two planes that bound it at its ends: points p with normal · p at most so much.</param>
    public CountedBody(double[] middle, double[] way, double radius, params (double[] Normal, double Most)[] planes)
    {
        (_middle, _way, _radius, _planes) = (middle, way, radius, planes);
        // Two directions square to the axis and to each other.
        _one = Unit(Math.Abs(way[2]) < 0.9 ? [-way[1], way[0], 0] : [0, -way[2], way[1]]);
        _other = [(way[1] * _one[2]) - (way[2] * _one[1]), (way[2] * _one[0]) - (way[0] * _one[2]), (way[0] * _one[1]) - (way[1] * _one[0])];
    }

    /// <summary>True for a point in the body.</summary>
    public bool Holds(double[] point)
    {
        double[] from = [point[0] - _middle[0], point[1] - _middle[1], point[2] - _middle[2]];
        var along = Dot(from, _way);
        return Dot(from, from) - (along * along) <= _radius * _radius && Dot(point, _planes[0].Normal) <= _planes[0].Most && Dot(point, _planes[1].Normal) <= _planes[1].Most;
    }

    /// <summary>The farthest that a point of the body lies in a direction of length 1. With more patience more points are tried.</summary>
    public double Farthest(double[] direction, int patience, Random random)
    {
        var best = Start(random);
        var most = Dot(At(best), direction);
        for (var step = -Starts; step < Steps * patience; step++)
        {
            var tried = step < 0 ? Start(random) : Near(best, Scale(step, Steps * patience), random);
            if (Dot(At(tried), direction) is var far && far >= most)
                (best, most) = (tried, far);
        }
        return most;
    }

    /// <summary>The least distance between points of two bodies; 0 where a point in both is found. With more patience more points are tried.</summary>
    public double GapTo(CountedBody other, int patience, Random random)
    {
        var (here, there) = (Start(random), Start(random));
        var (pointHere, pointThere) = (At(here), other.At(there));
        var least = Distance(pointHere, pointThere);
        var steps = Steps * 6 * patience;
        for (var step = -Starts * 4; step < steps; step++)
        {
            var (scale, which) = (Scale(step, steps), step < 0 ? 0 : step % 3);
            var (a, b) = step < 0 ? (Start(random), Start(random))
                : (which == 1 ? here : Near(here, scale, random), which == 2 ? there : Near(there, scale, random));
            var (pointA, pointB) = (which == 1 ? pointHere : At(a), which == 2 ? pointThere : other.At(b));
            if (other.Holds(pointA) || Holds(pointB))
                return 0;
            var apart = Distance(pointA, pointB);
            if (apart <= least)
                (here, there, pointHere, pointThere, least) = (a, b, pointA, pointB, apart);
        }
        return least;
    }

    /// <summary>How much of the way between two points lies in the body, by a random point in each of many steps.</summary>
    public double LengthOn(double[] from, double[] to, int steps, Random random)
    {
        var inside = 0;
        for (var step = 0; step < steps; step++)
        {
            var share = (step + random.NextDouble()) / steps;
            if (Holds([from[0] + (share * (to[0] - from[0])), from[1] + (share * (to[1] - from[1])), from[2] + (share * (to[2] - from[2]))]))
                inside++;
        }
        return Distance(from, to) * inside / steps;
    }

    /// <summary>The point of three shares: from the axis outwards, round it, and from one plane to the other.</summary>
    private double[] At((double Out, double Round, double Along) shares)
    {
        var (sine, cosine) = Math.SinCos(2 * Math.PI * shares.Round);
        var radius = _radius * Math.Sqrt(shares.Out);
        var point = new double[3];
        for (var i = 0; i < 3; i++)
            point[i] = _middle[i] + (radius * ((cosine * _one[i]) + (sine * _other[i])));
        var (one, other) = (Until(0), Until(1));
        var far = one + (shares.Along * (other - one));
        for (var i = 0; i < 3; i++)
            point[i] += far * _way[i];
        return point;

        double Until(int plane) => (_planes[plane].Most - Dot(point, _planes[plane].Normal)) / Dot(_way, _planes[plane].Normal);
    }

    private static (double, double, double) Start(Random random) => (random.NextDouble(), random.NextDouble(), random.NextDouble());

    private static (double, double, double) Near((double Out, double Round, double Along) shares, double scale, Random random) =>
        (Math.Clamp(shares.Out + Change(scale, random), 0, 1), shares.Round + Change(scale, random), Math.Clamp(shares.Along + Change(scale, random), 0, 1));

    private static double Change(double scale, Random random) => scale * ((2 * random.NextDouble()) - 1);

    private static double Scale(int step, int steps) => First * Math.Pow(Last / First, (double)step / steps);

    private static double Dot(double[] a, double[] b) => (a[0] * b[0]) + (a[1] * b[1]) + (a[2] * b[2]);

    private static double[] Unit(double[] a)
    {
        var size = Math.Sqrt(Dot(a, a));
        return [a[0] / size, a[1] / size, a[2] / size];
    }

    private static double Distance(double[] a, double[] b) =>
        Math.Sqrt(((a[0] - b[0]) * (a[0] - b[0])) + ((a[1] - b[1]) * (a[1] - b[1])) + ((a[2] - b[2]) * (a[2] - b[2])));
}
