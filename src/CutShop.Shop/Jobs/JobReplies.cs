using CutShop.Takeoff.Words;

namespace CutShop.Shop.Jobs;

/// <summary>The shop's answers about jobs and their changes.</summary>
public static class JobReplies
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(JobReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
