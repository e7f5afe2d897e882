using CutShop.Shop;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages.Drafts;

/// <summary>The list of open drafts.</summary>
[Authorize(Policy = May.ManageJobs)]
public sealed class IndexModel(DraftShelf drafts, TimeProvider time) : PageModel
{
    /// <summary>The drafts.</summary>
    public IReadOnlyList<DraftListed> Drafts { get; private set; } = [];

    /// <summary>The clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the list.</summary>
    public void OnGet() => Drafts = drafts.Open();
}
