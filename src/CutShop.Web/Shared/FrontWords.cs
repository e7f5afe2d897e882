using CutShop.Takeoff.Words;

namespace CutShop.Web.Shared;

/// <summary>The words of pages that everybody sees, in English and Spanish: signing in, a person's own settings, pages of errors.</summary>
public static class FrontWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(FrontWords));

    internal static PageText T { get; } = new(List);

    /// <summary>A sentence of the list, said later.</summary>
    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
