using CutShop.Shop;

namespace CutShop.Cli;

/// <summary>Lists the open jobs that today's rules would make different.</summary>
internal static class RuleLines
{
    public static void Write(IReadOnlyList<JobChange> different)
    {
        if (different.Count == 0)
        {
            Console.WriteLine("No open job would be different under this program's rules.");
            return;
        }
        Console.WriteLine(FormattableString.Invariant($"{(different.Count == 1 ? "1 open job" : $"{different.Count} open jobs")} would be different under this program's rules. Tickets stay as they are; the page /jobs/by-rules offers each as a change."));
        foreach (var change in different)
            Console.WriteLine(FormattableString.Invariant($"  {change.Number}: pieces {change.Pieces.Count(piece => piece.IsTouched)}, posts {change.Posts.Count(post => post.IsTouched)}; made already: {change.Surplus.Count()}"));
    }
}
