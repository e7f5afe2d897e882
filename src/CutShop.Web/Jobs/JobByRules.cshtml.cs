using CutShop.Shop.Jobs;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>What today's rules would change in one job, offered as a change.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class JobByRulesModel(JobChanging changing) : PageModel
{
    /// <summary>The change.</summary>
    public JobChange? Change { get; private set; }

    /// <summary>Why it was not accepted, or null.</summary>
    public Sentence? Problem { get; private set; }

    /// <summary>Shows the change.</summary>
    public IActionResult OnGet(string number)
    {
        Change = changing.CompareWithRules(number);
        return Change is null ? NotFound() : Page();
    }

    /// <summary>Accepts the change that was shown.</summary>
    public async Task<IActionResult> OnPostAsync(string number, string? token, CancellationToken cancel)
    {
        var answer = await changing.AcceptRulesAsync(number, token ?? "", Who.Of(User), cancel);
        if (answer.IsDone)
            return Redirect($"/jobs/{Uri.EscapeDataString(answer.Number)}");
        Problem = answer.Problem;
        Change = answer.Change ?? changing.CompareWithRules(number);
        return Change is null ? NotFound() : Page();
    }
}
