using CutShop.Takeoff.Words;

namespace CutShop.Shop.Store;

/// <summary>What a check, a backup, a restore, a move and a database that fails say, in words.</summary>
public static class StoreReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(StoreReplies));

    internal static string Say(string key, params IReadOnlyList<object?> values) => List.InEnglish(key, values);
}
