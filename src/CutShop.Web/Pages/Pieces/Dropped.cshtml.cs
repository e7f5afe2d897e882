using CutShop.Shop;
using CutShop.Takeoff;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CutShop.Web.Pages.Pieces;

/// <summary>What the label of a piece leads to that a change of its job took out.</summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Codes)]
public sealed class DroppedModel(JobShelf jobs) : PageModel
{
    /// <summary>The piece.</summary>
    public StoredPiece? Piece { get; private set; }

    /// <summary>Its job's number.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Shows the piece.</summary>
    public IActionResult OnGet(string code)
    {
        var parsed = PieceCode.Parse(code);
        if (!parsed.IsGood || jobs.Find(parsed.Value) is not { } stored)
            return NotFound();
        (Number, Piece) = (stored.Number, stored.Dropped.FirstOrDefault(piece => piece.Code == parsed.Value));
        return Piece is null ? NotFound() : Page();
    }
}
