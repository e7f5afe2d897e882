namespace CutShop.CutPlan.Search;

/// <summary>What one coil could be cut to without scrap if all pieces were free for it.</summary>
/// <param name="IsExact">True where pieces add up to all its room.</param>
/// <param name="Most">The most that can be cut and still leave a length worth keeping, in nanometres; zero where nothing can.</param>
internal readonly record struct CoilReach(bool IsExact, long Most)
{
    /// <summary>The most that can be cut without scrap.</summary>
    public long MostOf(long room) => IsExact ? room : Most;

    /// <summary>Reach of every coil of a task, or null where the common unit is too small for a table.</summary>
    public static CoilReach[]? Of(CutTask task)
    {
        var room = task.Coils.Length == 0 ? 0 : task.Coils.Max(coil => coil.Room);
        if (room / task.Grid > NoScrapSearch.LongestTable)
            return null;
        var reach = new Reach(
            [.. Enumerable.Range(0, task.Kinds.Length)],
            [.. task.Kinds.Select(kind => (int)(kind.Need / task.Grid))],
            task.AllPieces(),
            (int)(room / task.Grid));
        return [.. task.Coils.Select(coil => new CoilReach(
            coil.Room % task.Grid == 0 && reach.Has((int)(coil.Room / task.Grid)),
            coil.Room < task.Keep ? 0 : reach.LongestUpTo((int)((coil.Room - Math.Max(task.Keep, 1)) / task.Grid)) * task.Grid))];
    }
}
