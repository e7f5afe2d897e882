using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CutShop.Web.Pages.Pieces;

/// <summary>
/// The page that a label leads to: where the piece goes and how it is fixed. It names no customer and no price, since the
/// label is its only key.
/// </summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Codes)]
public sealed class PieceModel(JobShelf jobs) : PageModel
{
    /// <summary>The piece's code.</summary>
    public PieceCode Code { get; private set; }

    /// <summary>The job it belongs to.</summary>
    public StoredJob? Stored { get; private set; }

    /// <summary>The piece.</summary>
    public Piece? Piece { get; private set; }

    /// <summary>Its screws, along the line.</summary>
    public IReadOnlyList<Fixing> Fixings { get; private set; } = [];

    /// <summary>Units and words of the drawing.</summary>
    public PaperSettings Settings => PersonUnits.PaperFor(HttpContext);

    /// <summary>Shows the piece.</summary>
    public IActionResult OnGet(string code)
    {
        var parsed = PieceCode.Parse(code);
        if (!parsed.IsGood || jobs.Find(parsed.Value) is not { } stored)
            return NotFound();
        if (stored.Dropped.Any(piece => piece.Code == parsed.Value))
            return Redirect($"/p/{parsed.Value.Plain}/dropped");
        (Code, Stored) = (parsed.Value, stored);
        Piece = stored.Takeoff.Pieces[stored.Pieces.Index().First(pair => pair.Item.Code == Code).Index];
        Fixings = [.. stored.Takeoff.Fixings.Where(fixing => fixing.Run == Piece.Run)];
        return Page();
    }
}
