using CutShop.Takeoff;
using CutShop.Web.Words;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CutShop.Web.Pages.OnSite;

/// <summary>Finds a piece by the code typed from its label.</summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Codes)]
public sealed class FindModel(SiteText text) : PageModel
{
    /// <summary>Words in the reader's language.</summary>
    public SiteText T => text;

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
        var parsed = PieceCode.Parse(Code);
        if (parsed.IsGood)
            return Redirect($"/p/{parsed.Value.Plain}");
        Problem = text.Say(PieceCode.WhyNot(Code)!);
        return Page();
    }
}
