using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>The line of a label's piece.</summary>
/// <param name="Piece">The piece of the label.</param>
/// <param name="Pieces">All pieces of its line as they are now, in the takeoff's order; empty unless the label is good.</param>
/// <param name="Posts">The work at all its posts, in their order; empty unless the label is good.</param>
/// <param name="Drilled">The marks of posts that the shop has drilled.</param>
/// <param name="Bored">The bores that installers have ticked.</param>
public sealed record SiteLine(
    SitePiece Piece, IReadOnlyList<LinePiece> Pieces, IReadOnlyList<PostWork> Posts, IReadOnlySet<string> Drilled, IReadOnlySet<BoreMark> Bored)
{
    /// <summary>Its posts that are bored where they stand, or whose holes are all there.</summary>
    public IEnumerable<PostWork> PostsForSite => Posts.Where(post => post.IsForSite);
}
