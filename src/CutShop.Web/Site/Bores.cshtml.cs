using CutShop.Paper.Installing;
using CutShop.Shop.Site;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.OutputCaching;

namespace CutShop.Web.Site;

/// <summary>The posts of a label's line that are bored where they stand, with each bore to be ticked.</summary>
[OutputCache(PolicyName = CachedSitePages.Policy)]
public sealed class BoresModel(PieceShelf pieces) : LabelPage
{
    /// <summary>The line.</summary>
    public SiteLine? Found { get; private set; }

    /// <summary>Its posts that are bored on site.</summary>
    public IReadOnlyList<PostWork> Posts { get; private set; } = [];

    /// <summary>How many bores are to be made in them.</summary>
    public int Bores => Posts.Sum(post => post.Bores.Count(bore => !bore.IsExisting));

    /// <summary>How many of those are ticked.</summary>
    public int Bored => Posts.Sum(post => SiteBore.Of(post, Paper).Count(bore => !bore.Bore.IsExisting && IsBored(post, bore)));

    /// <summary>The mark of the first post in which a bore is still to be made, or null.</summary>
    public string? Next => Posts.FirstOrDefault(post => SiteBore.Of(post, Paper).Any(bore => !bore.Bore.IsExisting && !IsBored(post, bore)))?.Post.Mark;

    /// <summary>Shows the posts; a line that has none leads to the line itself.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.FindLine, line => line.Piece.Label);
        if (Found is null)
            return Page();
        if (Found.Piece.Takeoff is null)
            return Redirect(SitePaths.Dropped(Found.Piece.Code));
        Posts = [.. Found.PostsForSite];
        return Posts.Count == 0 ? Redirect(SitePaths.Line(Found.Piece.Code)) : Page();
    }

    /// <summary>True for a bore that is ticked.</summary>
    public bool IsBored(PostWork post, SiteBore bore)
    {
        ArgumentNullException.ThrowIfNull(post);
        ArgumentNullException.ThrowIfNull(bore);
        return Found!.Bored.Contains(MarkOf(post, bore));
    }

    /// <summary>The button of a bore.</summary>
    public BoreTick TickOf(PostWork post, SiteBore bore) => new(Found!.Piece.Code, Found.Piece.Job, MarkOf(post, bore), IsBored(post, bore));

    private static BoreMark MarkOf(PostWork post, SiteBore bore) => new(post.Post.Mark, bore.Bore.Row, bore.Number);
}
