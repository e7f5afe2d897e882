namespace CutShop.CutPlan.Search;

/// <summary>
/// Best-fit decreasing: longest piece first, into the coil already cut from that it leaves the least of; else the tightest
/// offcut is opened, else the tightest full coil, else a coil to buy.
/// </summary>
internal static class TightestFit
{
    /// <summary>Counts by coil and kind, or null where a piece finds no room.</summary>
    /// <param name="task">The task.</param>
    /// <param name="lots">The lot chosen for each job that wants one.</param>
    public static int[][]? Of(CutTask task, int[] lots) => Fill(task, lots, (coil, opened, room) =>
        (opened ? 0 : 1 + (int)task.Coils[coil].Sort, room));

    /// <summary>The same, with the longest coil first and filled before the next is opened.</summary>
    public static int[][]? LongestCoilFirst(CutTask task, int[] lots) => Fill(task, lots, (coil, opened, _) =>
        (opened ? 0 : 1 + (task.Coils[coil].Sort == CoilKind.ToBuy ? 1 : 0), -task.Coils[coil].Room));

    private static int[][]? Fill(CutTask task, int[] lots, Func<int, bool, long, (int, long)> preference)
    {
        var cuts = task.NoCuts();
        var room = task.Coils.Select(coil => coil.Room).ToArray();
        for (var k = 0; k < task.Kinds.Length; k++)
        {
            var kind = task.Kinds[k];
            for (var piece = 0; piece < kind.Count; piece++)
            {
                var best = -1;
                var bestPreference = (0, 0L);
                for (var c = 0; c < room.Length; c++)
                {
                    if (room[c] < kind.Need || (kind.Job >= 0 && lots[kind.Job] != task.Coils[c].Lot))
                        continue;
                    var preferred = preference(c, room[c] < task.Coils[c].Room, room[c]);
                    if (best >= 0 && preferred.CompareTo(bestPreference) >= 0)
                        continue;
                    (best, bestPreference) = (c, preferred);
                }
                if (best < 0)
                    return null;
                room[best] -= kind.Need;
                cuts[best][k]++;
            }
        }
        return cuts;
    }
}
