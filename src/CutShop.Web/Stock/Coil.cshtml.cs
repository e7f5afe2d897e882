using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Stock.StockWords;

namespace CutShop.Web.Stock;

/// <summary>One coil: what is left of it, its history, and the forms that correct or retire it.</summary>
[MaySend(Rights.ManageStock)]
public sealed class CoilModel(CoilShelf stock, PlannedCuts planned, HistoryShelf history, TimeProvider time) : PageModel
{
    /// <summary>The coil.</summary>
    public StockCoil? Coil { get; private set; }

    /// <summary>What is yet to be cut from it, in cutting order.</summary>
    public IReadOnlyList<PlannedCut> Planned { get; private set; } = [];

    /// <summary>Its history, the newest last.</summary>
    public IReadOnlyList<HistoryLine> History { get; private set; } = [];

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Why nothing was changed, or null.</summary>
    public Sentence? Problem { get; private set; }

    /// <summary>The forms' own key: sent twice it counts once.</summary>
    [BindProperty]
    public string? RequestKey { get; set; }

    /// <summary>What is left, as typed.</summary>
    [BindProperty]
    public string? Left { get; set; }

    /// <summary>The reason.</summary>
    [BindProperty]
    public string? Reason { get; set; }

    /// <summary>Shows the coil.</summary>
    public IActionResult OnGet(string mark)
    {
        RequestKey = FormKey.New();
        return Shown(mark);
    }

    /// <summary>Corrects what is left.</summary>
    public async Task<IActionResult> OnPostAdjustAsync(string mark, CancellationToken cancel)
    {
        if (!FormKey.IsGood(RequestKey))
            return BadRequest();
        var left = LengthText.Parse(Left ?? "");
        return left.IsGood
            ? Answered(mark, await stock.AdjustAsync(mark, left.Value, Reason ?? "", Who.Of(User), RequestKey, cancel))
            : Answered(mark, new StockAnswer("", new Sentence(List, "BadLeft", Left, left.Problem)));
    }

    /// <summary>Takes the coil off the rack.</summary>
    public async Task<IActionResult> OnPostRetireAsync(string mark, CancellationToken cancel) => FormKey.IsGood(RequestKey)
        ? Answered(mark, await stock.RetireAsync(mark, Reason ?? "", Who.Of(User), RequestKey, cancel))
        : BadRequest();

    /// <summary>Hangs a coil that was off the rack there again.</summary>
    public async Task<IActionResult> OnPostFoundAsync(string mark, CancellationToken cancel) => FormKey.IsGood(RequestKey)
        ? Answered(mark, await stock.FoundAsync(mark, Who.Of(User), RequestKey, cancel))
        : BadRequest();

    private IActionResult Answered(string mark, StockAnswer answer)
    {
        if (answer.IsDone)
            return Redirect($"/stock/{mark}");
        Problem = answer.Problem;
        RequestKey = RequestKey!.Split('-')[0];
        return Shown(mark);
    }

    private IActionResult Shown(string mark)
    {
        Coil = stock.Find(mark);
        if (Coil is null)
            return NotFound();
        Planned = planned.Of(mark);
        History = history.Of("coil", Coil.Id);
        return Page();
    }
}
