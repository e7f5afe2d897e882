using CutShop.Takeoff.Words;

namespace CutShop.Shop.Stock;

/// <summary>What the rack and the cut plans answer, in words.</summary>
public static class StockReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(StockReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
