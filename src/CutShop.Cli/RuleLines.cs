using CutShop.Shop.Jobs;

namespace CutShop.Cli;

/// <summary>Lists the open jobs that today's rules would make different.</summary>
internal static class RuleLines
{
    public static void Write(IReadOnlyList<JobChange> different)
    {
        if (different.Count == 0)
        {
            Console.WriteLine(CliWords.Say("NoneDifferent"));
            return;
        }
        Console.WriteLine(different.Count == 1 ? CliWords.Say("OneDifferent") : CliWords.Say("SomeDifferent", different.Count));
        foreach (var change in different)
            Console.WriteLine(CliWords.Say(
                "DifferentJob", change.Number, change.Pieces.Count(piece => piece.IsTouched), change.Posts.Count(post => post.IsTouched), change.Surplus.Count()));
    }
}
