using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>The sentences about errors in a job file.</summary>
public static class JobFileWords
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(JobFileWords));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
