using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.People;

/// <summary>Signs out. Open to anyone: someone whose time has run out is signed out already.</summary>
[AllowAnonymous]
public sealed class SignOutModel : PageModel
{
    /// <summary>Shows a button, since a link must not sign anyone out.</summary>
    public void OnGet()
    {
    }

    /// <summary>Signs out.</summary>
    public async Task<IActionResult> OnPostAsync()
    {
        await SignedIn.OutAsync(HttpContext);
        return Redirect(SignedIn.SignInPath);
    }
}
