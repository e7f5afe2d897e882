using CutShop.Shop;
using CutShop.Takeoff;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Pages.Stock;

/// <summary>The coils in stock, and the form for one that came in.</summary>
[BindProperties]
[MaySend(May.ManageStock)]
public sealed class StockModel(CoilStock stock) : PageModel
{
    /// <summary>The coils.</summary>
    public IReadOnlyList<StockCoil> Coils { get; private set; } = [];

    /// <summary>Why the coil was not stored, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>The form's own key: sent twice it counts once.</summary>
    public string RequestKey { get; set; } = "";

    /// <summary>Material of the coil.</summary>
    public RopeMaterial Material { get; set; }

    /// <summary>Diameter as typed.</summary>
    public string? Diameter { get; set; }

    /// <summary>Construction.</summary>
    public string? Construction { get; set; } = RopeKind.ThreeStrand;

    /// <summary>The maker's lot.</summary>
    public string? Lot { get; set; }

    /// <summary>Length as typed.</summary>
    public string? CoilLength { get; set; }

    /// <summary>Where it hangs.</summary>
    public string? Place { get; set; }

    /// <summary>Shows the coils and an empty form.</summary>
    public void OnGet()
    {
        RequestKey = FormKey.New();
        Coils = stock.InHand();
    }

    /// <summary>Hangs a coil up, or shows the form again with what is wrong.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken cancel)
    {
        var diameter = LengthText.Parse(Diameter ?? "");
        var length = LengthText.Parse(CoilLength ?? "");
        Problem = !ModelState.IsValid ? "Choose a material from the list."
            : !diameter.IsGood ? $"Diameter: \"{Diameter}\": {diameter.Problem}"
            : !length.IsGood ? $"Length: \"{CoilLength}\": {length.Problem}"
            : null;
        if (Problem is null)
        {
            var coil = new CoilReceived(new(Material, diameter.Value, Construction ?? ""), Lot ?? "", length.Value, Place ?? "");
            var answer = await stock.ReceiveAsync(coil, Who.Of(User), RequestKey, cancel);
            if (answer.IsDone)
                return Redirect($"/stock/{answer.Mark}");
            Problem = answer.Problem;
        }
        Coils = stock.InHand();
        return Page();
    }
}
