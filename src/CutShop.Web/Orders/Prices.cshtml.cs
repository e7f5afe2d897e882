using CutShop.Shop.Orders;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Orders.OrderWords;

namespace CutShop.Web.Orders;

/// <summary>Today's prices and future ones.</summary>
[Authorize(Policy = Rights.SeePrices)]
[MaySend(Rights.ChangeSettings)]
public sealed class PricesModel(PriceBook prices, ShopDatabase database) : PageModel
{
    /// <summary>The day in the shop.</summary>
    public DateOnly Today { get; private set; }

    /// <summary>The lists, by day.</summary>
    public IReadOnlyList<PriceList> Lists { get; private set; } = [];

    /// <summary>The sign before amounts.</summary>
    public string Currency { get; private set; } = "";

    /// <summary>The sign as typed.</summary>
    public string Typed { get; private set; } = "";

    /// <summary>What is wrong with the sign.</summary>
    public IReadOnlyList<FieldNote> Notes { get; private set; } = [];

    /// <summary>Shows the prices.</summary>
    public void OnGet()
    {
        Today = database.Read(session => session.Today);
        Lists = prices.From(Today);
        Currency = Typed = prices.Currency();
    }

    /// <summary>Sets the sign before amounts.</summary>
    public async Task<IActionResult> OnPostAsync(string? sign, CancellationToken cancel)
    {
        if (await prices.SetCurrencyAsync(sign ?? "", Who.Of(User), cancel) is not { } problem)
            return Redirect("/prices");
        OnGet();
        (Typed, Notes) = (sign ?? "", [new(NoteKind.Error, T[problem])]);
        return Page();
    }
}
