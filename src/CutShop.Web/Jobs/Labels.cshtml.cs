using CutShop.Paper.Labels;
using CutShop.Shop.Jobs;
using CutShop.Shop.Site;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Jobs;

/// <summary>The labels of a job: what to look at before they are printed, and new ones for lost labels.</summary>
[MaySend(Rights.ManageJobs)]
public sealed class LabelsModel(JobShelf jobs, LabelShelf labels, SitePackShelf packs, LabelAddress address) : PageModel
{
    /// <summary>The job.</summary>
    public StoredJob? Stored { get; private set; }

    /// <summary>The address that the labels carry.</summary>
    public Uri Address => address.Now;

    /// <summary>What may be wrong with that address.</summary>
    public AddressDoubt Doubt => PieceAddress.DoubtOf(Address);

    /// <summary>The piece that has just got a new code, or null.</summary>
    public StoredPiece? Renewed { get; private set; }

    /// <summary>The new code of the job's site pack, where it has just got one.</summary>
    public PieceCode? NewPack { get; private set; }

    /// <summary>Why no new code was given, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>Shows the labels.</summary>
    public IActionResult OnGet(string number, string? renewed, string? pack)
    {
        Stored = jobs.Find(number);
        Renewed = Stored?.Pieces.FirstOrDefault(piece => piece.Code.Plain == renewed);
        NewPack = PieceCode.Parse(pack ?? "") is { IsGood: true } code && packs.Find(code.Value)?.Job == number ? code.Value : null;
        return Stored is null ? NotFound() : Page();
    }

    /// <summary>Ends a piece's label and gives it a new code.</summary>
    public async Task<IActionResult> OnPostAsync(string number, string? code, string? reason, string? key, CancellationToken cancel)
    {
        if (!Guid.TryParse(key, out var known) || PieceCode.Parse(code ?? "") is not { IsGood: true } old)
            return BadRequest();
        var answer = await labels.ReplaceAsync(old.Value, reason ?? "", Who.Of(User), known.ToString("N"), cancel);
        if (answer.IsDone)
            return Redirect($"/jobs/{Uri.EscapeDataString(number)}/labels?renewed={answer.Outcome}");
        Problem = answer.Problem;
        return OnGet(number, renewed: null, pack: null);
    }

    /// <summary>Ends the code of the job's site pack and gives it a new one.</summary>
    public async Task<IActionResult> OnPostPackAsync(string number, string? reason, string? key, CancellationToken cancel)
    {
        if (!Guid.TryParse(key, out var known))
            return BadRequest();
        var answer = await packs.ReplaceAsync(number, reason ?? "", Who.Of(User), known.ToString("N"), cancel);
        if (answer.IsDone)
            return Redirect($"/jobs/{Uri.EscapeDataString(number)}/labels?pack={answer.Outcome}");
        Problem = answer.Problem;
        return OnGet(number, renewed: null, pack: null);
    }
}
