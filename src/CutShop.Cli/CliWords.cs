using CutShop.Takeoff.Words;

namespace CutShop.Cli;

/// <summary>What the commands say, and their help.</summary>
internal static class CliWords
{
    internal static WordList List { get; } = new(typeof(CliWords));

    internal static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);

    internal static Sentence Of(string key) => new(List, key);
}
