using System.Globalization;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Store;

/// <summary>What a check, a backup, a restore, a move and a database that fails say, in words.</summary>
public static class CareReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(CareReplies));

    internal static string Say(string key, params IReadOnlyList<object?> values) => List.Say(CultureInfo.InvariantCulture, key, values);
}
