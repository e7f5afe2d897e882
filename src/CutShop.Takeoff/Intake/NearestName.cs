namespace CutShop.Takeoff.Intake;

/// <summary>Finds the known name that a mistyped one was probably meant to be.</summary>
internal static class NearestName
{
    private const int LongestCompared = 40;
    private const int MostCompared = 200;

    /// <summary>The nearest name, or null where none is near.</summary>
    public static string? Find(string typed, IEnumerable<string> known)
    {
        if (typed.Length > LongestCompared)
            return null;
        var lower = typed.ToLowerInvariant();
        var (nearest, least) = ((string?)null, Math.Min(Math.Max(3, (typed.Length / 3) + 1), typed.Length));
        foreach (var name in known.Take(MostCompared))
        {
            var distance = Distance(lower, name.ToLowerInvariant());
            if (distance < least)
                (nearest, least) = (name, distance);
        }
        return nearest;
    }

    /// <summary>Insertions, deletions and replacements that turn one word into the other (Levenshtein's distance).</summary>
    private static int Distance(string a, string b)
    {
        var above = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            above[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
                row[j] = Math.Min(Math.Min(above[j], row[j - 1]) + 1, above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
            (above, row) = (row, above);
        }
        return above[b.Length];
    }
}
