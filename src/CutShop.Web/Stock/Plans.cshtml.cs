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

    /// <summary>Constructions in stock of a rope, the usual one first.</summary>
    public IEnumerable<string> ConstructionsOf(RopeWaiting rope) => _coils
        .Where(coil => coil.Kind.Material == rope.Material && coil.Kind.Diameter == rope.Diameter)
        .Select(coil => coil.Kind.Construction).Prepend(RopeKind.ThreeStrand).Distinct();

    private IReadOnlyList<StockCoil> _coils = [];

    /// <summary>Shows it all.</summary>
    public void OnGet() => Load();

    /// <summary>Starts the search for a plan and goes to it.</summary>
    public IActionResult OnPost(RopeMaterial material, string? diameter, string? construction, DateOnly? dueBy, [Range(1, 120)] int seconds)
    {
        Load();
        var parsed = TypedLength.Diameter(diameter ?? "");
        Problems = [.. ProblemsWith(parsed, construction)];
        if (Problems.Count > 0)
            return Page();
        var kind = new RopeKind(material, parsed.Value, construction!);
        return Redirect($"/plans/search/{searches.Start(kind, dueBy, new PlanBudget(TimeSpan.FromSeconds(seconds)), Who.Of(User))}");
    }

    private IEnumerable<string> ProblemsWith(Parsed<Length> diameter, string? construction)
    {
        if (IsWrong("material"))
            yield return T["BadMaterial"];
        if (!diameter.IsGood)
            yield return T["ProblemDiameter", diameter.Problem];
        if (construction is null || !_coils.Select(coil => coil.Kind.Construction).Append(RopeKind.ThreeStrand).Contains(construction))
            yield return T["ProblemConstruction", construction, string.Join(", ", _coils.Select(coil => coil.Kind.Construction).Append(RopeKind.ThreeStrand).Distinct())];
        if (IsWrong("seconds"))
            yield return T["BadSeconds"];
        if (IsWrong("dueBy"))
            yield return T["BadDueBy"];

        bool IsWrong(string field) => ModelState.TryGetValue(field, out var entry) && entry.Errors.Count > 0;
    }

    private void Load()
    {
        (Waiting, ToBuy, Plans) = (shelf.Waiting(), shelf.ToBuy(), shelf.List());
        _coils = stock.InHand();
    }
}
