using System.ComponentModel.DataAnnotations;
using CutShop.CutPlan;
using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.Stock.StockWords;

namespace CutShop.Web.Stock;

/// <summary>What waits to be planned, what is to be bought, and the plans made.</summary>
[MaySend(Rights.PlanCuts)]
public sealed class PlansModel(PlanShelf shelf, PlanSearches searches, CoilShelf stock, TimeProvider time) : PageModel
{
    /// <summary>Ropes that pieces wait for.</summary>
    public IReadOnlyList<RopeWaiting> Waiting { get; private set; } = [];

    /// <summary>Coils to buy.</summary>
    public IReadOnlyList<CoilToBuy> ToBuy { get; private set; } = [];

    /// <summary>The plans.</summary>
    public IReadOnlyList<PlanListed> Plans { get; private set; } = [];

    /// <summary>Why no plan was made.</summary>
    public IReadOnlyList<string> Problems { get; private set; } = [];

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>The kinds in stock that pieces may be cut from, their own first.</summary>
    public IReadOnlyList<RopeKind> CoilsFor(RopeKind pieces) =>
        [.. Coils.Select(coil => coil.Kind).Where(pieces.MayBeCutFrom).Prepend(pieces).Distinct()];

    /// <summary>Coils of the same rope that is new and not preshrunk, or preshrunk and not new.</summary>
    public IReadOnlyList<StockCoil> OtherCoils(RopeKind pieces) =>
        [.. Coils.Where(coil => pieces.IsNatural && coil.Kind == pieces with { IsPreshrunk = !pieces.IsPreshrunk })];

    /// <summary>All coils in stock.</summary>
    public IReadOnlyList<StockCoil> Coils { get; private set; } = [];

    private RopeWordsUsed _used = new([], []);

    /// <summary>Shows it all.</summary>
    public void OnGet() => Load();

    /// <summary>Starts the search for a plan and goes to it.</summary>
    public IActionResult OnPost(
        RopeMaterial material, string? diameter, string? construction, string? colour, bool preshrunk, string? cutFrom, DateOnly? dueBy, [Range(1, 120)] int seconds)
    {
        Load();
        var parsed = TypedLength.Diameter(diameter ?? "");
        Problems = [.. ProblemsWith(parsed, construction, colour)];
        if (Problems.Count > 0)
            return Page();
        var kind = new RopeKind(material, parsed.Value, construction!, colour ?? "", preshrunk);
        var coils = CoilsFor(kind);
        if ((string.IsNullOrEmpty(cutFrom) ? kind : coils.FirstOrDefault(one => one.ToString() == cutFrom)) is not { } from)
        {
            Problems = [T["ProblemFrom", cutFrom, string.Join("; ", coils)]];
            return Page();
        }
        return Redirect($"/plans/search/{searches.Start(kind, dueBy, new PlanBudget(TimeSpan.FromSeconds(seconds)), Who.Of(User), from)}");
    }

    private IEnumerable<string> ProblemsWith(Parsed<Length> diameter, string? construction, string? colour)
    {
        if (IsWrong("material"))
            yield return T["BadMaterial"];
        if (!diameter.IsGood)
            yield return T["ProblemDiameter", diameter.Problem];
        if (construction is null || !_used.Constructions.Contains(construction))
            yield return T["ProblemConstruction", construction, string.Join(", ", _used.Constructions)];
        if (!string.IsNullOrEmpty(colour) && !_used.Colours.Contains(colour))
            yield return T["ProblemColour", colour, string.Join(", ", _used.Colours)];
        if (IsWrong("seconds"))
            yield return T["BadSeconds"];
        if (IsWrong("dueBy"))
            yield return T["BadDueBy"];

        bool IsWrong(string field) => ModelState.TryGetValue(field, out var entry) && entry.Errors.Count > 0;
    }

    private void Load()
    {
        (Waiting, ToBuy, Plans) = (shelf.Waiting(), shelf.ToBuy(), shelf.List());
        (Coils, _used) = (stock.InHand(), stock.WordsUsed());
    }
}
