using CutShop.Shop;
using CutShop.Takeoff;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CutShop.Web.Pages.Pieces;

/// <summary>Finds a piece by the code typed from its label.</summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Codes)]
public sealed class FindModel(JobShelf jobs) : PageModel
{
    /// <summary>What was typed.</summary>
    public string? Typed { get; private set; }

    /// <summary>Why no piece was found, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>Goes to the piece, or says why not.</summary>
    public IActionResult OnGet(string? code)
    {
        Typed = code;
        if (code is null)
            return Page();
        var parsed = PieceCode.Parse(code);
        if (parsed.IsGood && jobs.Has(parsed.Value))
            return Redirect($"/p/{parsed.Value.Plain}");
        Problem = parsed.Problem ?? "No piece has this code.";
        return Page();
    }
}
