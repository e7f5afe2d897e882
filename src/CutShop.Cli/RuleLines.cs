using CutShop.Shop;

namespace CutShop.Cli;

/// <summary>Lists the open jobs that today's rules would make different.</summary>
internal static class RuleLines
{
    public static void Write(IReadOnlyList<JobChange> different)
    {
        if (different.Count == 0)
        {
            Console.WriteLine("Every open job is as the rules of this program would make it.");
            return;
        }
        Console.WriteLine(FormattableString.Invariant($"{(different.Count == 1 ? "1 open job" : $"{different.Count} open jobs")} would be different by the rules of this program. Tickets stay as they are; the page /jobs/by-rules offers each as a change."));
        foreach (var change in different)
            Console.WriteLine(FormattableString.Invariant($"  {change.Number}: {Touched(change.Pieces)} pieces, {Touched(change.Posts)} posts, {change.Surplus.Count()} of them made already"));
    }

    private static int Touched(IEnumerable<ChangedThing> things) => things.Count(thing => thing.Kind != ChangeKind.Kept || thing.IsRevised);
}
