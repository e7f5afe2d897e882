using CutShop.Takeoff.Lengths;

namespace CutShop.CutPlan.Search;

/// <summary>The best plan found for a request.</summary>
/// <param name="Task">The coils on hand with the purchase.</param>
/// <param name="Cuts">Counts by coil and kind.</param>
/// <param name="Aims">How it does.</param>
/// <param name="Bound">What no plan betters, aim by aim.</param>
/// <param name="Method">What found it.</param>
internal sealed record FoundPlan(CutTask Task, int[][] Cuts, PlanAims Aims, PlanAims Bound, PlanMethod Method);

/// <summary>How the search for a request ended.</summary>
/// <param name="Plan">The best plan, or null where none was found.</param>
/// <param name="IsImpossible">True where it is proved that the coils on hand, and any that can be bought, cannot do.</param>
internal sealed record SearchEnd(FoundPlan? Plan, bool IsImpossible);

/// <summary>
/// Tries purchases from the least rope up, nothing first; for the first that can do, and any of the same total, the best
/// plan is kept.
/// </summary>
internal sealed class PurchaseSearch
{
    private readonly Stock _stock;
    private readonly bool _withSolver;
    private readonly SearchClock _clock;
    private readonly Action<FoundPlan>? _progress;
    private PlanAims? _told;

    private PurchaseSearch(Stock stock, bool withSolver, SearchClock clock, Action<FoundPlan>? progress) =>
        (_stock, _withSolver, _clock, _progress) = (stock, withSolver, clock, progress);

    /// <summary>Searches until a plan is proved best or time is up.</summary>
    public static SearchEnd Run(Stock stock, bool withSolver, SearchClock clock, Action<FoundPlan>? progress) =>
        new PurchaseSearch(stock, withSolver, clock, progress).Run();

    private SearchEnd Run()
    {
        var enough = EnoughToBuy.Of(_stock, _withSolver, _clock, enough => Tell(Found(enough)));
        var (purchases, boughtBound) = ToTry(enough);
        FoundPlan? best = null;
        foreach (var purchase in purchases)
        {
            var total = purchase.Sum();
            if (best is not null && total > best.Aims.Bought.Nanometres)
                break;
            var isLess = enough is not null && total < enough.Total;
            if (_clock.IsUp && best is null && isLess)
            {
                boughtBound ??= total;
                continue;
            }
            // A purchase that is not known to do gets a share of the time only.
            var clock = isLess ? _clock.AtMost(_clock.Left / 3) : _clock;
            var start = enough is not null && enough.Purchase.AsSpan().SequenceEqual(purchase) ? enough.Cuts : null;
            var bound = boughtBound;
            var search = new TaskSearch(_stock.With(purchase), start, _withSolver, clock, found => Tell(BoughtAtLeast(found, bound)));
            var (found, isImpossible) = search.Run();
            if (found is not null)
                best = best is null ? found : Best(best, found);
            else if (!isImpossible)
                boughtBound ??= total;
        }
        return new(best is null ? null : BoughtAtLeast(best, boughtBound), best is null && boughtBound is null);
    }

    /// <summary>Tells of a plan that is better than any told before.</summary>
    private void Tell(FoundPlan plan)
    {
        if (_progress is null || (_told is { } told && plan.Aims >= told))
            return;
        _told = plan.Aims;
        _progress(plan);
    }

    private FoundPlan Found(EnoughToBuy enough)
    {
        var task = _stock.With(enough.Purchase);
        var aims = task.AimsOf(enough.Cuts);
        var bound = new AimBounds(task, null).Below(aims) with { Bought = Length.FromNanometres(enough.Fewest * _stock.Standard.Min()) };
        return new(task, enough.Cuts, aims, bound, PlanMethod.OwnSearch);
    }

    private static FoundPlan BoughtAtLeast(FoundPlan plan, long? bought) =>
        bought is { } least && least < plan.Aims.Bought.Nanometres
            ? plan with { Bound = plan.Bound with { Bought = Length.FromNanometres(least) } }
            : plan;

    /// <summary>Of two plans that buy as much: the better, with the bound that holds for both purchases.</summary>
    private static FoundPlan Best(FoundPlan a, FoundPlan b)
    {
        var (better, worse) = a.Aims <= b.Aims ? (a, b) : (b, a);
        var openWorse = PlanProof.Of(worse.Aims, worse.Bound).FirstOpen;
        // The other purchase could still hold a better plan only where its own bound allows one.
        var bound = openWorse is null || worse.Bound >= better.Aims ? better.Bound
            : worse.Bound < better.Bound ? worse.Bound : better.Bound;
        return better with { Bound = bound };
    }

    /// <summary>Purchases in their order, and a bound on the rope bought where some had to be left out.</summary>
    private (List<long[]> Purchases, long? BoughtBound) ToTry(EnoughToBuy? enough)
    {
        if (_stock.Standard.Count == 0)
            return ([[]], null);
        var shortage = Math.Max(0, _stock.Demand - _stock.OnHand.Sum(coil => coil.Room));
        var longestRoom = _stock.OnHand.Select(coil => coil.Room).DefaultIfEmpty(0).Max();
        var longest = _stock.Kinds[0].Need > longestRoom ? _stock.Kinds[0].Need : 0;
        // Nothing known to do means that lots stand in the way: as much as every piece on a coil of its own is enough then.
        var most = enough?.Total ?? _stock.Standard.Max() * _stock.Kinds.Sum(kind => kind.Count);
        var (purchases, areAll) = Purchases.Of(_stock.Standard, _stock.Trim, shortage, longest, enough?.Fewest ?? 0, most);
        if (enough is not null && !purchases.Exists(purchase => purchase.AsSpan().SequenceEqual(enough.Purchase)))
            purchases.Add(enough.Purchase);
        return (purchases, areAll ? null : shortage);
    }
}
