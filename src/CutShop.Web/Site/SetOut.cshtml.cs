using CutShop.Paper.Installing;
using CutShop.Shop.Site;
using CutShop.Takeoff.Rules;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.OutputCaching;

namespace CutShop.Web.Site;

/// <summary>How the posts of a label's line are set out, where it is a curve or a ring.</summary>
[OutputCache(PolicyName = CachedSitePages.Policy)]
public sealed class SetOutModel(PieceShelf pieces) : LabelPage
{
    /// <summary>The line.</summary>
    public SiteLine? Found { get; private set; }

    /// <summary>How it is set out.</summary>
    public SetOut? Plan { get; private set; }

    /// <summary>The marks of its posts in which something is bored.</summary>
    public IReadOnlySet<string> Bored => Found!.Posts.Where(post => post.Bores.Count > 0).Select(post => post.Post.Mark).ToHashSet();

    /// <summary>What is done, in order.</summary>
    public IReadOnlyList<string> Steps => SetOutWords.Steps(Plan!, Bored.Count > 0, Paper);

    /// <summary>Shows it; a line that is not set out so leads to the line itself.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.FindLine, line => line.Piece.Label);
        if (Found is null)
            return Page();
        if (Found.Piece is not { Takeoff.Job: { } job, Piece: { } piece })
            return Redirect(SitePaths.Dropped(Found.Piece.Code));
        Plan = SetOut.Of(job, job.Lines.Single(line => line.Mark == piece.Line));
        return Plan is null ? Redirect(SitePaths.Line(Found.Piece.Code)) : Page();
    }
}
