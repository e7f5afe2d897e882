using CutShop.Shop.Site;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.OutputCaching;

namespace CutShop.Web.Site;

/// <summary>
/// The page that a label leads to: where the piece goes and how it is fixed. It names no customer and no price, since the
/// label is its only key.
/// </summary>
[OutputCache(PolicyName = CachedSitePages.Policy)]
public sealed class PieceModel(PieceShelf pieces) : LabelPage
{
    /// <summary>The piece.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>True right after a report of it came in.</summary>
    public bool IsReported { get; private set; }

    /// <summary>Shows the piece.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.Find, found => found.Label);
        IsReported = Request.Query.ContainsKey("reported");
        return Found is { Label: LabelState.NoLongerWanted } ? Redirect($"/p/{Found.Code.Plain}/dropped") : Page();
    }
}
