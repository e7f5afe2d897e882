using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Orders;

/// <summary>What a draft would change in a stored job, before it is accepted.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class ChangeModel(DraftShelf drafts, ShopTablesShelf tables, JobChanging changing, DraftIntake intake, PriceBook prices) : PageModel
{
    /// <summary>The draft's id.</summary>
    public long Id { get; private set; }

    /// <summary>The quote that the customer accepted for it, or null.</summary>
    public long? Quote { get; private set; }

    /// <summary>The change.</summary>
    public JobChange? Change { get; private set; }

    /// <summary>What the job costs before and after it, by today's list; null where there is none.</summary>
    public ChangePrice? Price => prices.Of(Change!);

    /// <summary>Why it was not accepted, or null.</summary>
    public Sentence? Problem { get; private set; }

    /// <summary>Shows the change.</summary>
    public IActionResult OnGet(long id, long? quote)
    {
        (Id, Quote) = (id, quote);
        if (drafts.Find(id) is not { IsOpen: true } draft || DraftReading.Of(draft.Form, tables.Current()).Takeoff is not { } next)
            return Redirect($"/drafts/{id}");
        Change = draft.Form.IsChangeOf(next.Job.Number) ? changing.Compare(next.Job) : null;
        if (Change is null)
            return Redirect($"/drafts/{id}");
        Problem = Change.IsCancelled ? JobChanging.WasCancelled(Change.Number) : null;
        return Page();
    }

    /// <summary>Accepts the change that was shown.</summary>
    public async Task<IActionResult> OnPostAsync(long id, string? token, long? quote, CancellationToken cancel)
    {
        (Id, Quote) = (id, quote);
        var answer = await intake.AcceptChangeAsync(id, token ?? "", Who.Of(User), quote, cancel);
        if (answer.IsDone)
            return Redirect($"/jobs/{Uri.EscapeDataString(answer.Number)}");
        (Change, Problem) = (answer.Change, answer.Problem);
        return Change is null ? Redirect($"/drafts/{id}") : Page();
    }
}
