using CutShop.Shop;
using CutShop.Web.OnSite;
using CutShop.Web.Words;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Pages.Pieces;

/// <summary>The line that a label's piece hangs in: its pieces in the order of installation, and its posts to bore on site.</summary>
public sealed class LineModel(PieceShelf pieces, SiteText text) : LabelPage(text)
{
    /// <summary>The line.</summary>
    public SiteLine? Found { get; private set; }

    /// <summary>Shows the line.</summary>
    public IActionResult OnGet()
    {
        Found = Find(pieces.FindLine, line => line.Piece.Label);
        return Found is { Piece.Label: LabelState.NoLongerWanted } ? Redirect($"/p/{Found.Piece.Code.Plain}/dropped") : Page();
    }
}
