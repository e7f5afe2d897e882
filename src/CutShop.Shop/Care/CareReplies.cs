using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>What a database that fails says, in words.</summary>
public static class CareReplies
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(CareReplies));
}
