using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Lengths;

/// <summary>The sentences about a text that is not a length or a share.</summary>
public static class LengthWords
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(LengthWords));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
