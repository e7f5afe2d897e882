using CutShop.Shop.Store;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Site;

/// <summary>Words of the pages for installers, in English and Spanish.</summary>
public static class SiteWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(SiteWords));

    internal static PageText T { get; } = new(List);

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);

    /// <summary>What is reported of a piece.</summary>
    public static Sentence KindOf(SiteReportKind kind) => Of(kind switch
    {
        SiteReportKind.TooShort => "TooShort",
        SiteReportKind.TooLong => "TooLong",
        SiteReportKind.Damaged => "Damaged",
        SiteReportKind.Missing => "Missing",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    });
}
