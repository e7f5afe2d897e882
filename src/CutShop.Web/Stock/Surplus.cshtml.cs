using CutShop.Shop.Benches;
using CutShop.Shop.Stock;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Stock.StockWords;

namespace CutShop.Web.Stock;

/// <summary>The pieces that were cut and are no longer wanted, and what becomes of each.</summary>
[MaySend(Rights.ManageStock)]
public sealed class SurplusModel(SurplusShelf surplus, CoilShelf stock) : PageModel
{
    /// <summary>The pieces.</summary>
    public IReadOnlyList<SurplusPiece> Pieces { get; private set; } = [];

    /// <summary>The offcut that was just hung up, or null.</summary>
    public StockCoil? Hung { get; private set; }

    /// <summary>Why nothing was changed, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>The form's own key: sent twice it counts once.</summary>
    [BindProperty]
    public string? RequestKey { get; set; }

    /// <summary>Shows the pieces.</summary>
    public void OnGet(string? hung)
    {
        Hung = hung is null ? null : stock.Find(hung);
        Pieces = surplus.All();
    }

    /// <summary>Hangs one up as an offcut.</summary>
    public Task<IActionResult> OnPostHangUpAsync(string? code, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => surplus.HangUpAsync(piece, Who.Of(User), key, cancel));

    /// <summary>Throws one away.</summary>
    public Task<IActionResult> OnPostScrapAsync(string? code, CancellationToken cancel) =>
        DoAsync(code, (piece, key) => surplus.ScrapAsync(piece, Who.Of(User), key, cancel));

    private async Task<IActionResult> DoAsync(string? code, Func<PieceCode, string, Task<StockAnswer>> work)
    {
        if (!FormKey.IsGood(RequestKey) || PieceCode.Parse(code ?? "") is not { IsGood: true } piece)
            return BadRequest();
        var answer = await work(piece.Value, RequestKey);
        if (answer.IsDone)
            return Redirect(answer.Mark.Length == 0 ? "/stock/surplus" : $"/stock/surplus?hung={answer.Mark}");
        Problem = T[answer.Problem!];
        OnGet(hung: null);
        return Page();
    }
}
