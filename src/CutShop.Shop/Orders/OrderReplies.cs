using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>What the shop says of drafts that become quotes and jobs, of quotes and of prices.</summary>
public static class OrderReplies
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(OrderReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
