namespace CutShop.CutPlan.Search;

/// <summary>
/// Coil by coil, each cut as full as the pieces left allow, by the table of their sums: for tight stock, where the plain
/// rules leave a piece over and scrap cannot be helped.
/// </summary>
internal static class FullestFit
{
    /// <summary>Counts by coil and kind, or null where a piece finds no room.</summary>
    /// <param name="task">The task.</param>
    /// <param name="lots">Lot of each job that wants one.</param>
    /// <param name="chance">Draws which pieces are taken first and the coils' order; null takes the longest pieces and the shortest coils.</param>
    public static int[][]? Of(CutTask task, int[] lots, Random? chance)
    {
        int[] kinds = [.. Enumerable.Range(0, task.Kinds.Length)];
        chance?.Shuffle(kinds);
        var left = task.AllPieces();
        var cuts = task.NoCuts();
        foreach (var c in Enumerable.Range(0, task.Coils.Length)
            .OrderBy(c => task.Coils[c].Sort).ThenBy(c => task.Coils[c].Room * (chance is null ? 1 : 0.3 + chance.NextDouble())))
        {
            var room = (int)(task.Coils[c].Room / task.Grid);
            int[] some = [.. kinds.Where(k => left[k] > 0 && task.Kinds[k].Need / task.Grid <= room
                && (task.Kinds[k].Job < 0 || lots[task.Kinds[k].Job] == task.Coils[c].Lot))];
            if (some.Length == 0)
                continue;
            var reach = new Reach(some, [.. some.Select(k => (int)(task.Kinds[k].Need / task.Grid))], [.. some.Select(k => left[k])], room);
            cuts[c] = reach.Fills(reach.LongestUpTo(room), task.Kinds.Length).First();
            for (var k = 0; k < left.Length; k++)
                left[k] -= cuts[c][k];
        }
        return Array.TrueForAll(left, count => count == 0) ? cuts : null;
    }
}
