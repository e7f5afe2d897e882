using CutShop.Shop.Orders;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Orders;

/// <summary>The lists of open drafts, open quotes and drafts that were put away.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class DraftsModel(DraftShelf drafts, QuoteDesk quotes, TimeProvider time) : PageModel
{
    /// <summary>The drafts.</summary>
    public IReadOnlyList<DraftListed> Drafts { get; private set; } = [];

    /// <summary>Drafts that were put away.</summary>
    public IReadOnlyList<DraftListed> PutAway { get; private set; } = [];

    /// <summary>Quotes that can still be accepted.</summary>
    public IReadOnlyList<QuoteListed> Quotes { get; private set; } = [];

    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the list.</summary>
    public void OnGet() => (Drafts, PutAway, Quotes) = (drafts.Open(), drafts.PutAway(), quotes.Open());
}
