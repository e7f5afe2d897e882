using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>A length as somebody typed it, perhaps without its unit.</summary>
public static class TypedLength
{
    private static readonly Dictionary<string, Length> Sizes = new()
    {
        ["in"] = Length.Inch,
        ["ft"] = Length.Foot,
        ["mm"] = Length.Millimetre,
        ["cm"] = Length.Centimetre,
        ["m"] = Length.Metre,
    };

    /// <summary>The units that a draft may take for granted, with their names.</summary>
    public static IReadOnlyDictionary<string, Sentence> Units { get; } = new Dictionary<string, Sentence>
    {
        ["in"] = OrderReplies.Of("Inches"),
        ["ft"] = OrderReplies.Of("Feet"),
        ["mm"] = OrderReplies.Of("Millimetres"),
        ["cm"] = OrderReplies.Of("Centimetres"),
        ["m"] = OrderReplies.Of("Metres"),
    };

    /// <summary>A unit by its short name; null for a name that is none of <see cref="Units"/>, such as an empty one.</summary>
    public static Length? UnitOf(string unit) => Sizes.TryGetValue(unit, out var size) ? size : null;

    /// <summary>True for a number that says no unit: digits, a point or comma, a fraction.</summary>
    public static bool IsBare(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return typed.Any(char.IsAsciiDigit) && typed.All(c => char.IsAsciiDigit(c) || c is ' ' or '.' or ',' or '/' or '-' or '–' or '⁄' or '½' or '¼' or '¾' or '⅛' or '⅜' or '⅝' or '⅞');
    }

    /// <summary>
    /// The diameter of a rope or a bit: a bare number is inches. Two whole numbers are not feet and inches here, but a fraction cut short.
    /// </summary>
    public static Parsed<Length> Diameter(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return LengthText.Parse(IsBare(typed.Trim()) ? $"{typed.Trim()} in" : typed);
    }

    /// <summary>What was understood, in feet and inches and in millimetres, to stand beside the field; empty where nothing was.</summary>
    public static string Echo(string typed, string unit)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(unit);
        var parsed = LengthText.Parse(typed, allowNegative: true, UnitOf(unit));
        if (!parsed.IsGood)
            return "";
        var both = Both(parsed.Value);
        if (!IsBare(typed))
            return both;
        var isOneNumber = LengthText.Parse($"{typed} {unit}", allowNegative: true).IsGood;
        return $"{(isOneNumber ? Units[unit] : OrderReplies.Of("FeetAndInches"))}: {both}";
    }

    /// <summary>The length as it was typed, exact, and then the other way.</summary>
    private static string Both(Length length)
    {
        var metric = LengthText.Millimetres(length);
        if (!length.IsWhole(Length.FromSixtyFourths(1)))
            return $"{LengthText.Exact(length)} {LengthText.FeetInches(length, denominator: 16)}";
        return metric.StartsWith('≈') ? $"{LengthText.Exact(length)} {metric}" : $"{LengthText.Exact(length)} = {metric}";
    }
}
