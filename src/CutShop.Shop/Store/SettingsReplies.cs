using CutShop.Takeoff.Words;

namespace CutShop.Shop.Store;

/// <summary>What is accepted where the shop sets something for itself, in words.</summary>
public static class SettingsReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(SettingsReplies));

    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
