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
public sealed class CoilModel(CoilShelf stock, WettingShelf wetting, PlannedCuts planned, HistoryShelf history, TimeProvider time) : PageModel
{
    /// <summary>The coil.</summary>
    public StockCoil? Coil { get; private set; }

    /// <summary>What is yet to be cut from it, in cutting order.</summary>
    public IReadOnlyList<PlannedCut> Planned { get; private set; } = [];

    /// <summary>Its history, the newest last.</summary>
    public IReadOnlyList<HistoryLine> History { get; private set; } = [];

    /// <summary>What was measured of its lot in water; null where its rope does not shrink.</summary>
    public LotLoss? Loss { get; private set; }

    /// <summary>True where the coil itself was soaked in this shop, and not the coil that it was cut off.</summary>
    public bool WasSoakedHere => Coil!.Shrunk.IsPositive;

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

    /// <summary>The coil's length before it is soaked, as typed.</summary>
    [BindProperty]
    public string? Before { get; set; }

    /// <summary>The coil's length once it is dry, as typed.</summary>
    [BindProperty]
    public string? After { get; set; }

    /// <summary>A sample's length before it is soaked, as typed.</summary>
    [BindProperty]
    public string? SampleBefore { get; set; }

    /// <summary>A sample's length once it is dry, as typed.</summary>
    [BindProperty]
    public string? SampleAfter { get; set; }

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

    /// <summary>The coil was soaked and dried.</summary>
    public Task<IActionResult> OnPostPreshrinkAsync(string mark, CancellationToken cancel) => SoakedAsync(
        mark,
        ("LengthBefore", Before),
        ("LengthAfter", After),
        (before, after) => wetting.PreshrinkAsync(mark, before, after, Who.Of(User), RequestKey!, cancel));

    /// <summary>Takes back that it was.</summary>
    public async Task<IActionResult> OnPostUnshrinkAsync(string mark, CancellationToken cancel) => FormKey.IsGood(RequestKey)
        ? Answered(mark, await wetting.UndoPreshrinkAsync(mark, Who.Of(User), RequestKey, cancel))
        : BadRequest();

    /// <summary>A sample was soaked and dried.</summary>
    public Task<IActionResult> OnPostSampleAsync(string mark, CancellationToken cancel) => SoakedAsync(
        mark,
        ("SampleBefore", SampleBefore),
        ("SampleAfter", SampleAfter),
        (before, after) => wetting.KeepSampleAsync(mark, before, after, Who.Of(User), RequestKey!, cancel));

    /// <summary>Takes a sample back.</summary>
    public async Task<IActionResult> OnPostSampleBackAsync(string mark, long sample, CancellationToken cancel) => FormKey.IsGood(RequestKey)
        ? Answered(mark, await wetting.TakeSampleBackAsync(mark, sample, Who.Of(User), RequestKey, cancel))
        : BadRequest();

    private async Task<IActionResult> SoakedAsync(
        string mark, (string Label, string? Text) before, (string Label, string? Text) after, Func<Length, Length, Task<StockAnswer>> keep)
    {
        if (!FormKey.IsGood(RequestKey))
            return BadRequest();
        var (first, then) = (LengthText.Parse(before.Text ?? ""), LengthText.Parse(after.Text ?? ""));
        return !first.IsGood ? Answered(mark, Bad(before, first))
            : !then.IsGood ? Answered(mark, Bad(after, then))
            : Answered(mark, await keep(first.Value, then.Value));

        static StockAnswer Bad((string Label, string? Text) field, Parsed<Length> parsed) =>
            new("", new Sentence(List, "BadSoaking", new Sentence(List, field.Label), field.Text, parsed.Problem));
    }

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
        Loss = Coil.Kind.IsNatural ? wetting.Of(Coil) : null;
        History = history.Of("coil", Coil.Id);
        return Page();
    }
}
