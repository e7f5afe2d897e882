using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Stock;

/// <summary>What the pages of coils, cut plans, bits and the board say.</summary>
internal static class StockWords
{
    public static WordList List { get; } = new(typeof(StockWords));

    internal static PageText T { get; } = new(List);
}
