using CutShop.Shop.Benches;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Stock.StockWords;

namespace CutShop.Web.Stock;

/// <summary>The coils in stock, and the form for one that came in.</summary>
[MaySend(Rights.ManageStock)]
public sealed class StockModel(CoilShelf stock, PlannedCuts planned, SurplusShelf surplus) : PageModel
{
    /// <summary>The coils.</summary>
    public IReadOnlyList<StockCoil> Coils { get; private set; } = [];

    /// <summary>The rope that is yet to be cut from them, by the coil's id.</summary>
    public IReadOnlyDictionary<long, Length> Planned { get; private set; } = new Dictionary<long, Length>();

    /// <summary>Pieces that were cut and are no longer wanted.</summary>
    public int Surplus { get; private set; }

    /// <summary>Why the coil was not stored, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>The form's own key: sent twice it counts once.</summary>
    [BindProperty]
    public string? RequestKey { get; set; }

    /// <summary>Material of the coil.</summary>
    [BindProperty]
    public RopeMaterial Material { get; set; }

    /// <summary>Diameter as typed.</summary>
    [BindProperty]
    public string? Diameter { get; set; }

    /// <summary>Construction.</summary>
    [BindProperty]
    public string? Construction { get; set; } = RopeKind.ThreeStrand;

    /// <summary>Colour; empty where it does not matter.</summary>
    [BindProperty]
    public string? Colour { get; set; }

    /// <summary>True for rope that was soaked and dried before.</summary>
    [BindProperty]
    public bool IsPreshrunk { get; set; }

    /// <summary>Constructions and colours to offer.</summary>
    public RopeWordsUsed Used { get; private set; } = new([], []);

    /// <summary>The maker's lot.</summary>
    [BindProperty]
    public string? Lot { get; set; }

    /// <summary>Length as typed.</summary>
    [BindProperty]
    public string? CoilLength { get; set; }

    /// <summary>What it held when it was full, as typed; empty for a full coil.</summary>
    [BindProperty]
    public string? WhenFull { get; set; }

    /// <summary>Where it hangs.</summary>
    [BindProperty]
    public string? Place { get; set; }

    /// <summary>Shows the coils and an empty form.</summary>
    public void OnGet()
    {
        RequestKey = FormKey.New();
        ShowCoils();
    }

    /// <summary>Hangs a coil up, or shows the form again with what is wrong.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken cancel)
    {
        if (!FormKey.IsGood(RequestKey))
            return BadRequest();
        var diameter = PersonUnits.Read(HttpContext, Diameter ?? "");
        var length = LengthText.Parse(CoilLength ?? "");
        var isOpened = !string.IsNullOrWhiteSpace(WhenFull);
        var full = isOpened ? LengthText.Parse(WhenFull!) : length;
        Problem = !ModelState.IsValid ? T["ChooseMaterial"]
            : !diameter.IsGood ? T["BadDiameter", Diameter, diameter.Problem]
            : !length.IsGood ? T["BadLength", CoilLength, length.Problem]
            : !full.IsGood ? T["BadWhenFull", WhenFull, full.Problem]
            : null;
        if (Problem is null)
        {
            var coil = new CoilReceived(new(Material, diameter.Value, (Construction ?? "").Trim(), (Colour ?? "").Trim(), IsPreshrunk), Lot ?? "", length.Value, Place ?? "", isOpened ? full.Value : null);
            var answer = await stock.ReceiveAsync(coil, Who.Of(User), RequestKey, cancel);
            if (answer.IsDone)
                return Redirect($"/stock/{answer.Mark}");
            Problem = T[answer.Problem!];
        }
        ShowCoils();
        return Page();
    }

    private void ShowCoils() => (Coils, Planned, Surplus, Used) = (stock.InHand(), planned.ByCoil(), surplus.All().Count, stock.WordsUsed());
}
