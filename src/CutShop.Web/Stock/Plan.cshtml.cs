using CutShop.Paper.Sheets;
using CutShop.Shop.Stock;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Stock;

/// <summary>One cut plan, with its picture, and the button that accepts it.</summary>
[MaySend(Rights.PlanCuts)]
public sealed class PlanModel(PlanShelf shelf, CutPlanDesk desk) : PageModel
{
    /// <summary>The plan.</summary>
    public StoredPlan? Stored { get; private set; }

    /// <summary>The plan as a sheet.</summary>
    public Sheet? Sheet { get; private set; }

    /// <summary>What changed since the plan was made, where it was refused.</summary>
    public IReadOnlyList<Sentence> Problems { get; private set; } = [];

    /// <summary>Shows the plan.</summary>
    public IActionResult OnGet(long id) => Shown(id);

    /// <summary>Accepts the plan, or says what changed.</summary>
    public async Task<IActionResult> OnPostAsync(long id, CancellationToken cancel)
    {
        var answer = await desk.AcceptAsync(id, Who.Of(User), cancel);
        if (answer.IsDone)
            return Redirect($"/plans/{id}");
        Problems = answer.Problems;
        return Shown(id);
    }

    private IActionResult Shown(long id)
    {
        Stored = shelf.Find(id);
        if (Stored is null)
            return NotFound();
        Sheet = PlanRoutes.SheetOf(Stored, ReaderLanguage.PaperFor(HttpContext));
        return Page();
    }
}
