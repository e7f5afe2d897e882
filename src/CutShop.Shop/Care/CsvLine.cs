using System.Globalization;

namespace CutShop.Shop;

/// <summary>Lines of CSV (RFC 4180) for a spreadsheet.</summary>
public static class CsvLine
{
    /// <summary>
    /// A line without its end. A cell is quoted where it must be; a text that a spreadsheet would run as a formula starts with
    /// an apostrophe, a number stays a number.
    /// </summary>
    public static string Of(IEnumerable<string> cells) => string.Join(',', cells.Select(Cell));

    private static string Cell(string text)
    {
        var safe = text is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..] && !IsNumber(text) ? $"'{text}" : text;
        return safe.AsSpan().ContainsAny(",\"\r\n") ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : safe;
    }

    private static bool IsNumber(string text) =>
        text is ['-', ..] && decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _);
}
