using System.Globalization;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Lengths;

/// <summary>A share of something, exact, in whole millionths. Ordering is by size; <c>default</c> is none of it.</summary>
/// <param name="Millionths">The share in millionths: 12.5 % is 125,000. Range 0 to 1,000,000.</param>
public readonly record struct Share(int Millionths)
{
    private const int One = 1_000_000;

    /// <summary>What a share may look like, for messages.</summary>
    internal static readonly Sentence Accepted = LengthWords.Of("AShare");

    /// <summary>None of it.</summary>
    public static Share None => default;

    /// <summary>A share of whole millionths.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below none or above all.</exception>
    public static Share FromMillionths(int millionths)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(millionths);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(millionths, One);
        return new(millionths);
    }

    /// <summary>The share of a length that is lost where less is left of it, to the nearest millionth.</summary>
    /// <exception cref="ArgumentOutOfRangeException">More is left than there was, or there was nothing.</exception>
    public static Share Lost(Length before, Length after)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(after, before);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(before, Length.Zero);
        var lost = (Int128)(before - after).Nanometres * One;
        return new((int)((lost + before.Nanometres / 2) / before.Nanometres));
    }

    /// <summary>Reads <c>12.5%</c>.</summary>
    public static Parsed<Share> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.Trim();
        if (trimmed.Length > 16 || !trimmed.EndsWith('%')
            || !decimal.TryParse(trimmed.AsSpan()[..^1].TrimEnd(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent))
            return Parsed.Bad<Share>(LengthWords.Of("Accepted", Accepted));
        var millionths = percent * (One / 100);
        return millionths == decimal.Truncate(millionths) && millionths <= One
            ? Parsed.Good(new Share((int)millionths))
            : Parsed.Bad<Share>(LengthWords.Of("Accepted", Accepted));
    }

    /// <summary>The length grown by this share, rounded up to a whole nanometre.</summary>
    public Length Grow(Length length)
    {
        var added = (Int128)length.Nanometres * Millionths;
        var whole = (added + One - 1) / One;
        return length + Length.FromNanometres(checked((long)whole));
    }

    /// <summary>The length of which this is left when this share of it is lost, rounded up to a whole nanometre.</summary>
    /// <exception cref="DivideByZeroException">All of it is lost.</exception>
    public Length Before(Length left)
    {
        var whole = (Int128)left.Nanometres * One;
        var kept = One - Millionths;
        return Length.FromNanometres(checked((long)((whole + kept - 1) / kept)));
    }

    /// <summary>What is left of a length when this share of it is lost, rounded down to a whole nanometre.</summary>
    public Length After(Length before) => Length.FromNanometres((long)((Int128)before.Nanometres * (One - Millionths) / One));

    /// <summary>The share to the nearest tenth of a percent.</summary>
    public Share ToTenths() => new((Millionths + 500) / 1000 * 1000);

    /// <summary>The share as a job file writes it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Millionths / (One / 100m):0.####}%");
}
