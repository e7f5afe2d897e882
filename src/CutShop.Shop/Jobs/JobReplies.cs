using CutShop.Takeoff.Words;

namespace CutShop.Shop.Jobs;

/// <summary>What the shop says of jobs and of their changes.</summary>
public static class JobReplies
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(JobReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
