using CutShop.Shop.Jobs;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>What a stored job comes to by one price list, as it is and as a change makes it. What was made already and is of no more use has no price in either.</summary>
/// <param name="ValidFrom">The list's first day.</param>
/// <param name="Currency">The sign before an amount.</param>
/// <param name="Was">The job as it is stored.</param>
/// <param name="Becomes">The job as it becomes.</param>
public sealed record ChangePrice(DateOnly ValidFrom, string Currency, Priced Was, Priced Becomes)
{
    /// <summary>What has no price in the list, before or after; with anything here there is no difference to show.</summary>
    public IReadOnlyList<Sentence> Missing => [.. Was.Missing.Concat(Becomes.Missing).Distinct()];

    internal static ChangePrice Of(JobChange change, PriceList prices, string currency) => new(
        prices.ValidFrom,
        currency,
        Pricing.Of(
            [.. change.Pieces.Where(piece => piece.Was is not null).Select(piece => piece.Was!.Piece)],
            change.Posts.Where(post => post.Was is not null).SelectMany(post => post.Was!.Bores),
            prices),
        Pricing.Of(
            [.. change.Pieces.Where(piece => piece.Becomes is not null).Select(piece => piece.Becomes!.Piece)],
            change.Posts.Where(post => post.Becomes is not null).SelectMany(post => post.Becomes!.Bores),
            prices));
}
