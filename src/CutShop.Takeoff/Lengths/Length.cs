using System.Globalization;
using System.Runtime.CompilerServices;

namespace CutShop.Takeoff.Lengths;

/// <summary>
/// A length, exact, in whole nanometres. Negative means downhill or short; most places accept positive lengths only.
/// </summary>
/// <remarks>
/// <para>Range: about ±9.2 million kilometres, the range of a 64-bit count of nanometres; leaving it is an
/// <see cref="OverflowException"/>, never a wrap. Granularity: 1 nm. The international inch is 25.4 mm exactly,
/// so every 1/64 in (396,875 nm) and every hundred-thousandth of an inch is a whole number of nanometres.</para>
/// <para>Ordering is by size along the line, negative below positive. <c>default</c> is zero.</para>
/// </remarks>
public readonly record struct Length : IComparable<Length>
{
    private const long NmPerMillimetre = 1_000_000;
    private const long NmPerInch = 25_400_000;
    private const long NmPerSixtyFourth = NmPerInch / 64;
    private const int MmPerMetre = 1000;
    private const int InchesPerFoot = 12;

    private Length(long nanometres) => Nanometres = nanometres;

    /// <summary>No length.</summary>
    public static Length Zero => default;

    /// <summary>One inch, 25.4 mm exactly.</summary>
    public static Length Inch => new(NmPerInch);

    /// <summary>One foot, 12 in.</summary>
    public static Length Foot => new(InchesPerFoot * NmPerInch);

    /// <summary>One millimetre.</summary>
    public static Length Millimetre => new(NmPerMillimetre);

    /// <summary>One centimetre.</summary>
    public static Length Centimetre => new(10 * NmPerMillimetre);

    /// <summary>One metre.</summary>
    public static Length Metre => new(MmPerMetre * NmPerMillimetre);

    /// <summary>The length in whole nanometres: the exact value, and what is stored.</summary>
    public long Nanometres { get; }

    /// <summary>True above zero.</summary>
    public bool IsPositive => Nanometres > 0;

    /// <summary>True below zero.</summary>
    public bool IsNegative => Nanometres < 0;

    /// <summary>The length in inches as a floating-point number, for geometry; not exact.</summary>
    public double Inches => Nanometres / (double)NmPerInch;

    /// <summary>The length in millimetres as a floating-point number, for drawings; not exact.</summary>
    public double Millimetres => Nanometres / (double)NmPerMillimetre;

    /// <summary>A length of whole nanometres.</summary>
    public static Length FromNanometres(long nanometres) => new(nanometres);

    /// <summary>A length of whole inches.</summary>
    public static Length FromInches(long inches) => new(inches * NmPerInch);

    /// <summary>A length of whole 64ths of an inch.</summary>
    public static Length FromSixtyFourths(long sixtyFourths) => new(sixtyFourths * NmPerSixtyFourth);

    /// <summary>
    /// The one place where geometry becomes a length: inches, rounded to the nearest nanometre, halves away from zero.
    /// </summary>
    /// <exception cref="OverflowException">The figure is not finite or out of range.</exception>
    public static Length RoundedFromInches(double inches)
    {
        var nanometres = Math.Round(inches * NmPerInch, MidpointRounding.AwayFromZero);
        // 2^63 is a double; the largest long is not, so the upper bound is exclusive.
        if (!(nanometres >= long.MinValue && nanometres < -(double)long.MinValue))
            throw new OverflowException($"{inches.ToString(CultureInfo.InvariantCulture)} in is outside the range of a length.");
        return new((long)nanometres);
    }

    /// <summary>The smaller of two lengths.</summary>
    public static Length Min(Length a, Length b) => a < b ? a : b;

    /// <summary>The larger of two lengths.</summary>
    public static Length Max(Length a, Length b) => a > b ? a : b;

    /// <summary>The length without its sign.</summary>
    public Length Abs() => new(Math.Abs(Nanometres));

    /// <summary>The nearest length at or above this one that is a whole number of <paramref name="step"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="step"/> is not positive.</exception>
    public Length RoundUpTo(Length step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step.Nanometres, nameof(step));
        var remainder = Modulo(Nanometres, step.Nanometres);
        return remainder == 0 ? this : new(Nanometres - remainder + step.Nanometres);
    }

    /// <summary>The nearest length at or below this one that is a whole number of <paramref name="step"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="step"/> is not positive.</exception>
    public Length RoundDownTo(Length step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step.Nanometres, nameof(step));
        return new(Nanometres - Modulo(Nanometres, step.Nanometres));
    }

    /// <summary>The nearest whole number of <paramref name="step"/>, halves away from zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="step"/> is not positive.</exception>
    public Length RoundTo(Length step)
    {
        var down = Abs().RoundDownTo(step);
        var rest = Abs() - down;
        var size = rest.Nanometres >= step.Nanometres - rest.Nanometres ? down + step : down;
        return IsNegative ? -size : size;
    }

    /// <summary>True where the length is a whole number of <paramref name="step"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="step"/> is not positive.</exception>
    public bool IsWhole(Length step)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step.Nanometres, nameof(step));
        return Nanometres % step.Nanometres == 0;
    }

    /// <inheritdoc/>
    public int CompareTo(Length other) => Nanometres.CompareTo(other.Nanometres);

    /// <summary>The exact length as text that <see cref="LengthText.Parse"/> reads back unchanged: inches where a 64th says it, else millimetres.</summary>
    public override string ToString() => LengthText.Exact(this);

    /// <summary>The sum.</summary>
    public static Length operator +(Length a, Length b) => new(a.Nanometres + b.Nanometres);

    /// <summary>The difference.</summary>
    public static Length operator -(Length a, Length b) => new(a.Nanometres - b.Nanometres);

    /// <summary>The length turned round.</summary>
    public static Length operator -(Length a) => new(-a.Nanometres);

    /// <summary>So many times the length.</summary>
    public static Length operator *(Length a, long times) => new(a.Nanometres * times);

    /// <summary>So many times the length.</summary>
    public static Length operator *(long times, Length a) => a * times;

    /// <summary>The length shared out, to the nearest nanometre, halves away from zero.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)] // Nearly always a halving, which then costs no division.
    public static Length operator /(Length a, long parts)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(parts);
        var (quotient, remainder) = Math.DivRem(a.Nanometres, parts);
        return new(Math.Abs(remainder) >= parts - Math.Abs(remainder) ? quotient + Math.Sign(remainder) : quotient);
    }

    /// <summary>Shorter.</summary>
    public static bool operator <(Length a, Length b) => a.Nanometres < b.Nanometres;

    /// <summary>Longer.</summary>
    public static bool operator >(Length a, Length b) => a.Nanometres > b.Nanometres;

    /// <summary>Not longer.</summary>
    public static bool operator <=(Length a, Length b) => a.Nanometres <= b.Nanometres;

    /// <summary>Not shorter.</summary>
    public static bool operator >=(Length a, Length b) => a.Nanometres >= b.Nanometres;

    private static long Modulo(long value, long step)
    {
        var remainder = value % step;
        return remainder < 0 ? remainder + step : remainder;
    }
}
