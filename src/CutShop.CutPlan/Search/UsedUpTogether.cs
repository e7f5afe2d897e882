namespace CutShop.CutPlan.Search;

/// <summary>
/// How many offcuts can be used up in one plan. Each of the shortest may have few ways to come out even, and two may want
/// the same piece: all ways of the shortest together are tried, so that what fails is proved.
/// </summary>
internal static class UsedUpTogether
{
    private const int Group = 5;

    /// <summary>At most so many of the offcuts that could each be used up alone; lots are left out of account.</summary>
    public static int Most(CutTask task, CoilReach[] reach, SearchClock clock)
    {
        int[] usable = [.. Enumerable.Range(0, task.Coils.Length)
            .Where(c => !task.Coils[c].IsFull && reach[c].IsExact)
            .OrderBy(c => task.Coils[c].Room)];
        int[] shortest = [.. usable.Take(Group)];
        var together = shortest.Length;
        while (together > 1 && !clock.IsUp && Subsets(shortest, together).All(IsRuledOut))
            together--;
        return usable.Length - shortest.Length + together;

        bool IsRuledOut(int[] set)
        {
            var roles = new CoilRoles(set, [], CoilRoles.NoCarrier);
            var filling = new CoilFilling(task, reach, roles, null, null, int.MaxValue, CoilFilling.ManySteps, clock);
            return filling.Fill(0) is null && filling.IsExhaustive;
        }
    }

    /// <summary>All subsets of a size.</summary>
    public static IEnumerable<int[]> Subsets(int[] all, int size)
    {
        for (var members = 0; members < 1 << all.Length; members++)
            if (int.PopCount(members) == size)
                yield return [.. all.Where((_, at) => (members >> at & 1) != 0)];
    }
}
