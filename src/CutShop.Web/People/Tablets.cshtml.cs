using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.People;

/// <summary>The tablets where a PIN is enough.</summary>
[Authorize(Policy = Rights.EnrolTablets)]
public sealed class TabletsModel(Tablets tablets, TimeProvider time) : PageModel
{
    /// <summary>The enrolled tablets.</summary>
    public IReadOnlyList<Tablet> All => tablets.All();

    /// <summary>This tablet, where it is enrolled.</summary>
    public Tablet? Here => TabletCookie.TabletOf(HttpContext);

    /// <summary>The name typed.</summary>
    public string? Name { get; private set; }

    /// <summary>What is wrong, or null.</summary>
    public FieldProblem? Problem { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the tablets.</summary>
    public void OnGet()
    {
    }

    /// <summary>Enrols the browser that sent this and signs it out.</summary>
    public async Task<IActionResult> OnPostEnrolAsync(string? name)
    {
        Name = name;
        var (answer, token) = await tablets.EnrolAsync(name ?? "", Who.Of(User), HttpContext.RequestAborted);
        Problem = answer.Problem;
        if (!answer.IsDone)
            return Page();
        TabletCookie.Give(HttpContext, token);
        await SignedIn.OutAsync(HttpContext);
        return Redirect(SignedIn.SignInPath);
    }

    /// <summary>Removes a tablet.</summary>
    public async Task<IActionResult> OnPostRemoveAsync(long id)
    {
        Problem = (await tablets.RemoveAsync(id, Who.Of(User), HttpContext.RequestAborted)).Problem;
        return Problem is null ? Redirect("/tablets") : Page();
    }
}
