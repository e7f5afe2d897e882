namespace CutShop.Takeoff.Rules;

/// <summary>
/// A rope hanging between two supports as a catenary. All figures in one unit of the caller's choice.
/// </summary>
/// <remarks>
/// With q = a / 2c, where a is the level distance and c the catenary's parameter, the drop s from the chord at mid-span and
/// the arc L are, for a second support higher by h:
/// <code>
/// s² = (a/2)² [ ((cosh q − 1)/q)² + (h/a)² tanh²(q/2) ]      from  s = c cosh u (cosh q − 1),  sinh u = h / (2c sinh q)
/// L² = h² + (a sinh q / q)²
/// </code>
/// Both grow with q from nothing and from the chord, so either has one solution. Source: any statics course on cables; the
/// forms here follow from y = c cosh(x/c).
/// </remarks>
/// <param name="Level">Level distance between the supports, above zero.</param>
/// <param name="Rise">Height of the second support over the first.</param>
/// <param name="Sag">Vertical drop from the chord at mid-span.</param>
/// <param name="Arc">Length of the rope.</param>
/// <param name="Parameter">The parameter c: the height of the low point over the directrix, and the horizontal pull over the weight by length. Infinite for a straight rope.</param>
public readonly record struct HangingRope(double Level, double Rise, double Sag, double Arc, double Parameter)
{
    /// <summary>A step of Newton's method this small, relative to q, leaves an error of about its square.</summary>
    private const double SmallStep = 1e-6;

    private const int MostSteps = 200;

    /// <summary>Above the logarithm of 2 q for every q that a rope on a site can have.</summary>
    private const double LogMargin = 5;

    /// <summary>The straight distance between the supports.</summary>
    public double Chord => Hypotenuse(Level, Rise);

    /// <summary>True where the rope is straight.</summary>
    public bool IsStraight => double.IsPositiveInfinity(Parameter);

    /// <summary>The rope that drops <paramref name="sag"/> below the chord at mid-span.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level distance is not positive or the sag is negative.</exception>
    public static HangingRope FromSag(double level, double rise, double sag)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(level);
        ArgumentOutOfRangeException.ThrowIfNegative(sag);
        if (sag == 0)
            return Straight(level, rise);
        var slope = rise / level;
        // A shallow rope has q = 4 s / chord, a deep one at most about e^q = 4 s q / a.
        var most = LogMargin + Math.Log(1 + (4 * sag / level));
        var q = Solve(DropAndDerivative, slope, 2 * sag / level, 4 * sag / Hypotenuse(level, rise), most);
        return new(level, rise, sag, ArcOf(level, rise, q), level / (2 * q));
    }

    /// <summary>The rope that is longer than the chord by <paramref name="slack"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level distance is not positive or the slack is negative.</exception>
    public static HangingRope FromSlack(double level, double rise, double slack)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(level);
        ArgumentOutOfRangeException.ThrowIfNegative(slack);
        // L² − h² = a² (1 + e), so sinh q / q = √(1 + e); what is left over 1 is kept apart so that a small slack loses no digits.
        var chord = Hypotenuse(level, rise);
        var excess = slack * ((2 * chord) + slack) / (level * level);
        if (excess == 0)
            return Straight(level, rise) with { Arc = chord + slack };
        var overOne = excess / (1 + Math.Sqrt(1 + excess));
        var most = LogMargin + Math.Log(1 + overOne);
        var q = Solve(StretchAndDerivative, slope: 0, overOne, Math.Sqrt(6 * overOne), most);
        return new(level, rise, level / 2 * DropAndDerivative(q, rise / level).Value, chord + slack, level / (2 * q));
    }

    /// <summary>The rope of a given length, or null where it is shorter than the straight distance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level distance is not positive.</exception>
    public static HangingRope? FromArc(double level, double rise, double arc)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(level);
        var slack = arc - Hypotenuse(level, rise);
        return slack < 0 ? null : FromSlack(level, rise, slack);
    }

    /// <summary>The drop below the chord at a level distance <paramref name="x"/> from the first support.</summary>
    public double DropAt(double x)
    {
        if (IsStraight)
            return 0;
        // y(x) − y(0) = 2 c sinh(x / 2c) sinh(m), where m is the mean of both places over c, measured from the low point.
        var c = Parameter;
        var atMiddle = Math.Asinh(Rise / (2 * c * Math.Sinh(Level / (2 * c))));
        var mean = atMiddle + ((x - Level) / (2 * c));
        return (Rise * x / Level) - (2 * c * Math.Sinh(x / (2 * c)) * Math.Sinh(mean));
    }

    /// <summary>Lengths on a site are far from where their squares would overflow.</summary>
    private static double Hypotenuse(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static HangingRope Straight(double level, double rise) =>
        new(level, rise, Sag: 0, Hypotenuse(level, rise), double.PositiveInfinity);

    private static double ArcOf(double level, double rise, double q) => Hypotenuse(rise, level * Math.Sinh(q) / q);

    /// <summary>The drop at mid-span over half the level distance, and its derivative; the slope is h / a.</summary>
    private static (double Value, double Derivative) DropAndDerivative(double q, double slope)
    {
        // One sinh gives all: cosh² = 1 + sinh², cosh q − 1 = 2 sinh²(q/2), sinh q = 2 sinh(q/2) cosh(q/2).
        var sinh = Math.Sinh(q / 2);
        var cosh2 = 1 + (sinh * sinh);
        var cosh = Math.Sqrt(cosh2);
        var droop = 2 * sinh * sinh / q;
        var droopDerivative = ((2 * sinh * cosh) - droop) / q;
        var tilt = slope * sinh / cosh;
        var tiltDerivative = slope / (2 * cosh2);
        var size = Hypotenuse(droop, tilt);
        return (size, ((droop * droopDerivative) + (tilt * tiltDerivative)) / size);
    }

    /// <summary>sinh q / q − 1 and its derivative, by series where the difference would lose digits. The slope has no part in it.</summary>
    private static (double Value, double Derivative) StretchAndDerivative(double q, double slope)
    {
        var q2 = q * q;
        if (q < 0.3)
        {
            var value = q2 / 6 * (1 + (q2 / 20 * (1 + (q2 / 42 * (1 + (q2 / 72 * (1 + (q2 / 110))))))));
            var derivative = q / 3 * (1 + (q2 / 10 * (1 + (q2 / 28 * (1 + (q2 / 54 * (1 + (q2 / 88))))))));
            return (value, derivative);
        }
        var sinh = Math.Sinh(q);
        return ((sinh / q) - 1, (Math.Cosh(q) - (sinh / q)) / q);
    }

    /// <summary>Newton's method on a growing function, kept between bounds that close in, so that it always ends.</summary>
    private static double Solve(
        Func<double, double, (double Value, double Derivative)> function, double slope, double target, double start, double most)
    {
        var (below, above) = (0.0, most);
        var q = Math.Min(start, most);
        for (var step = 0; step < MostSteps; step++)
        {
            var (value, derivative) = function(q, slope);
            if (value < target)
                below = q;
            else
                above = q;
            var next = q - ((value - target) / derivative);
            if (Math.Abs(next - q) <= SmallStep * q)
                return next;
            q = next > below && next < above ? next : (below + above) / 2;
        }
        return q;
    }
}
