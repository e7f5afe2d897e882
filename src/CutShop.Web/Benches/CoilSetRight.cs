using CutShop.Shop.Benches;
using CutShop.Shop.Stock;

namespace CutShop.Web.Benches;

/// <summary>A coil that a tap at the cut bench set right.</summary>
/// <param name="Coil">The coil as it is now.</param>
/// <param name="CanTakeBack">True where what was said of it can be taken back.</param>
public sealed record CoilSetRight(StockCoil Coil, bool CanTakeBack)
{
    /// <summary>The coil of a mark in a page's address, or null.</summary>
    internal static CoilSetRight? Of(string? mark, CoilShelf stock, CutBench bench) =>
        mark is not null && stock.Find(mark) is { } coil ? new(coil, bench.CanTakeCoilBack(mark)) : null;
}
