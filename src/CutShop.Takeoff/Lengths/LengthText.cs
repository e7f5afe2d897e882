using System.Buffers;
using System.Globalization;
using System.Text;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Lengths;

/// <summary>
/// Lengths as people write them: feet, inches and fractions to 1/64, decimal inches, or millimetres, centimetres and metres.
/// Reading and printing are the same in every culture.
/// </summary>
public static class LengthText
{
    /// <summary>The longest text that is read as a length.</summary>
    public const int LongestText = 64;

    /// <summary>Characters that are read as plainer ones.</summary>
    private static readonly SearchValues<char> Typeset = SearchValues.Create("’′‘”″“−–⁄\u00A0\u2009\u202F\t½¼¾⅛⅜⅝⅞");

    /// <summary>What a length may look like, for messages.</summary>
    public static Sentence Accepted { get; } = LengthWords.Of("ALength");

    /// <summary>
    /// Reads a length. After feet a bare number is inches; after whole metres two digits are centimetres and three millimetres. A fraction is a
    /// proper one with a denominator of 2 to 64 by powers of two. A comma is read as a decimal point unless it may part thousands, as in
    /// <c>1,700</c>. The text must be a whole number of nanometres, so nothing is rounded.
    /// </summary>
    /// <param name="text">The text, at most <see cref="LongestText"/> characters.</param>
    /// <param name="allowNegative">True takes a leading minus, which turns the whole length round.</param>
    /// <param name="bareUnit">
    /// The unit of a number that has none, or null where it must have one. Where it is the inch or the foot, two whole numbers without a unit are
    /// feet and inches: <c>5 6</c>, <c>39 10 1/4</c>.
    /// </param>
    /// <returns>The length, or what is wrong with the text.</returns>
    public static Parsed<Length> Parse(ReadOnlySpan<char> text, bool allowNegative = false, Length? bareUnit = null)
    {
        if (text.Length > LongestText)
            return Bad("LongerThan", LongestText, Accepted);

        var reader = new LengthReader(PlainMarks(text));
        var negative = reader.Take('-');
        if (negative && !allowNegative)
            return Bad("NegativeLength", Accepted);
        var isBareFeet = (bareUnit == Length.Inch || bareUnit == Length.Foot) && reader.IsBareFeet;
        if ((isBareFeet ? reader.ReadBareFeet() : reader.ReadMeasure(bareUnit)) is not { } first)
            return Parsed.Bad<Length>(reader.Problem());

        var total = first;
        if (first.Unit == Length.Foot && !reader.AtEnd)
        {
            if (!first.IsWhole)
                return Bad("WholeFeet", Accepted);
            reader.Take('-');
            if (reader.ReadMeasure(bareUnit: Length.Inch) is not { } inches)
                return Parsed.Bad<Length>(reader.Problem());
            if (inches.Unit != Length.Inch)
                return Bad("OnlyInchesAfterFeet", Accepted);
            if (inches.Nanometres >= (ulong)Length.Foot.Nanometres)
                return Bad("InchesUnderTwelve", Accepted);
            total = inches with { Nanometres = first.Nanometres + inches.Nanometres };
        }
        else if (first is { IsWhole: true } && first.Unit == Length.Metre && !reader.AtEnd)
        {
            if (reader.ReadAfterMetres() is not { } rest)
                return Parsed.Bad<Length>(reader.Problem());
            total = rest with { Nanometres = first.Nanometres + rest.Nanometres };
        }

        if (!reader.AtEnd)
            return Parsed.Bad<Length>(reader.Problem());
        if (total.IsFiner)
            return Bad("FinerThanANanometre");
        if (total.Nanometres > long.MaxValue)
            return Bad("TooLong");
        return Parsed.Good(Length.FromNanometres(negative ? -(long)total.Nanometres : (long)total.Nanometres));
    }

    /// <summary>
    /// Feet, inches and a fraction, such as <c>6' 2 3/8"</c> or <c>6' 0 3/8"</c>, to the nearest whole number of 1/<paramref name="denominator"/> in.
    /// A length that had to be rounded starts with <c>≈</c>, so that nothing is rounded silently.
    /// </summary>
    /// <param name="length">The length.</param>
    /// <param name="denominator">2, 4, 8, 16, 32 or 64; a fraction prints in its lowest terms.</param>
    public static string FeetInches(Length length, int denominator = 64)
    {
        var (shown, mark) = Shown(length, denominator);
        var (feet, inches) = SplitFeet(shown);
        var text = feet == 0 ? $"{InchFraction(inches)}\"" : string.Create(CultureInfo.InvariantCulture, $"{feet}' {InchFraction(inches, showZero: true)}\"");
        return mark + Sign(length) + text;
    }

    /// <summary>Inches and a fraction alone, such as <c>74 3/8 in</c>; rounded and marked as in <see cref="FeetInches"/>.</summary>
    public static string Inches(Length length, int denominator = 64)
    {
        var (shown, mark) = Shown(length, denominator);
        return $"{mark}{Sign(length)}{InchFraction(shown)} in";
    }

    /// <summary>
    /// Millimetres with at most <paramref name="decimals"/> decimals, such as <c>1889.1 mm</c>, trailing zeros left off;
    /// a length that had to be rounded starts with <c>≈</c>.
    /// </summary>
    public static string Millimetres(Length length, int decimals = 1)
    {
        var exact = length.Nanometres / (decimal)Length.Millimetre.Nanometres;
        var rounded = Math.Round(exact, decimals, MidpointRounding.AwayFromZero);
        var mark = rounded == exact ? "" : "≈ ";
        return string.Create(CultureInfo.InvariantCulture, $"{mark}{rounded:0.######} mm");
    }

    /// <summary>A length's text with blanks at which no line breaks; it reads as the same length.</summary>
    public static string Unbroken(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Replace(' ', '\u00A0');
    }

    /// <summary>The exact length: feet, inches and a fraction where a 64th of an inch says it, else millimetres to the nanometre.</summary>
    public static string Exact(Length length) =>
        length.IsWhole(Length.FromSixtyFourths(1)) ? FeetInches(length) : Millimetres(length, decimals: 6);

    /// <summary>The length in one short form: inches where a 64th says it exactly, such as <c>5 1/2 in</c>, else millimetres to a tenth.</summary>
    public static string Brief(Length length) =>
        length.IsWhole(Length.FromSixtyFourths(1)) ? Inches(length) : Millimetres(length);

    private static (Length Size, string Mark) Shown(Length length, int denominator)
    {
        if (denominator is not (1 or 2 or 4 or 8 or 16 or 32 or 64))
            throw new ArgumentOutOfRangeException(nameof(denominator), denominator, "A tape is marked in halves, down to 64ths.");
        var size = length.Abs();
        var rounded = size.RoundTo(Length.FromSixtyFourths(64 / denominator));
        return (rounded, rounded == size ? "" : "≈ ");
    }

    private static string Sign(Length length) => length.IsNegative ? "-" : "";

    private static (long Feet, Length Inches) SplitFeet(Length size)
    {
        var rest = size - size.RoundDownTo(Length.Foot);
        return ((size.Nanometres - rest.Nanometres) / Length.Foot.Nanometres, rest);
    }

    private static string InchFraction(Length size, bool showZero = false)
    {
        var sixtyFourths = size.Nanometres / Length.FromSixtyFourths(1).Nanometres;
        var (whole, part) = Math.DivRem(sixtyFourths, 64);
        if (part == 0)
            return whole.ToString(CultureInfo.InvariantCulture);
        var shift = long.TrailingZeroCount(part);
        var fraction = string.Create(CultureInfo.InvariantCulture, $"{part >> (int)shift}/{64 >> (int)shift}");
        return whole == 0 && !showZero ? fraction : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}");
    }

    private static Parsed<Length> Bad(string key, params IReadOnlyList<object?> values) => Parsed.Bad<Length>(LengthWords.Of(key, values));

    /// <summary>Curly and slanted marks, no-break spaces and one-character fractions as their plain forms.</summary>
    private static ReadOnlySpan<char> PlainMarks(ReadOnlySpan<char> text)
    {
        if (!text.ContainsAny(Typeset))
            return text;
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            plain.Append(c switch
            {
                '’' or '′' or '‘' => "'",
                '”' or '″' or '“' => "\"",
                '−' or '–' => "-",
                '⁄' => "/",
                '\u00A0' or '\u2009' or '\u202F' or '\t' => " ",
                '½' => " 1/2",
                '¼' => " 1/4",
                '¾' => " 3/4",
                '⅛' => " 1/8",
                '⅜' => " 3/8",
                '⅝' => " 5/8",
                '⅞' => " 7/8",
                _ => c.ToString(),
            });
        }
        return plain.ToString();
    }
}
