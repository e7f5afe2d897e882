using System.Security.Claims;

namespace CutShop.Web.Shared;

/// <summary>Who does something on the site, for the history.</summary>
internal static class Who
{
    /// <summary>The person's name, or that it was done on the site.</summary>
    public static string Of(ClaimsPrincipal user) => user.Identity?.Name ?? "site";
}
