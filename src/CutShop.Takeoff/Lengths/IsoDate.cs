using System.Globalization;

namespace CutShop.Takeoff.Lengths;

/// <summary>Dates as text: year-month-day (ISO 8601), the same in every culture.</summary>
public static class IsoDate
{
    private const string Format = "yyyy-MM-dd";

    /// <summary>The date as <c>2027-03-12</c>.</summary>
    public static string Text(DateOnly date) => date.ToString(Format, CultureInfo.InvariantCulture);

    /// <summary>Reads what <see cref="Text"/> wrote.</summary>
    /// <exception cref="FormatException">The text is no such date.</exception>
    public static DateOnly Read(string text) => DateOnly.ParseExact(text, Format, CultureInfo.InvariantCulture);

    /// <summary>Reads <c>2027-03-12</c>; null where the text is no such date.</summary>
    public static DateOnly? Find(string? text) =>
        DateOnly.TryParseExact(text, Format, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;
}
