using System.Globalization;
using CutShop.Shop.Benches;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Benches;

/// <summary>How the shop stands: what waits, what is at the benches, what is done, what is late, and where the rope goes.</summary>
public sealed class BoardModel(ShopBoard board, CutBench cut, DrillBench drill, StalePlans fit, ReSettings resets, TimeProvider time) : PageModel
{
    /// <summary>The figures.</summary>
    public BoardFigures? Figures { get; private set; }

    /// <summary>Pieces at the benches.</summary>
    public IReadOnlyList<CutWork> Cutting { get; private set; } = [];

    /// <summary>Posts at the benches, and those ordered again.</summary>
    public IReadOnlyList<DrillWork> Drilling { get; private set; } = [];

    /// <summary>Plans that no longer fit.</summary>
    public IReadOnlyList<StalePlan> Stale { get; private set; } = [];

    /// <summary>Jobs whose rope is to be set again by now.</summary>
    public IReadOnlyList<ReSetting> ReSettings { get; private set; } = [];

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the board.</summary>
    public void OnGet()
    {
        Figures = board.Now();
        ReSettings = resets.Due();
        (Cutting, Drilling, Stale) = (cut.AtTheBench(), [.. drill.AtTheBench(), .. drill.ReOrdered()], fit.Stale());
    }

    /// <summary>A percentage to a tenth, or a dash.</summary>
    public string Percent(double? percent) => percent is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known:0.0} %") : "–";
}
