using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan.Search;

/// <summary>What is known of how good a plan for a task can be, aim by aim; grows as it is proved.</summary>
internal sealed class AimBounds
{
    private readonly CutTask _task;
    private readonly Dictionary<PlanAim, PlanAims> _proved = [];

    /// <summary>Bounds from the lengths alone, until more is proved.</summary>
    public AimBounds(CutTask task, NoScrapBound? noScrap) => (_task, NoScrap) = (task, noScrap);

    /// <summary>Bounds for plans without scrap; null where the lengths have no unit that allows them.</summary>
    public NoScrapBound? NoScrap { get; }

    /// <summary>Notes that no plan as good as <paramref name="bound"/> in the aims before betters it in <paramref name="aim"/>.</summary>
    public void Prove(PlanAim aim, PlanAims bound) => _proved[aim] = bound;

    /// <summary>Notes that no plan is better.</summary>
    public void ProveBest(PlanAims best)
    {
        foreach (var aim in Enum.GetValues<PlanAim>())
            Prove(aim, best);
    }

    /// <summary>The bound for plans as good as this one: each aim's is right for plans that meet the aims before it.</summary>
    public PlanAims Below(PlanAims plan)
    {
        var toBuy = _task.Coils.Count(coil => coil.Sort == CoilKind.ToBuy);
        var bound = new PlanAims(plan.Bought, Length.Zero, toBuy, 0, plan.LongestOffcut);
        bound = Best(PlanAim.Bought, plan, bound);
        bound = Best(PlanAim.Scrap, plan, bound);
        if (plan.Scrap == Length.Zero && NoScrap?.FewestFull() is { } full)
            bound = bound with { FullCoils = toBuy + full };
        bound = Best(PlanAim.FullCoils, plan, bound);
        if (plan.Scrap == Length.Zero && NoScrap is not null)
            bound = bound with { Rack = NoScrap.FewestOnRack(plan.FullCoils - toBuy) };
        bound = Best(PlanAim.Rack, plan, bound);
        bound = bound with
        {
            LongestOffcut = plan.Scrap == Length.Zero && NoScrap is not null
            ? NoScrap.LongestOffcut(plan.FullCoils - toBuy, plan.Rack)
            : MostLeft(plan)
        };
        return Best(PlanAim.LongestOffcut, plan, bound);
    }

    /// <summary>The longest length that could be left by any plan: rope on hand and bought beyond what is cut, on one coil.</summary>
    private Length MostLeft(PlanAims plan)
    {
        if (plan.Rack == 0)
            return Length.Zero;
        var longest = 0L;
        var all = _task.Coils.Sum(coil => coil.Room) - _task.Demand;
        foreach (var coil in _task.Coils)
            longest = Math.Max(longest, coil.IsFull ? Math.Min(coil.Room - _task.Kinds[^1].Need, all) : all >= coil.Room ? coil.Left : all);
        return Length.FromNanometres(longest);
    }

    private PlanAims Best(PlanAim aim, PlanAims plan, PlanAims bound)
    {
        if (!_proved.TryGetValue(aim, out var proved) || !MeetsBefore(aim, plan, proved))
            return bound;
        return aim switch
        {
            PlanAim.Bought => bound with { Bought = Length.Max(bound.Bought, proved.Bought) },
            PlanAim.Scrap => bound with { Scrap = Length.Max(bound.Scrap, proved.Scrap) },
            PlanAim.FullCoils => bound with { FullCoils = Math.Max(bound.FullCoils, proved.FullCoils) },
            PlanAim.Rack => bound with { Rack = Math.Max(bound.Rack, proved.Rack) },
            _ => bound with { LongestOffcut = Length.Min(bound.LongestOffcut, proved.LongestOffcut) },
        };
    }

    /// <summary>A bound proved among plans that meet certain figures holds for a plan with those figures.</summary>
    private static bool MeetsBefore(PlanAim aim, PlanAims plan, PlanAims proved) =>
        Enum.GetValues<PlanAim>().TakeWhile(before => before < aim).All(before => plan.Compare(proved, before) == 0);
}
