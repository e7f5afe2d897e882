namespace CutShop.CutPlan.EqualCoils;

/// <summary>Quick rules for coils that are all as long; each returns one pattern a coil.</summary>
internal static class QuickFits
{
    /// <summary>Longest piece first, each into the first coil that has room.</summary>
    public static List<Pattern> FirstFit(PieceMix mix) => Decreasing(mix, best: false);

    /// <summary>Longest piece first, each into the coil that it leaves the least room in.</summary>
    public static List<Pattern> BestFit(PieceMix mix) => Decreasing(mix, best: true);

    /// <summary>Coil by coil: the longest piece left, then the pieces that fill the coil best.</summary>
    public static List<Pattern> FullestCoil(PieceMix mix, Func<int, long> worth)
    {
        var left = (int[])mix.Counts.Clone();
        var values = new long[mix.Kinds];
        for (var kind = 0; kind < mix.Kinds; kind++)
            values[kind] = worth(mix.Sizes[kind]);
        var coils = new List<Pattern>();
        var search = new PatternSearch(mix);
        for (var longest = 0; longest < mix.Kinds;)
        {
            if (left[longest] == 0)
            {
                longest++;
                continue;
            }
            left[longest]--;
            var rest = search.Richest(values, left, mix.Room - mix.Sizes[longest], nodes: 20_000);
            left[longest]++;
            rest[longest]++;
            var pattern = Pattern.Of(rest);
            pattern.TakeFrom(left);
            coils.Add(pattern);
        }
        return coils;
    }

    private static List<Pattern> Decreasing(PieceMix mix, bool best)
    {
        var rooms = new List<int>();
        var counts = new List<int[]>();
        for (var kind = 0; kind < mix.Kinds; kind++)
        {
            for (var piece = 0; piece < mix.Counts[kind]; piece++)
            {
                var chosen = -1;
                for (var coil = 0; coil < rooms.Count; coil++)
                {
                    if (rooms[coil] < mix.Sizes[kind] || (chosen >= 0 && rooms[coil] >= rooms[chosen]))
                        continue;
                    chosen = coil;
                    if (!best)
                        break;
                }
                if (chosen < 0)
                {
                    chosen = rooms.Count;
                    rooms.Add(mix.Room);
                    counts.Add(new int[mix.Kinds]);
                }
                rooms[chosen] -= mix.Sizes[kind];
                counts[chosen][kind]++;
            }
        }
        return [.. counts.Select(count => Pattern.Of(count))];
    }
}
