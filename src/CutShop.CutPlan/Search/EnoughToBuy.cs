using CutShop.CutPlan.EqualCoils;

namespace CutShop.CutPlan.Search;

/// <summary>A purchase that is known to do, before any smaller one is tried.</summary>
/// <param name="Purchase">Lengths to buy, longest first.</param>
/// <param name="Cuts">A plan with it, counts by coil and kind.</param>
/// <param name="Fewest">Fewest coils that any purchase could have, as far as is proved.</param>
internal sealed record EnoughToBuy(long[] Purchase, int[][] Cuts, int Fewest)
{
    /// <summary>The rope it buys.</summary>
    public long Total => Purchase.Sum();

    /// <summary>Packs all pieces into the fewest coils where all must be bought in one length; else follows the plain rule and buys what it needs.</summary>
    /// <param name="stock">The request.</param>
    /// <param name="withSolver">Whether the solver package may be used.</param>
    /// <param name="clock">Time.</param>
    /// <param name="progress">Told each purchase of fewer coils.</param>
    public static EnoughToBuy? Of(Stock stock, bool withSolver, SearchClock clock, Action<EnoughToBuy> progress)
    {
        if (stock.Standard.Count == 0)
            return null;
        return stock is { OnHand.Count: 0, Standard.Count: 1, Jobs: 0 } ? Equal(stock, withSolver, clock, progress) : ByRule(stock);
    }

    private static EnoughToBuy Equal(Stock stock, bool withSolver, SearchClock clock, Action<EnoughToBuy> progress)
    {
        var length = stock.Standard[0];
        var kindOf = stock.Kinds.Select((kind, k) => (kind.Need, k)).ToDictionary(pair => pair.Need, pair => pair.k);
        return Bought(FewestCoils.Of(
            stock.Needs(), length - stock.Trim, withSolver, clock.AtMost(clock.Left * 0.8), plan => progress(Bought(plan))));

        EnoughToBuy Bought(EqualCoilPlan plan) => new([.. plan.Coils.Select(_ => length)], [.. plan.Coils.Select(Counts)], plan.Bound);

        int[] Counts(IReadOnlyList<long> coil)
        {
            var counts = new int[stock.Kinds.Count];
            foreach (var need in coil)
                counts[kindOf[need]]++;
            return counts;
        }
    }

    private static EnoughToBuy? ByRule(Stock stock)
    {
        var plenty = stock.Plenty();
        EnoughToBuy? best = null;
        foreach (var cuts in LotChoices.Of(plenty).Select(lots => TightestFit.Of(plenty, lots)).OfType<int[][]>())
        {
            var onHand = stock.OnHand.Count;
            // Each coil is bought no longer than what is cut from it asks for.
            var bought = cuts.Skip(onHand).Where(counts => counts.Any(count => count > 0))
                .Select(counts => (Counts: counts, Length: stock.Standard.Where(length => length - stock.Trim >= plenty.Used(counts)).Min()))
                .OrderByDescending(coil => coil.Length).ToList();
            var found = new EnoughToBuy(
                [.. bought.Select(coil => coil.Length)], [.. cuts.Take(onHand), .. bought.Select(coil => coil.Counts)], 0);
            if (best is null || stock.With(found.Purchase).AimsOf(found.Cuts) < stock.With(best.Purchase).AimsOf(best.Cuts))
                best = found;
        }
        return best;
    }
}
