using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Orders;

/// <summary>Words of the pages of drafts, quotes and prices.</summary>
public static class OrderWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(OrderWords));

    internal static PageText T { get; } = new(List);
}
