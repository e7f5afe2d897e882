using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

using static CutShop.Web.Site.SiteWords;

namespace CutShop.Web.Site;

/// <summary>Finds a piece by the code typed from its label.</summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Codes)]
public sealed class FindModel : PageModel
{
    /// <summary>What was typed.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Code { get; set; }

    /// <summary>Why it is no code, or null.</summary>
    public string? Problem { get; private set; }

    /// <summary>Goes to the piece's address, or says what was mistyped.</summary>
    public IActionResult OnGet()
    {
        if (Code is null)
            return Page();
        var parsed = ScannedCode.Parse(Code);
        if (parsed.IsGood)
            return Redirect($"/p/{parsed.Value.Plain}");
        Problem = T[parsed.Reason!];
        return Page();
    }
}
