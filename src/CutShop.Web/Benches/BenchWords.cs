using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Benches;

/// <summary>Words of the pages of the benches, in English and Spanish.</summary>
public static class BenchWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(BenchWords));

    internal static PageText T { get; } = new(List);
}
