using CutShop.Shop.Stock;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Stock;

/// <summary>A search for a plan while it goes on: the best so far, and a button that takes it.</summary>
[MaySend(Rights.PlanCuts)]
public sealed class SearchModel(PlanSearches searches) : PageModel
{
    /// <summary>The search.</summary>
    public PlanSearch? Search { get; private set; }

    /// <summary>Why no plan was made.</summary>
    public IReadOnlyList<Sentence> Problems { get; private set; } = [];

    /// <summary>Shows how far it is, or goes to the plan.</summary>
    public IActionResult OnGet(long id)
    {
        Search = searches.Find(id);
        if (Search is null)
            return Redirect("/plans");
        if (Search.Answer is not { } answer)
        {
            Response.Headers["Refresh"] = "1";
            return Page();
        }
        if (answer.IsDone)
            return Redirect($"/plans/{answer.PlanId}");
        Problems = answer.Problems;
        return Page();
    }

    /// <summary>Ends the search with the best so far.</summary>
    public IActionResult OnPost(long id)
    {
        searches.Find(id)?.Stop();
        return Redirect($"/plans/search/{id}");
    }
}
