using CutShop.Shop.People;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;

using static CutShop.Web.Shared.FrontWords;

namespace CutShop.Web.People;

/// <summary>Signs a person in: by password anywhere, by PIN on an enrolled tablet.</summary>
[AllowAnonymous]
[EnableRateLimiting(GuessLimits.Secrets)]
public sealed class SignInModel(SignIn signIn, PeopleShelf people, ILogger<SignInModel> logger) : PageModel
{
    /// <summary>What is said of a wrong name, a wrong password and a wrong PIN alike.</summary>
    public static string Wrong => T["WrongSignIn"];

    /// <summary>What is said of a name that has to wait.</summary>
    public static string Locked => T["Locked"];

    /// <summary>Where to go once signed in.</summary>
    public string Back { get; private set; } = "/";

    /// <summary>The name typed or chosen.</summary>
    public string? Name { get; private set; }

    /// <summary>Why nobody was signed in, or null.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The tablet, where this is an enrolled one.</summary>
    public Tablet? Tablet { get; private set; }

    /// <summary>The names of those who have a PIN; empty anywhere but on an enrolled tablet.</summary>
    public IReadOnlyList<string> Names { get; private set; } = [];

    /// <summary>True where the form asks for a PIN.</summary>
    public bool ByPin { get; private set; }

    /// <summary>The address of the form that asks for the other secret.</summary>
    public string OtherWay => $"/sign-in?way={(ByPin ? "password" : "pin")}&back={Uri.EscapeDataString(Back)}";

    /// <summary>Shows the form.</summary>
    public void OnGet(string? back, string? way) => Prepare(back, way);

    /// <summary>Signs in, or says that it went wrong.</summary>
    public async Task<IActionResult> OnPostAsync(string? back, string? way, string? name, string? password, string? pin)
    {
        Prepare(back, way);
        Name = name ?? "";
        // A PIN counts only where a tablet is enrolled; anywhere else the form asks for a password, whatever was sent.
        var answer = ByPin
            ? await signIn.WithPinAsync(Name, pin ?? "", new($"tablet {Tablet!.Id}", IsKnown: true), HttpContext.RequestAborted)
            : await signIn.WithPasswordAsync(Name, password ?? "", KnownBrowser.PlaceOf(HttpContext, Name), HttpContext.RequestAborted);
        if (answer.Person is { } person)
        {
            TabletCookie.Renew(HttpContext);
            await SignedIn.InAsync(HttpContext, person, ByPin ? SignedIn.ByPin : SignedIn.ByPassword);
            // Who asked for no page in particular goes to work.
            return Redirect(Back == "/" ? WorkPlace.Of(person.Role) : Back);
        }
        SignInLog.Write(logger, answer, ByPin ? SignedIn.ByPin : SignedIn.ByPassword, HttpContext);
        Trouble = answer.Outcome == SignInOutcome.Locked ? $"{Locked} {T["TryAgainIn", Show.Wait(answer.Wait)]}" : Wrong;
        return Page();
    }

    private void Prepare(string? back, string? way)
    {
        Back = LocalAddress.Of(back, "/");
        Tablet = TabletCookie.TabletOf(HttpContext);
        if (Tablet is not null)
            Names = [.. people.All().Where(person => person is { IsActive: true, HasPin: true }).Select(person => person.Name)];
        ByPin = Names.Count > 0 && way != "password";
    }
}
