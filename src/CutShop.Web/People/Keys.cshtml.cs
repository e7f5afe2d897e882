using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.People;

/// <summary>Keys for programs: making and revoking them.</summary>
[Authorize(Policy = Rights.ManageKeys)]
public sealed class KeysModel(ApiKeyShelf keys, TimeProvider time) : PageModel
{
    /// <summary>All keys.</summary>
    public IReadOnlyList<ApiKey> All => keys.All();

    /// <summary>The name typed.</summary>
    public string? Name { get; private set; }

    /// <summary>The scope chosen.</summary>
    public KeyScope? Scope { get; private set; }

    /// <summary>The key just made, shown once.</summary>
    public string? Made { get; private set; }

    /// <summary>What is wrong, or null.</summary>
    public FieldProblem? Problem { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the keys.</summary>
    public void OnGet()
    {
    }

    /// <summary>Makes a key.</summary>
    public async Task OnPostMakeAsync(string? name, string? scope)
    {
        (Name, Scope) = (name, ApiKeyShelf.ScopeNamed(scope));
        if (Scope is not { } found)
        {
            Problem = ApiKeyShelf.UnknownScope(scope);
            return;
        }
        var (answer, key) = await keys.MakeAsync(name ?? "", found, Who.Of(User), HttpContext.RequestAborted);
        Problem = answer.Problem;
        if (answer.IsDone)
            (Made, Name, Scope) = (key, null, null);
    }

    /// <summary>Revokes a key.</summary>
    public async Task<IActionResult> OnPostRevokeAsync(long id)
    {
        Problem = (await keys.RevokeAsync(id, Who.Of(User), HttpContext.RequestAborted)).Problem;
        return Problem is null ? Redirect("/keys") : Page();
    }
}
