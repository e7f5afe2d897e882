namespace CutShop.CutPlan.Search;

/// <summary>Coils that could be bought to make up a shortage, the least rope first.</summary>
internal static class Purchases
{
    private const int MostFound = 20_000;
    private const int MostTried = 400;

    /// <summary>Lists of lengths to buy, longest length first in each, by total and then by count.</summary>
    /// <param name="standard">Lengths that can be bought.</param>
    /// <param name="trim">What each loses at its first trim.</param>
    /// <param name="shortage">What the coils to buy must hold at least.</param>
    /// <param name="longest">The longest need that no coil on hand can hold; zero where there is none.</param>
    /// <param name="fewest">Fewest coils.</param>
    /// <param name="enough">The total known to do; purchases over it are left out.</param>
    /// <returns>The purchases, and whether they are all there are: otherwise some, not always the least, are left out.</returns>
    public static (List<long[]> Purchases, bool AreAll) Of(
        IReadOnlyList<long> standard, long trim, long shortage, long longest, int fewest, long enough)
    {
        var lengths = standard.OrderDescending().ToArray();
        var found = new List<long[]>();
        var chosen = new List<long>();
        Choose(0, 0);
        return ([.. found.OrderBy(purchase => purchase.Sum()).ThenBy(purchase => purchase.Length).Take(MostTried)], found.Count <= MostTried);

        void Choose(int from, long total)
        {
            if (total - (chosen.Count * trim) >= shortage && chosen.Count >= fewest
                && (longest == 0 || (chosen.Count > 0 && chosen[0] - trim >= longest)))
                found.Add([.. chosen]);
            for (var next = from; next < lengths.Length && found.Count < MostFound; next++)
            {
                if (total + lengths[next] > enough)
                    continue;
                chosen.Add(lengths[next]);
                Choose(next, total + lengths[next]);
                chosen.RemoveAt(chosen.Count - 1);
            }
        }
    }
}
