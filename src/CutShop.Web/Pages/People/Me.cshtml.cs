using CutShop.Shop;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

namespace CutShop.Web.Pages.People;

/// <summary>What each person sets for themself: units, password, PIN.</summary>
[EnableRateLimiting(GuessLimits.Secrets)]
public sealed class MeModel(Shop.People people, SignIn signIn, ILogger<MeModel> logger) : PageModel
{
    private const string PasswordNow = "not right; accepted: the password that you sign in with";

    /// <summary>The person.</summary>
    public Person Person => people.Find(SignedIn.PersonOf(HttpContext)!.Id)!;

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
            Problem = new("units", units ?? "", "accepted: shop, feet-inches or millimetres");
            return Page();
        }
        bool? millimetresFirst = units == "shop" ? null : units == "millimetres";
        return await DoneAsync(await people.SetUnitsAsync(Person.Id, millimetresFirst, Person.Name, HttpContext.RequestAborted), "Your choice is kept.");
    }

    /// <summary>Changes the password.</summary>
    public async Task<IActionResult> OnPostPasswordAsync(string? now, string? password, string? again)
    {
        if (!await IsMineAsync(now, "now"))
            return Page();
        if (password != again)
        {
            Problem = new("again", "", "accepted: the same password twice");
            return Page();
        }
        return await DoneAsync(await people.SetPasswordAsync(Person.Id, password ?? "", Person.Name, HttpContext.RequestAborted), "Your password is changed. Other places where you were signed in are signed out.");
    }

    /// <summary>Sets the PIN.</summary>
    public async Task<IActionResult> OnPostPinAsync(string? proof, string? pin) =>
        await IsMineAsync(proof, "proof")
            ? await DoneAsync(await people.SetPinAsync(Person.Id, pin ?? "", Person.Name, HttpContext.RequestAborted), "Your PIN is set. Other places where you were signed in are signed out.")
            : Page();

    /// <summary>A tablet left alone must not hand its person's account over: a change of secrets asks for the password, and counts wrong ones.</summary>
    private async Task<bool> IsMineAsync(string? password, string field)
    {
        // Only who is signed in as the person can ask here, so strangers cannot hold it up.
        var answer = await signIn.WithPasswordAsync(Person.Name, password ?? "", new("signed in", IsKnown: true), HttpContext.RequestAborted);
        SignInLog.Write(logger, answer, SignedIn.ByPassword, HttpContext);
        if (answer.Outcome != SignInOutcome.Right)
            Problem = new(field, "", answer.Outcome == SignInOutcome.Locked ? $"{PasswordNow}, in {Show.Wait(answer.Wait)}: there were too many wrong tries" : PasswordNow);
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
