using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan;

/// <summary>The aims, in their order.</summary>
public enum PlanAim
{
    /// <summary>Buy the least rope.</summary>
    Bought,

    /// <summary>Scrap the least.</summary>
    Scrap,

    /// <summary>Open the fewest untouched full coils, bought ones with them.</summary>
    FullCoils,

    /// <summary>Leave the fewest lengths on the rack: use up offcuts, and make few new ones.</summary>
    Rack,

    /// <summary>Keep the longest single offcut.</summary>
    LongestOffcut,
}

/// <summary>How a plan that cuts everything does by each aim. The smaller plan, by <see cref="CompareTo"/>, is the better.</summary>
/// <param name="Bought">Rope to buy: whole coils.</param>
/// <param name="Scrap">
/// Lengths under the keep length left on coils that are cut. Kerf, squaring and first trims are not in it: they are the
/// same a piece or a coil whatever the plan.
/// </param>
/// <param name="FullCoils">Untouched full coils opened, and coils bought.</param>
/// <param name="Rack">Lengths on the rack afterwards: offcuts that were not cut from, and what is kept of the coils that were.</param>
/// <param name="LongestOffcut">The longest of those lengths; zero where there is none.</param>
public readonly record struct PlanAims(Length Bought, Length Scrap, int FullCoils, int Rack, Length LongestOffcut) : IComparable<PlanAims>
{
    /// <summary>By the aims in order: less bought, less scrap, fewer full coils, fewer lengths on the rack, a longer longest offcut.</summary>
    public int CompareTo(PlanAims other)
    {
        foreach (var aim in Enum.GetValues<PlanAim>())
        {
            var order = Compare(other, aim);
            if (order != 0)
                return order;
        }
        return 0;
    }

    /// <summary>Negative where this plan does better by one aim, positive where worse.</summary>
    public int Compare(PlanAims other, PlanAim aim) => aim switch
    {
        PlanAim.Bought => Bought.CompareTo(other.Bought),
        PlanAim.Scrap => Scrap.CompareTo(other.Scrap),
        PlanAim.FullCoils => FullCoils.CompareTo(other.FullCoils),
        PlanAim.Rack => Rack.CompareTo(other.Rack),
        PlanAim.LongestOffcut => other.LongestOffcut.CompareTo(LongestOffcut),
        _ => throw new ArgumentOutOfRangeException(nameof(aim)),
    };

    /// <summary>Better.</summary>
    public static bool operator <(PlanAims a, PlanAims b) => a.CompareTo(b) < 0;

    /// <summary>Worse.</summary>
    public static bool operator >(PlanAims a, PlanAims b) => a.CompareTo(b) > 0;

    /// <summary>As good or better.</summary>
    public static bool operator <=(PlanAims a, PlanAims b) => a.CompareTo(b) <= 0;

    /// <summary>As good or worse.</summary>
    public static bool operator >=(PlanAims a, PlanAims b) => a.CompareTo(b) >= 0;
}
