using CutShop.Shop.Site;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Jobs.JobWords;

namespace CutShop.Web.Site;

/// <summary>What installers report, for the desk to have cut again or to close.</summary>
[MaySend(Rights.ManageJobs)]
public sealed class ReportsModel(SiteReports reports, MeasuredSpans spans, TimeProvider time) : PageModel
{
    /// <summary>Open reports, the oldest first.</summary>
    public IReadOnlyList<SiteReport> Open { get; private set; } = [];

    /// <summary>Pieces that are marked as installed and not cut.</summary>
    public IReadOnlyList<HungUncut> HungUncut { get; private set; } = [];

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
    public void OnGet() => (Open, Closed, HungUncut) = (reports.Open(), reports.Closed(), reports.HungUncut());

    /// <summary>What was measured of a report's piece, while another can still be cut for it; null where nothing was.</summary>
    public AsBuilt? AsBuiltOf(SiteReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.ReCut is null ? spans.Find(report.Code) : null;
    }

    /// <summary>The spans that were measured, with the planned ones.</summary>
    public string SpansOf(AsBuilt asBuilt)
    {
        ArgumentNullException.ThrowIfNull(asBuilt);
        return string.Join("; ", asBuilt.Clear.OrderBy(span => span.Key).Select(span => SpanOf(asBuilt.Piece.Sections[span.Key], span.Value)));
    }

    private string SpanOf(PieceSection section, Length clear) =>
        T["MeasuredSpan", section.From.Mark, section.To.Mark, Show.Both(HttpContext, clear), Show.Both(HttpContext, section.Clear)];

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
