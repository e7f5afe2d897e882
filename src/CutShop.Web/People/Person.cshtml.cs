using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

using static CutShop.Web.People.PeopleWords;

namespace CutShop.Web.People;

/// <summary>One person: role, password, PIN, on or off.</summary>
[Authorize(Policy = Rights.ManagePeople)]
public sealed class PersonModel(PeopleShelf people) : PageModel
{
    /// <summary>The person.</summary>
    public Person? Person { get; private set; }

    /// <summary>What is wrong, or null.</summary>
    public FieldProblem? Problem { get; private set; }

    /// <summary>What was done, or null.</summary>
    public string? Said { get; private set; }

    /// <summary>A secret to hand over, shown once.</summary>
    public (string What, string Secret)? Handed { get; private set; }

    /// <summary>Shows the person.</summary>
    public IActionResult OnGet(long id) => Shown(id);

    /// <summary>Changes the role.</summary>
    public Task<IActionResult> OnPostRoleAsync(long id, string? role) => RoleNames.Find(role) is { } found
        ? DoAsync(id, people.ChangeRoleAsync(id, found, Owner, HttpContext.RequestAborted), T["TheRoleIsChanged"])
        : DoAsync(id, Task.FromResult(new PersonAnswer(0, RoleNames.Unknown(role))), "");

    /// <summary>Draws a new password.</summary>
    public Task<IActionResult> OnPostPasswordAsync(long id)
    {
        var password = PeopleShelf.DrawPassword();
        return DoAsync(id, people.SetPasswordAsync(id, password, Owner, HttpContext.RequestAborted), T["PasswordShownOnce"], password);
    }

    /// <summary>Draws a new PIN.</summary>
    public Task<IActionResult> OnPostPinAsync(long id)
    {
        var pin = PeopleShelf.DrawPin();
        return DoAsync(id, people.SetPinAsync(id, pin, Owner, HttpContext.RequestAborted), T["PinShownOnce"], pin);
    }

    /// <summary>Takes the PIN away.</summary>
    public Task<IActionResult> OnPostNoPinAsync(long id) =>
        DoAsync(id, people.SetPinAsync(id, pin: null, Owner, HttpContext.RequestAborted), T["PinRemoved"]);

    /// <summary>Switches off or on.</summary>
    public Task<IActionResult> OnPostSwitchAsync(long id, bool on) =>
        DoAsync(id, people.SwitchAsync(id, on, Owner, HttpContext.RequestAborted), on ? T["NowSwitchedOn"] : T["NowSwitchedOff"]);

    private string Owner => Who.Of(User);

    private async Task<IActionResult> DoAsync(long id, Task<PersonAnswer> change, string said, string? secret = null)
    {
        var answer = await change;
        Problem = answer.Problem;
        if (answer.IsDone && secret is null)
            Said = said;
        else if (answer.IsDone)
            Handed = (said, secret!);
        // Owners who change themselves stay signed in here, and nowhere else.
        if (answer.IsDone && SignedIn.PersonOf(HttpContext)?.Id == id && people.Find(id) is { IsActive: true } self)
            await SignedIn.InAsync(HttpContext, self, SignedIn.WayOf(HttpContext));
        return Shown(id);
    }

    private IActionResult Shown(long id)
    {
        Person = people.Find(id);
        return Person is null ? NotFound() : Page();
    }
}
