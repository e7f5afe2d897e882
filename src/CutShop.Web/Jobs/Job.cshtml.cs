using CutShop.Paper.Words;
using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Shop.Site;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>One job: its figures, drawings, pieces and paper.</summary>
[MaySend(Rights.ManageJobs)]
public sealed class JobModel(JobShelf jobs, QuoteDesk quotes, SiteReports reports, PullLimit pulls, ReSettings resets) : PageModel
{
    /// <summary>The job.</summary>
    public StoredJob? Stored { get; private set; }

    /// <summary>Units and words of the drawings.</summary>
    public PaperSettings Settings => PersonUnits.PaperFor(HttpContext);

    /// <summary>Rope to cut, in all.</summary>
    public Length TotalRope { get; private set; }

    /// <summary>Its weight in pounds, or null where one piece's is not known.</summary>
    public double? TotalWeight { get; private set; }

    /// <summary>The quotes that were accepted for it; none for those who may not see prices.</summary>
    public IReadOnlyList<QuoteListed> Quotes { get; private set; } = [];

    /// <summary>Each warning once, with the places it speaks of.</summary>
    public IReadOnlyList<(Sentence Says, Sentence Where)> Warnings { get; private set; } = [];

    /// <summary>Pulls over the shop's limit.</summary>
    public IReadOnlyList<StrongPull> Pulls { get; private set; } = [];

    /// <summary>What installers report of its pieces, the newest first.</summary>
    public IReadOnlyList<SiteReport> Reports { get; private set; } = [];

    /// <summary>When its rope is to be set again, or null.</summary>
    public ReSetting? ReSetting { get; private set; }

    /// <summary>Why a day was not taken, or null.</summary>
    public Sentence? Problem { get; private set; }

    /// <summary>The day that the form offers.</summary>
    public string Day { get; private set; } = "";

    /// <summary>Chooses the day on which the rope is to be set again.</summary>
    public async Task<IActionResult> OnPostReSetAsync(string number, string? day, string? key, CancellationToken cancel) =>
        Answered(number, FormKey.IsGood(key) ? await resets.ChooseAsync(number, day ?? "", Who.Of(User), key!, cancel) : null, day);

    /// <summary>The rope was set again.</summary>
    public async Task<IActionResult> OnPostReSetDoneAsync(string number, string? key, CancellationToken cancel) =>
        Answered(number, FormKey.IsGood(key) ? await resets.DoneAsync(number, Who.Of(User), key!, cancel) : null, day: null);

    private IActionResult Answered(string number, BenchAnswer? answer, string? day)
    {
        if (answer is null)
            return BadRequest();
        if (answer.IsDone)
            return Redirect($"/jobs/{Uri.EscapeDataString(number)}#re-setting");
        var shown = OnGet(number);
        (Problem, Day) = (answer.Said, day ?? Day);
        return shown;
    }

    /// <summary>Shows the job.</summary>
    public IActionResult OnGet(string number)
    {
        Stored = jobs.Find(number);
        if (Stored is null)
            return NotFound();
        (Reports, ReSetting) = (reports.OfJob(number), resets.Find(number));
        Day = ReSetting is { DoneAt: null, Due: var due } ? IsoDate.Text(due) : "";
        var pieces = Stored.Takeoff.Pieces;
        TotalRope = pieces.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);
        TotalWeight = pieces.Any(piece => piece.WeightLb is null) ? null : pieces.Sum(piece => piece.WeightLb);
        Warnings = Warning.Alike(Stored.Takeoff.Warnings);
        Pulls = pulls.Over(Stored.Takeoff);
        Quotes = Rights.Do(HttpContext, Rights.SeePrices) ? quotes.AcceptedFor(Stored.Number) : [];
        return Page();
    }
}
