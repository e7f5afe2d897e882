using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>What is said of a job file that is wrong.</summary>
public static class JobFileWords
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(JobFileWords));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
