using CutShop.Takeoff.Words;

namespace CutShop.Shop.Site;

/// <summary>What is replied where a label, a site pack or a report cannot be changed, in English and Spanish.</summary>
public static class SiteReplies
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(SiteReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
