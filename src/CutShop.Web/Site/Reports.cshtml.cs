using CutShop.Shop.Site;
using CutShop.Shop.Tickets;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Site;

/// <summary>What installers report, for the desk to have cut again or to close.</summary>
[MaySend(Rights.ManageJobs)]
public sealed class ReportsModel(SiteReports reports, TimeProvider time) : PageModel
{
    /// <summary>Open reports, the oldest first.</summary>
    public IReadOnlyList<SiteReport> Open { get; private set; } = [];

    /// <summary>Reports closed last, the newest first.</summary>
    public IReadOnlyList<SiteReport> Closed { get; private set; } = [];

    /// <summary>The report that the last request was of.</summary>
    public long About { get; private set; }

    /// <summary>Why that request changed nothing, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>The closing note as typed.</summary>
    public string Note { get; private set; } = "";

    /// <summary>A moment in the shop's own time.</summary>
    public string Moment(DateTimeOffset moment) => Show.Moment(moment, time);

    /// <summary>Shows the reports.</summary>
    public void OnGet() => (Open, Closed) = (reports.Open(), reports.Closed());

    /// <summary>Has a report's piece cut again.</summary>
    public Task<IActionResult> OnPostReCutAsync(long id, string? key, CancellationToken cancel) =>
        DoAsync(id, key, known => reports.ReCutAsync(id, Who.Of(User), known, cancel));

    /// <summary>Closes a report.</summary>
    public Task<IActionResult> OnPostCloseAsync(long id, string? key, string? note, CancellationToken cancel)
    {
        Note = note ?? "";
        return DoAsync(id, key, known => reports.CloseAsync(id, Note, Who.Of(User), known, cancel));
    }

    private async Task<IActionResult> DoAsync(long id, string? key, Func<string, Task<BenchAnswer>> work)
    {
        if (!Guid.TryParse(key, out var known))
            return BadRequest();
        var answer = await work(known.ToString("N"));
        if (answer.IsDone)
            return Redirect("/reports");
        (About, Problem) = (id, answer.Problem);
        OnGet();
        return Page();
    }
}
