using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Jobs.JobWords;

namespace CutShop.Web.Jobs;

/// <summary>Cancels a job, after showing what is made of it already.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class CancelModel(JobShelf jobs, JobRelease release) : PageModel
{
    /// <summary>The job's number.</summary>
    public string Number { get; private set; } = "";

    /// <summary>What the job has in the shop.</summary>
    public WorkDone? Work { get; private set; }

    /// <summary>The reason as typed.</summary>
    public string Reason { get; private set; } = "";

    /// <summary>What is wrong with the reason.</summary>
    public IReadOnlyList<FieldNote> Notes { get; private set; } = [];

    /// <summary>Shows what would be cancelled.</summary>
    public IActionResult OnGet(string number)
    {
        if (jobs.Find(number) is not { CancelledAt: null })
            return NotFound();
        (Number, Work) = (number, release.WorkOf(number));
        return Page();
    }

    /// <summary>Cancels the job.</summary>
    public async Task<IActionResult> OnPostAsync(string number, string? reason, CancellationToken cancel)
    {
        var outcome = await release.CancelAsync(number, reason ?? "", Who.Of(User), cancel);
        if (outcome == ReleaseOutcome.NoSuchJob)
            return NotFound();
        if (outcome != ReleaseOutcome.NoReason)
            return Redirect($"/jobs/{Uri.EscapeDataString(number)}");
        (Reason, Notes) = (reason ?? "", [new(NoteKind.Error, T["AcceptedReason"])]);
        return OnGet(number);
    }
}
