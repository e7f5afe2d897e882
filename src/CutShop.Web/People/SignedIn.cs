using System.Globalization;
using System.Security.Claims;
using CutShop.Shop;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace CutShop.Web;

/// <summary>Who is signed in, and signing in and out.</summary>
public static class SignedIn
{
    internal const string WayClaim = "way";
    internal const string ByPassword = "password";
    internal const string ByPin = "PIN";

    /// <summary>At a desk, signed in with a password: how long nothing may happen before the person is signed out.</summary>
    public static readonly TimeSpan DeskRest = TimeSpan.FromHours(2);

    /// <summary>At a shared tablet, signed in with a PIN: how long nothing may happen before the person is signed out.</summary>
    public static readonly TimeSpan BenchRest = TimeSpan.FromMinutes(20);

    private const string StampClaim = "stamp";

    /// <summary>The person who is signed in, or null.</summary>
    public static Person? PersonOf(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Items.TryGetValue(typeof(SignedIn), out var person) ? (Person?)person : null;
    }

    internal static Task InAsync(HttpContext context, Person person, string way)
    {
        var identity = new ClaimsIdentity(
            [
                new(ClaimTypes.NameIdentifier, person.Id.ToString(CultureInfo.InvariantCulture)),
                new(ClaimTypes.Name, person.Name),
                new(ClaimTypes.Role, RoleNames.NameOf(person.Role)),
                new(WayClaim, way),
                new(StampClaim, person.Stamp),
            ],
            CookieAuthenticationDefaults.AuthenticationScheme);
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        var rest = way == ByPin ? BenchRest : DeskRest;
        return context.SignInAsync(
            CookieAuthenticationDefaults.AuthenticationScheme,
            new ClaimsPrincipal(identity),
            new AuthenticationProperties { IssuedUtc = now, ExpiresUtc = now + rest, AllowRefresh = true });
    }

    internal static Task OutAsync(HttpContext context) => context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);

    /// <summary>How the person who is signed in did so.</summary>
    internal static string WayOf(HttpContext context) => context.User.FindFirstValue(WayClaim) ?? ByPassword;

    /// <summary>Looks the person of a cookie up: switched off, or the stamp drawn anew, and the cookie is worth nothing.</summary>
    internal static async Task CheckAsync(CookieValidatePrincipalContext cookie)
    {
        var people = cookie.HttpContext.RequestServices.GetRequiredService<People>();
        var person = long.TryParse(cookie.Principal?.FindFirstValue(ClaimTypes.NameIdentifier), CultureInfo.InvariantCulture, out var id)
            ? people.Find(id)
            : null;
        if (person is { IsActive: true } && person.Stamp == cookie.Principal?.FindFirstValue(StampClaim))
        {
            cookie.HttpContext.Items[typeof(SignedIn)] = person;
            return;
        }
        cookie.RejectPrincipal();
        await OutAsync(cookie.HttpContext).ConfigureAwait(false);
    }
}
