using CutShop.Paper.Sheets;
using CutShop.Shop.Jobs;
using CutShop.Shop.Orders;
using CutShop.Shop.Store;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Orders;

/// <summary>A quote on screen.</summary>
[Authorize(Policy = Rights.ManageJobs)]
public sealed class QuoteModel(QuoteDesk quotes, JobChanging changing, LetterheadShelf heads, SendingSettingsShelf sending, PullLimit pulls) : PageModel
{
    /// <summary>The quote.</summary>
    public Quote? Quote { get; private set; }

    /// <summary>The quote as printed.</summary>
    public Sheet? Sheet { get; private set; }

    /// <summary>True where its job is stored, so that accepting it changes that job.</summary>
    public bool ChangesJob { get; private set; }

    /// <summary>True where its job was cancelled, so that it cannot be accepted.</summary>
    public bool IsCancelled { get; private set; }

    /// <summary>True where the shop's name is not set, so that the quote's head is bare.</summary>
    public bool LacksName { get; private set; }

    /// <summary>Pulls over the shop's limit, for the desk's eyes: the customer's sheet does not have them.</summary>
    public IReadOnlyList<StrongPull> Pulls { get; private set; } = [];

    /// <summary>Why it was not accepted, or null.</summary>
    public Sentence? Problem { get; private set; }

    /// <summary>Shows the quote.</summary>
    public IActionResult OnGet(long id)
    {
        Quote = quotes.Find(id);
        if (Quote is null)
            return NotFound();
        var head = heads.Current;
        Sheet = QuoteRoutes.SheetOf(Quote, head, ReaderLanguage.PaperFor(HttpContext) with { IsForSalt = sending.Current.IsForSalt });
        Pulls = pulls.Over(Quote.Takeoff);
        LacksName = head.Name.Length == 0;
        ChangesJob = !Quote.IsAccepted && changing.IsStored(Quote.Takeoff.Job.Number);
        IsCancelled = ChangesJob && changing.IsCancelled(Quote.Takeoff.Job.Number);
        return Page();
    }

    /// <summary>Accepts it, which makes the job.</summary>
    public async Task<IActionResult> OnPostAsync(long id, CancellationToken cancel)
    {
        var answer = await quotes.AcceptAsync(id, Who.Of(User), cancel);
        if (answer.IsDone)
            return Redirect($"/jobs/{Uri.EscapeDataString(answer.Value)}");
        Problem = answer.Problem;
        return OnGet(id);
    }
}
