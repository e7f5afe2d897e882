namespace CutShop.Shop.Store;

/// <summary>The words of <see cref="SiteReportKind"/> as forms send and tables keep them.</summary>
public static class SiteReportWords
{
    private static readonly Dictionary<string, SiteReportKind> Words = new()
    {
        ["too-short"] = SiteReportKind.TooShort,
        ["too-long"] = SiteReportKind.TooLong,
        ["damaged"] = SiteReportKind.Damaged,
        ["missing"] = SiteReportKind.Missing,
    };

    /// <summary>All kinds with their words, in the order of a form.</summary>
    public static IReadOnlyList<(string Word, SiteReportKind Kind)> All { get; } = [.. Words.Select(pair => (pair.Key, pair.Value))];

    /// <summary>The word of a kind.</summary>
    public static string Of(SiteReportKind kind) => All.Single(pair => pair.Kind == kind).Word;

    /// <summary>The kind that a word stands for, or null.</summary>
    public static SiteReportKind? Read(string? word) => word is not null && Words.TryGetValue(word, out var kind) ? kind : null;

    /// <summary>A kind as people say it.</summary>
    public static string Said(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return word.Replace('-', ' ');
    }
}
