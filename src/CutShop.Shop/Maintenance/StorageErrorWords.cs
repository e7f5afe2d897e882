using CutShop.Takeoff.Words;

namespace CutShop.Shop.Maintenance;

/// <summary>What is said where the shop's database cannot be read or written, in English and Spanish.</summary>
public static class StorageErrorWords
{
    /// <summary>The sentences.</summary>
    public static WordList List { get; } = new(typeof(StorageErrorWords));
}
