using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Jobs.JobWords;

namespace CutShop.Web.Jobs;

/// <summary>Steps of a job that need nothing typed: release and cancellation taken back, change, copy.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class StepModel(JobShelf jobs, JobRelease release, DraftShelf drafts) : PageModel
{
    /// <summary>There is nothing to see here: the job's page has the buttons.</summary>
    public IActionResult OnGet(string number) => Redirect($"/jobs/{Uri.EscapeDataString(number)}");

    /// <summary>Releases the job to the shop.</summary>
    public async Task<IActionResult> OnPostReleaseAsync(string number, CancellationToken cancel)
    {
        var outcome = await release.ReleaseAsync(number, Who.Of(User), cancel);
        return outcome == ReleaseOutcome.NoSuchJob ? NotFound() : OnGet(number);
    }

    /// <summary>Takes the release back, while nothing was begun.</summary>
    public async Task<IActionResult> OnPostTakeBackAsync(string number, CancellationToken cancel)
    {
        var outcome = await release.TakeBackAsync(number, Who.Of(User), cancel);
        return outcome == ReleaseOutcome.NoSuchJob ? NotFound() : OnGet(number);
    }

    /// <summary>Takes a cancelled job up again.</summary>
    public async Task<IActionResult> OnPostTakeUpAsync(string number, CancellationToken cancel)
    {
        var outcome = await release.TakeUpAgainAsync(number, Who.Of(User), cancel);
        return outcome == ReleaseOutcome.NoSuchJob ? NotFound() : OnGet(number);
    }

    /// <summary>Starts a draft that changes the job.</summary>
    public Task<IActionResult> OnPostChangeAsync(string number, string? key, CancellationToken cancel) => DraftFromAsync(number, key, form => form with { Changes = form.Number }, cancel);

    /// <summary>Starts a draft like the job, with no number yet.</summary>
    public Task<IActionResult> OnPostCopyAsync(string number, string? key, CancellationToken cancel) =>
        DraftFromAsync(number, key, form => form with { Number = "", Due = "" }, cancel);

    private async Task<IActionResult> DraftFromAsync(string number, string? key, Func<DraftForm, DraftForm> change, CancellationToken cancel)
    {
        if (!FormKey.IsGood(key))
            return BadRequest();
        if (jobs.AsOrdered(number) is not { } job)
            return NotFound();
        if (job.Posts.Count() > DraftForm.MostPosts)
            return new ContentResult { StatusCode = StatusCodes.Status422UnprocessableEntity, Content = T["TooManyPosts", number, DraftForm.MostPosts] };
        var id = await drafts.StartAsync(change(DraftOf.Job(job)), Who.Of(User), $"draft {key}", cancel);
        return Redirect($"/drafts/{id}");
    }
}
