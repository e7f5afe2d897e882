using CsvHelper;

namespace CutShop.Shop.Maintenance;

/// <summary>How tables for a spreadsheet are written (RFC 4180).</summary>
public static class SafeCsv
{
    /// <summary>A text that a spreadsheet would run as a formula gets an apostrophe in front; a number stays a number.</summary>
    public static CsvWriterOptions Options { get; } = CsvWriterOptions.Default with { Injection = CsvInjection.Escape, InjectionCharacters = "=+-@\t\r\n" };
}
