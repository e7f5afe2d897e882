using CutShop.Shop.Orders;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Orders;

/// <summary>The lists of open drafts and open quotes.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class DraftsModel(DraftShelf drafts, QuoteDesk quotes, TimeProvider time) : PageModel
{
    /// <summary>The drafts.</summary>
    public IReadOnlyList<DraftListed> Drafts { get; private set; } = [];

    /// <summary>Quotes that can still be accepted.</summary>
    public IReadOnlyList<QuoteListed> Quotes { get; private set; } = [];

    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the list.</summary>
    public void OnGet() => (Drafts, Quotes) = (drafts.Open(), quotes.Open());
}
