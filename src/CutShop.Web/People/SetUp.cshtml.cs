using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

using static CutShop.Web.People.PeopleWords;

namespace CutShop.Web.People;

/// <summary>The page behind the one-time link that the first start prints.</summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Secrets)]
public sealed class SetUpModel(FirstOwner firstOwner, PeopleShelf people) : PageModel
{
    /// <summary>The name typed.</summary>
    public string? Name { get; private set; }

    /// <summary>What is wrong, or null.</summary>
    public FieldProblem? Problem { get; private set; }

    /// <summary>Shows the form where the link is good.</summary>
    public IActionResult OnGet(string token) => firstOwner.IsOpen(token) ? Page() : NotFound();

    /// <summary>Makes the owner's account and signs the owner in.</summary>
    public async Task<IActionResult> OnPostAsync(string token, string? name, string? password, string? again)
    {
        if (!firstOwner.IsOpen(token))
            return NotFound();
        Name = name;
        if (password != again)
        {
            Problem = new("again", "", Of("SamePasswordTwice"));
            return Page();
        }
        var answer = await firstOwner.MakeAsync(token, name ?? "", password ?? "", HttpContext.RequestAborted);
        Problem = answer.Problem;
        if (!answer.IsDone)
            return Page();
        await SignedIn.InAsync(HttpContext, people.Find(answer.Id)!, SignedIn.ByPassword);
        return Redirect("/people");
    }
}
