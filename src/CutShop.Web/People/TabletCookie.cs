using CutShop.Shop.People;

namespace CutShop.Web.People;

/// <summary>The cookie by which the shop knows an enrolled tablet again.</summary>
internal static class TabletCookie
{
    private const string Name = "cutshop-tablet";

    /// <summary>The longest that browsers keep a cookie; each sign-in starts it again.</summary>
    private static readonly TimeSpan Kept = TimeSpan.FromDays(400);

    /// <summary>The tablet that sent the request, or null.</summary>
    public static Tablet? TabletOf(HttpContext context) =>
        context.Request.Cookies[Name] is { Length: > 0 } token ? context.RequestServices.GetRequiredService<Tablets>().Find(token) : null;

    public static void Give(HttpContext context, string token) => context.Response.Cookies.Append(
        Name,
        token,
        new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, Secure = context.Request.IsHttps, MaxAge = Kept, Path = "/", IsEssential = true });

    public static void Renew(HttpContext context)
    {
        if (context.Request.Cookies[Name] is { Length: > 0 } token)
            Give(context, token);
    }
}
