using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>Something that is not as it should be in a shop's database or folder.</summary>
/// <param name="Where">What it is about: the file, a table, a coil, a piece, a job.</param>
/// <param name="Text">What is off, in words.</param>
public sealed record CheckFinding(string Where, string Text)
{
    /// <summary>A finding about something, in the words of <see cref="StoreReplies"/>.</summary>
    internal static CheckFinding Of(string where, string key, params IReadOnlyList<object?> values) => new(where, StoreReplies.Say(key, values));

    /// <summary>A finding about the database as a whole.</summary>
    internal static CheckFinding OfDatabase(string text) => new(StoreReplies.Say("Database"), text);

    /// <summary>Both as one line.</summary>
    public override string ToString() => $"{Where}: {Text}";
}
