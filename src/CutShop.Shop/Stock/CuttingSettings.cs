using CutShop.CutPlan;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Stock;

/// <summary>How the shop cuts and buys rope.</summary>
/// <param name="Allowances">Kerf, squaring, first trim, and the shortest length worth keeping.</param>
/// <param name="StandardLengths">Lengths that new coils are bought in.</param>
public sealed record CuttingSettings(CutAllowances Allowances, IReadOnlyList<Length> StandardLengths)
{
    /// <summary>What holds until the shop sets something else: the planner's allowances, and coils of 600 ft (common practice, no source).</summary>
    public static CuttingSettings Default { get; } = new(CutAllowances.Default, [Length.Foot * 600]);
}
