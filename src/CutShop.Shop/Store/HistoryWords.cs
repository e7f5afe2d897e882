using CutShop.Takeoff.Words;

namespace CutShop.Shop.Store;

/// <summary>What the history says. A code with one fixed word has it under its property's name; "Because..." are causes.</summary>
public static class HistoryWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(HistoryWords));

    internal static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);
}
