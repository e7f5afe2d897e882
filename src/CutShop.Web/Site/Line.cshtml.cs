using CutShop.Paper.Allowed;
using CutShop.Paper.Sheets;
using CutShop.Shop.Site;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.OutputCaching;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>The line that a label's piece hangs in: its pieces in the order of installation, and the posts that the shop drills.</summary>
[OutputCache(PolicyName = CachedSitePages.Policy)]
public sealed class LineModel(PieceShelf pieces) : LabelPage
{
    /// <summary>The line.</summary>
    public SiteLine? Found { get; private set; }

    /// <summary>Its pieces in the order to hang them.</summary>
    public IReadOnlyList<LinePiece> Pieces { get; private set; } = [];

    /// <summary>Its posts that the shop drills, or in which nothing is bored.</summary>
    public IReadOnlyList<PostWork> Posts { get; private set; } = [];

    /// <summary>That a guard is needed where it is far down beside the line.</summary>
    public IReadOnlyList<string> Guards => AllowedHere.Guards(Lines, Paper);

    /// <summary>What is asked about the line before it is built: heights, openings, pulls, wood left.</summary>
    public IReadOnlyList<Block> Allowed => AllowedHere.Of(
        Found!.Piece.Takeoff! with { Pieces = [.. Found.Pieces.Select(one => one.Piece)], Bores = [.. Found.Posts.SelectMany(post => post.Bores)] },
        Lines,
        Paper);

    private IReadOnlyList<Line> Lines => [.. Found!.Piece.Takeoff!.Job.Lines.Where(line => line.Mark == Found.Piece.Piece!.Line)];

    /// <summary>How many of the pieces are up.</summary>
    public int Installed => Pieces.Count(piece => piece.State == InstalledState.Installed);

    /// <summary>True where the shop has drilled every post that needs it.</summary>
    public bool AllDrilled => Posts.All(post => post.DrillingsInShop == 0 || IsDrilled(post)) && Posts.Any(IsDrilled);

    /// <summary>True for a post that the shop has drilled.</summary>
    public bool IsDrilled(PostWork post)
    {
        ArgumentNullException.ThrowIfNull(post);
        return Found!.Drilled.Contains(post.Post.Mark);
    }

    /// <summary>What is, or was, drilled at a post, in words.</summary>
    public string WorkAt(PostWork post) => IsDrilled(post) ? T["DrilledInShop"] : post.Drillings().Count is var count && count == 1 ? T["OneDrilling"] : T["DrillingCount", count];

    /// <summary>Shows the line.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.FindLine, line => line.Piece.Label);
        if (Found is not { Piece: { Takeoff: not null } })
            return Found is null ? Page() : Redirect($"/p/{Found.Piece.Code.Plain}/dropped");
        Pieces = [.. Installation.InOrder(Found.Pieces, one => one.Piece)];
        Posts = [.. Found.Posts.Where(post => !post.IsForSite)];
        return Page();
    }

    /// <summary>The rope that must be in before a piece, or null.</summary>
    public Piece? FirstRopeOf(Piece piece) => Installation.FirstRopeOf(Found!.Piece.Takeoff!, piece);
}
