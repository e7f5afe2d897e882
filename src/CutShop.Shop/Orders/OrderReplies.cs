using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>The shop's answers about drafts that become quotes and jobs, quotes and prices.</summary>
public static class OrderReplies
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(OrderReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
