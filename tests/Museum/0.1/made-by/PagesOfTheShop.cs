using System.Globalization;
using CutShop.Shop;

namespace CutShop.Museum;

/// <summary>The pages that are of no one job: stock, plans, drafts, quotes, prices, the benches' first pages, the board, settings.</summary>
internal static class PagesOfTheShop
{
    private static readonly string[] Always =
    [
        "/", "/stock", "/stock/surplus", "/plans", "/cut", "/drill", "/drill/bits", "/pack", "/board", "/drafts", "/prices", "/bits",
        "/reports", "/people", "/tablets", "/settings", "/settings/cutting", "/settings/benches", "/settings/address", "/settings/letterhead",
    ];

    /// <summary>Their addresses.</summary>
    public static IReadOnlyList<string> Of(ShopDatabase database)
    {
        var plans = new PlanShelf(database).List();
        var quotes = new QuoteDesk(database, new ShopTablesShelf(database, Takeoff.ShopTables.Standard));
        return
        [
            .. Always,
            .. new CoilStock(database).InHand().Select(coil => $"/stock/{coil.Mark}"),
            .. plans.Select(plan => string.Create(CultureInfo.InvariantCulture, $"/plans/{plan.Id}")),
            .. new DraftShelf(database).Open().Select(draft => string.Create(CultureInfo.InvariantCulture, $"/drafts/{draft.Id}")),
            .. Enumerable.Range(1, 1000).TakeWhile(id => quotes.Find(id) is not null).Select(id => string.Create(CultureInfo.InvariantCulture, $"/quotes/{id}")),
        ];
    }
}
