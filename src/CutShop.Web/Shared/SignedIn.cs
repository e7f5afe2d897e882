using System.Globalization;
using System.Security.Claims;
using CutShop.Shop.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace CutShop.Web.Shared;

/// <summary>Who is signed in, and signing in and out.</summary>
public static class SignedIn
{
    internal const string SignInPath = "/sign-in";

    internal const string WayClaim = "way";
    /// <summary>The way of who signed in with a password.</summary>
    public const string ByPassword = "password";

    internal const string ByPin = "PIN";

    /// <summary>At a desk, signed in with a password: how long nothing may happen before the person is signed out.</summary>
    public static readonly TimeSpan DeskRest = TimeSpan.FromHours(2);

    /// <summary>At a shared tablet, signed in with a PIN: how long nothing may happen before the person is signed out.</summary>
    public static readonly TimeSpan BenchRest = TimeSpan.FromMinutes(20);

    private const string StampClaim = "stamp";
    private const string SessionClaim = "session";

    /// <summary>The person who is signed in, or null.</summary>
    public static Person? PersonOf(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Items.TryGetValue(typeof(SignedIn), out var person) ? (Person?)person : null;
    }

    /// <summary>Signs a person in, in a session of its own; the one that the browser had ends.</summary>
    /// <param name="context">The browser's request, whose answer carries the session's cookie.</param>
    /// <param name="person">The person.</param>
    /// <param name="way">How: <see cref="ByPassword"/>, or by PIN.</param>
    public static async Task InAsync(HttpContext context, Person person, string way)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(person);
        await EndAsync(context).ConfigureAwait(false);
        var identity = new ClaimsIdentity(
            [
                new(ClaimTypes.NameIdentifier, person.Id.ToString(CultureInfo.InvariantCulture)),
                new(ClaimTypes.Name, person.Name),
                new(ClaimTypes.Role, RoleNames.NameOf(person.Role)),
                new(WayClaim, way),
                new(StampClaim, person.Stamp),
                new(SessionClaim, Sessions.Draw()),
            ],
            CookieAuthenticationDefaults.AuthenticationScheme);
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        var rest = way == ByPin ? BenchRest : DeskRest;
        if (way == ByPassword)
            KnownBrowser.Remember(context, person);
        await context.SignInAsync(
            CookieAuthenticationDefaults.AuthenticationScheme,
            new ClaimsPrincipal(identity),
            new AuthenticationProperties { IssuedUtc = now, ExpiresUtc = now + rest, AllowRefresh = true }).ConfigureAwait(false);
    }

    /// <summary>Signs out: the session ends here and not in the browser alone, so that a copy of its cookie is worth nothing.</summary>
    internal static async Task OutAsync(HttpContext context)
    {
        await EndAsync(context).ConfigureAwait(false);
        await context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme).ConfigureAwait(false);
    }

    /// <summary>How the person who is signed in did so.</summary>
    internal static string WayOf(HttpContext context) => context.User.FindFirstValue(WayClaim) ?? ByPassword;

    /// <summary>Looks the person of a cookie up: switched off, the stamp drawn again or the session ended, and the cookie is worth nothing.</summary>
    internal static async Task CheckAsync(CookieValidatePrincipalContext cookie)
    {
        var (context, claims) = (cookie.HttpContext, cookie.Principal);
        if (long.TryParse(claims?.FindFirstValue(ClaimTypes.NameIdentifier), CultureInfo.InvariantCulture, out var id)
            && claims?.FindFirstValue(StampClaim) is { } stamp && claims.FindFirstValue(SessionClaim) is { } session
            && context.RequestServices.GetRequiredService<Sessions>().PersonOf(id, stamp, session) is { } person)
        {
            context.Items[typeof(SignedIn)] = person;
            return;
        }
        cookie.RejectPrincipal();
        await context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme).ConfigureAwait(false);
    }

    private static Task EndAsync(HttpContext context) => context.User.FindFirstValue(SessionClaim) is { } session
        ? context.RequestServices.GetRequiredService<Sessions>().EndAsync(session, context.RequestAborted)
        : Task.CompletedTask;
}
