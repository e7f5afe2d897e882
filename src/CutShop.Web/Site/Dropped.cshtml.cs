using CutShop.Shop.Site;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Site;

/// <summary>What the label of a piece leads to that a change of its job took out, whose job was cancelled, or that was cut again.</summary>
public sealed class DroppedModel(PieceShelf pieces) : LabelPage
{
    /// <summary>The piece.</summary>
    public SitePiece? Found { get; private set; }

    /// <summary>Shows the piece.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.Find, found => found.Label);
        return Found is { Label: LabelState.Good } ? Redirect($"/p/{Found.Code.Plain}") : Page();
    }
}
