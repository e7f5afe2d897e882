namespace CutShop.Paper.Drawings;

/// <summary>Moves labels apart so that none covers another.</summary>
internal static class Spread
{
    /// <summary>
    /// Places near the wanted ones, in the same order, at least <paramref name="apart"/> from each other and between the
    /// bounds; closer together only where the bounds leave no other way.
    /// </summary>
    /// <param name="wanted">Wanted places, ascending.</param>
    /// <param name="apart">Least distance.</param>
    /// <param name="low">Lower bound.</param>
    /// <param name="high">Upper bound.</param>
    public static double[] Apart(IReadOnlyList<double> wanted, double apart, double low, double high)
    {
        var step = wanted.Count < 2 ? apart : Math.Min(apart, (high - low) / (wanted.Count - 1));
        var places = wanted.ToArray();
        for (var i = 0; i < places.Length; i++)
            places[i] = Math.Max(places[i], i == 0 ? low : places[i - 1] + step);
        for (var i = places.Length - 1; i >= 0; i--)
            places[i] = Math.Min(places[i], i == places.Length - 1 ? high : places[i + 1] - step);
        return places;
    }
}
