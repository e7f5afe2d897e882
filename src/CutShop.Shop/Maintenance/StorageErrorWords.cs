using CutShop.Takeoff.Words;

namespace CutShop.Shop.Maintenance;

/// <summary>The sentences for a shop's database that cannot be read or written, in English and Spanish.</summary>
public static class StorageErrorWords
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(StorageErrorWords));
}
