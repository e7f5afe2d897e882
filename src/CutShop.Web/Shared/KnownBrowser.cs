using System.Globalization;
using System.Security.Cryptography;
using CutShop.Shop.People;
using Microsoft.AspNetCore.DataProtection;

namespace CutShop.Web.Shared;

/// <summary>
/// The browsers in which a person has signed in with a password: strangers who try that person's name elsewhere do not hold them up. A
/// sealed cookie says it, until the person gets a new password, PIN or role; it opens nothing, and tries from it are counted too.
/// </summary>
internal static class KnownBrowser
{
    private const string Name = "cutshop-known";
    private const char Between = '.';

    /// <summary>People who share a browser; the one who signed in longest ago is forgotten.</summary>
    private const int MostPeople = 8;

    private static readonly TimeSpan Kept = TimeSpan.FromDays(400);

    /// <summary>Where somebody who types a name tries to sign in with a password.</summary>
    public static SignInPlace PlaceOf(HttpContext context, string name)
    {
        var (browser, people) = Read(context);
        return people.Count > 0 && context.RequestServices.GetRequiredService<PeopleShelf>().Find(name) is { } person && people.Contains(MarkOf(person))
            ? new($"browser {browser}", IsKnown: true)
            : new(AddressGroup.Of(context).ToString(), IsKnown: false);
    }

    /// <summary>Has the browser known as one in which the person signs in.</summary>
    public static void Remember(HttpContext context, Person person)
    {
        var (browser, people) = Read(context);
        var known = people.Where(mark => mark != MarkOf(person) && !mark.StartsWith(IdOf(person), StringComparison.Ordinal)).TakeLast(MostPeople - 1).Append(MarkOf(person));
        context.Response.Cookies.Append(
            Name,
            Seal(context).Protect(string.Join(Between, known.Prepend(browser))),
            new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = context.Request.IsHttps, MaxAge = Kept, Path = "/", IsEssential = true });
    }

    private static (string Browser, IReadOnlyList<string> People) Read(HttpContext context)
    {
        try
        {
            if (context.Request.Cookies[Name] is { Length: > 0 } cookie && Seal(context).Unprotect(cookie).Split(Between) is [var browser, .. var people])
                return (browser, people);
        }
        catch (CryptographicException)
        {
            // Made up, or sealed with keys that are gone.
        }
        return (Sessions.Draw(), []);
    }

    private static string IdOf(Person person) => string.Create(CultureInfo.InvariantCulture, $"{person.Id} ");

    private static string MarkOf(Person person) => IdOf(person) + person.Stamp;

    private static IDataProtector Seal(HttpContext context) => context.RequestServices.GetRequiredService<IDataProtectionProvider>().CreateProtector("known browser");
}
