using CutShop.Takeoff.Words;

namespace CutShop.Web.Shared;

/// <summary>What the pages say that everybody meets, in English and Spanish: signing in, what one sets for oneself, pages of trouble.</summary>
public static class FrontWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(FrontWords));

    internal static PageText T { get; } = new(List);
}
