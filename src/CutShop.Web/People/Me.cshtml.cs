using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

using static CutShop.Web.Shared.FrontWords;

namespace CutShop.Web.People;

/// <summary>What each person sets for themself: units, password, PIN.</summary>
[EnableRateLimiting(GuessLimits.Secrets)]
public sealed class MeModel(PeopleShelf people, SignIn signIn, ILogger<MeModel> logger) : PageModel
{
    /// <summary>The person.</summary>
    public Person Person => people.Find(SignedIn.PersonOf(HttpContext)!.Id)!;

    /// <summary>What the person does, in the reader's language.</summary>
    public string RoleName => T[Person.Role switch
    {
        Role.Owner => "Owner",
        Role.Desk => "Desk",
        Role.Cutter => "Cutter",
        Role.Driller => "Driller",
        var other => throw new InvalidOperationException($"{other}"),
    }];

    /// <summary>What is wrong, or null.</summary>
    public FieldProblem? Problem { get; private set; }

    /// <summary>What was done, or null.</summary>
    public string? Said { get; private set; }

    /// <summary>Shows the person's own settings.</summary>
    public void OnGet()
    {
    }

    /// <summary>Keeps the units.</summary>
    public async Task<IActionResult> OnPostUnitsAsync(string? units)
    {
        if (units is not ("shop" or "feet-inches" or "millimetres"))
        {
            Problem = new("units", units ?? "", Of("BadUnits"));
            return Page();
        }
        bool? millimetresFirst = units == "shop" ? null : units == "millimetres";
        return await DoneAsync(await people.SetUnitsAsync(Person.Id, millimetresFirst, Person.Name, HttpContext.RequestAborted), T["Saved"]);
    }

    /// <summary>Changes the password.</summary>
    public async Task<IActionResult> OnPostPasswordAsync(string? now, string? password, string? again)
    {
        if (!await IsMineAsync(now, "now"))
            return Page();
        if (password != again)
        {
            Problem = new("again", "", Of("SamePasswordTwice"));
            return Page();
        }
        return await DoneAsync(await people.SetPasswordAsync(Person.Id, password ?? "", Person.Name, HttpContext.RequestAborted), T["PasswordChanged"]);
    }

    /// <summary>Sets the PIN.</summary>
    public async Task<IActionResult> OnPostPinAsync(string? proof, string? pin) =>
        await IsMineAsync(proof, "proof")
            ? await DoneAsync(await people.SetPinAsync(Person.Id, pin ?? "", Person.Name, HttpContext.RequestAborted), T["PinIsSet"])
            : Page();

    /// <summary>A tablet left alone must not hand its person's account over: a change of secrets asks for the password, and counts wrong ones.</summary>
    private async Task<bool> IsMineAsync(string? password, string field)
    {
        // Only who is signed in as the person can ask here, so strangers cannot hold it up.
        var answer = await signIn.WithPasswordAsync(Person.Name, password ?? "", new("signed in", IsKnown: true), HttpContext.RequestAborted);
        SignInLog.Write(logger, answer, SignedIn.ByPassword, HttpContext);
        if (answer.Outcome != SignInOutcome.Right)
            Problem = new(field, "", answer.Outcome == SignInOutcome.Locked ? Of("PasswordNowLocked", Show.Wait(answer.Wait)) : Of("PasswordNow"));
        return Problem is null;
    }

    private async Task<IActionResult> DoneAsync(PersonAnswer answer, string said)
    {
        Problem = answer.Problem;
        if (answer.IsDone)
        {
            Said = said;
            await SignedIn.InAsync(HttpContext, Person, SignedIn.WayOf(HttpContext));
        }
        return Page();
    }
}
