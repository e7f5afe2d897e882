using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>What is proved of a plan: that no plan is better, or the first aim that is open and how far from its bound.</summary>
/// <param name="FirstOpen">The first aim, in order, that is not proved; null where the plan is proved best by all of them.</param>
/// <param name="Bound">What no plan betters: met by the plan in every aim before <paramref name="FirstOpen"/>.</param>
/// <param name="LengthGap">For an open aim in lengths, the distance from the plan to the bound; else zero.</param>
/// <param name="CountGap">For an open aim in counts, the distance from the plan to the bound; else zero.</param>
public sealed record PlanProof(PlanAim? FirstOpen, PlanAims Bound, Length LengthGap, int CountGap)
{
    /// <summary>True where no plan is better by the aims in order.</summary>
    public bool IsBest => FirstOpen is null;

    /// <summary>The proof in words: <c>proved best</c>, or <c>within 12 in of the bound on scrap</c>.</summary>
    public override string ToString() => FirstOpen switch
    {
        null => CutPlanWords.Say("ProvedBest"),
        PlanAim.Bought => CutPlanWords.Say("OpenBought", LengthGap),
        PlanAim.Scrap => CutPlanWords.Say("OpenScrap", LengthGap),
        PlanAim.FullCoils => CutPlanWords.Say("OpenFullCoils", CountGap),
        PlanAim.Rack => CutPlanWords.Say("OpenRack", CountGap),
        PlanAim.LongestOffcut => CutPlanWords.Say("OpenLongestOffcut", LengthGap),
        _ => throw new InvalidOperationException($"No aim is numbered {(int)FirstOpen}."),
    };

    /// <summary>Compares a plan with a bound, aim by aim.</summary>
    internal static PlanProof Of(PlanAims plan, PlanAims bound)
    {
        foreach (var aim in Enum.GetValues<PlanAim>())
        {
            if (plan.Compare(bound, aim) <= 0)
                continue;
            return aim switch
            {
                PlanAim.Bought => new(aim, bound, plan.Bought - bound.Bought, 0),
                PlanAim.Scrap => new(aim, bound, plan.Scrap - bound.Scrap, 0),
                PlanAim.FullCoils => new(aim, bound, Length.Zero, plan.FullCoils - bound.FullCoils),
                PlanAim.Rack => new(aim, bound, Length.Zero, plan.Rack - bound.Rack),
                _ => new(aim, bound, bound.LongestOffcut - plan.LongestOffcut, 0),
            };
        }
        return new(null, bound, Length.Zero, 0);
    }
}
