using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>
/// The curve itself, y = c cosh((x − x0)/c), found by a root finder and measured by adding up small pieces: none of the
/// product's formulas.
/// </summary>
internal static class Catenary
{
    /// <summary>Drop from the chord at mid-span of the catenary with parameter c.</summary>
    public static double SagOf(double c, double level, double rise) => (rise / 2) - Climb(c, level, rise, level / 2);

    /// <summary>Length by numerical integration of ds = cosh((x − x0)/c) dx.</summary>
    public static double ArcOf(double c, double level, double rise)
    {
        var x0 = LowPoint(c, level, rise);
        return GaussLegendreRule.Integrate(x => Math.Cosh((x - x0) / c), 0, level, 128);
    }

    /// <summary>Drop from the chord at x.</summary>
    public static double DropAt(double c, double level, double rise, double x) => (rise * x / level) - Climb(c, level, rise, x);

    /// <summary>The parameter at which the mid-span drop is the sag.</summary>
    public static double ParameterForSag(double level, double rise, double sag) =>
        FindParameter(level, c => SagOf(c, level, rise) - sag);

    /// <summary>The parameter at which the arc is so long.</summary>
    public static double ParameterForArc(double level, double rise, double arc) =>
        FindParameter(level, c => ArcOf(c, level, rise) - arc);

    private static double FindParameter(double level, Func<double, double> excess) =>
        Math.Exp(Brent.FindRoot(logarithm => excess(Math.Exp(logarithm)), Math.Log(level / 40), Math.Log(level * 1e5), 1e-14, 500));

    /// <summary>Where the curve is lowest, from the condition that it climbs by the rise over the level distance.</summary>
    private static double LowPoint(double c, double level, double rise)
    {
        // The climb c (cosh((a − x0)/c) − cosh(x0/c)) falls steadily in x0; its asinh is tame enough for a root finder.
        var width = level / c;
        return c * Brent.FindRoot(t => Math.Asinh(Math.Cosh(width - t) - Math.Cosh(t)) - Math.Asinh(rise / c), -300, 300, 1e-14, 1000);
    }

    private static double Climb(double c, double level, double rise, double x)
    {
        var x0 = LowPoint(c, level, rise);
        return c * (Math.Cosh((x - x0) / c) - Math.Cosh(x0 / c));
    }
}
