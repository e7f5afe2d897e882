using CutShop.Shop.Orders;
using CutShop.Shop.Store;
using CutShop.Takeoff.Words;

namespace CutShop.Cli;

/// <summary>Invented prices for Lantern Quay, so that the demo's desk can quote.</summary>
internal static class DemoPrices
{
    private static readonly PriceForm List = new(
        ValidFrom: "2026-01-01",
        Cut: "4.50",
        Packing: "35",
        Delivery: "120",
        Tax: "6.25%",
        QuoteDays: "30",
        [
            new("polypropylene", "1 1/4 in", "1.65"),
            new("polypropylene", "1 1/2 in", "2.125"),
            new("polypropylene", "2 in", "3.40"),
            new("manila", "1 1/2 in", "2.80"),
            new("manila", "2 in", "4.60"),
        ],
        [new("1 1/4 in", "3"), new("1 3/4 in", "4.25"), new("2 1/4 in", "5.50")]);

    /// <summary>Keeps them once; a shop that has changed its prices since keeps its own.</summary>
    public static Task KeepAsync(ShopDatabase database, CancellationToken cancel)
    {
        var problems = new Dictionary<string, Sentence>();
        var list = List.Read("$", problems) ?? throw new InvalidDataException($"The demo's prices are wrong: {string.Join(", ", problems.Keys)}.");
        return new PriceBook(database).KeepAsync(list, Environment.UserName, "the demo's prices", cancel);
    }
}
