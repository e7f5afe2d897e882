using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>A length as somebody typed it, perhaps without its unit.</summary>
public static class TypedLength
{
    /// <summary>The units that a draft may take for granted, with their names.</summary>
    public static IReadOnlyDictionary<string, Sentence> Units { get; } = new Dictionary<string, Sentence>
    {
        ["in"] = OrderReplies.Of("Inches"),
        ["ft"] = OrderReplies.Of("Feet"),
        ["mm"] = OrderReplies.Of("Millimetres"),
        ["cm"] = OrderReplies.Of("Centimetres"),
        ["m"] = OrderReplies.Of("Metres"),
    };

    /// <summary>True for a number that says no unit: digits, a point, a fraction.</summary>
    public static bool IsBare(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return typed.Any(char.IsAsciiDigit) && typed.All(c => char.IsAsciiDigit(c) || c is ' ' or '.' or '/' or '-' or '⁄' or '½' or '¼' or '¾' or '⅛' or '⅜' or '⅝' or '⅞');
    }

    /// <summary>The text with its unit: the job file always has it.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="unit">The draft's unit for bare numbers; empty for none.</param>
    public static string WithUnit(string typed, string unit)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(unit);
        var plain = typed.Trim();
        return IsBare(plain) && Units.ContainsKey(unit) ? $"{plain} {unit}" : plain;
    }

    /// <summary>What was understood, to stand beside the field; empty where nothing was.</summary>
    public static string Echo(string typed, string unit)
    {
        var said = WithUnit(typed, unit);
        var parsed = LengthText.Parse(said, allowNegative: true);
        if (!parsed.IsGood)
            return "";
        var (exact, metric) = (LengthText.Exact(parsed.Value), LengthText.Millimetres(parsed.Value));
        var both = exact == metric ? exact : metric.StartsWith('≈') ? $"{exact} {metric}" : $"{exact} = {metric}";
        return IsBare(typed) ? $"{Units[unit]}: {both}" : both;
    }
}
