namespace CutShop.CutPlan.EqualCoils;

/// <summary>Rounds the linear programme to whole coils, a few at a time, and solves again for what is left.</summary>
internal static class PatternDive
{
    /// <summary>One dive; <paramref name="chance"/> draws which pattern is rounded up, or null for the largest fraction.</summary>
    /// <returns>A pattern a coil that together cut everything, or null where time ended it or it cannot beat <paramref name="toBeat"/>.</returns>
    public static List<Pattern>? Down(PieceMix mix, PatternPrices prices, int toBeat, Random? chance, SearchClock clock)
    {
        var coils = new List<Pattern>();
        prices.Restart();
        var rounds = 40;
        while (prices.Left.Any(count => count > 0))
        {
            if (clock.IsUp || !prices.Solve(clock, rounds))
                return null;
            rounds = 8;
            if (coils.Count + (int)Math.Ceiling(prices.Value - 1e-6) >= toBeat && prices.IsSettled)
                return null;
            var before = coils.Count;
            var uses = prices.Uses;
            for (var p = 0; p < uses.Length; p++)
            {
                var whole = (int)Math.Floor(uses[p] + 1e-6);
                while (whole > 0 && prices.Patterns[p].FitsIn(prices.Left))
                {
                    Take(prices.Patterns[p]);
                    whole--;
                }
            }
            var next = Pick(prices, uses, chance);
            if (next is not null)
                Take(next);
            if (coils.Count == before)
                break;
            Finish(mix, prices, coils);
        }
        if (prices.Left.Any(count => count > 0))
            coils.AddRange(QuickFits.BestFit(mix.With(prices.Left)));
        return coils;

        void Take(Pattern pattern)
        {
            coils.Add(pattern);
            prices.Cut(pattern, 1);
        }
    }

    private static void Finish(PieceMix mix, PatternPrices prices, List<Pattern> coils)
    {
        // What fits one coil needs no more programme.
        if (mix.With(prices.Left).Total > mix.Room)
            return;
        var last = Pattern.Of(prices.Left);
        if (last.Kinds.Length == 0)
            return;
        coils.Add(last);
        prices.Cut(last, 1);
    }

    private static Pattern? Pick(PatternPrices prices, double[] uses, Random? chance)
    {
        var best = -1;
        var bestWeight = 0.0;
        for (var p = 0; p < uses.Length; p++)
        {
            var fraction = uses[p] - Math.Floor(uses[p] + 1e-6);
            if (fraction < 1e-6 || !prices.Patterns[p].FitsIn(prices.Left))
                continue;
            var weight = chance is null ? fraction : Math.Pow(chance.NextDouble(), 1 / (fraction * fraction));
            if (weight <= bestWeight)
                continue;
            bestWeight = weight;
            best = p;
        }
        return best < 0 ? null : prices.Patterns[best];
    }
}
