using System.Security.Claims;
using System.Text.Encodings.Web;
using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;

namespace CutShop.Web.Api;

/// <summary>Nothing to set.</summary>
internal sealed class KeyOptions : AuthenticationSchemeOptions;

/// <summary>Knows a program by the key in <c>Authorization: Bearer</c>.</summary>
internal sealed class KeyHandler(IOptionsMonitor<KeyOptions> options, ILoggerFactory logger, UrlEncoder encoder, ApiKeyShelf keys)
    : AuthenticationHandler<KeyOptions>(options, logger, encoder)
{
    public new const string Scheme = "key";

    public const string ScopeClaim = "scope";

    private const string Bearer = "Bearer ";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase))
            return AuthenticateResult.NoResult();
        if (await keys.UseAsync(header[Bearer.Length..].Trim(), Context.RequestAborted) is not { } key)
            return AuthenticateResult.Fail(HostWords.Say("ApiNoKey"));
        var identity = new ClaimsIdentity(
            [
                new(ClaimTypes.NameIdentifier, key.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)),
                new(ClaimTypes.Name, key.Name),
                new(ScopeClaim, ApiKeyShelf.NameOf(key.Scope)),
            ],
            Scheme);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Scheme));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers[HeaderNames.WWWAuthenticate] = "Bearer realm=\"CutShop\"";
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }
}

/// <summary>What a key allows.</summary>
internal static class KeyRights
{
    /// <summary>Any key reads.</summary>
    public const string Read = "key may read";

    /// <summary>Only a take-in key takes jobs in.</summary>
    public const string TakeIn = "key may take in";

    /// <summary>Any key, or anyone who is signed in, may read how the API is described.</summary>
    public const string ReadDescription = "may read the description";

    public static void AddKeyRights(this AuthorizationBuilder authorization)
    {
        authorization.AddPolicy(Read, rule => rule.AddAuthenticationSchemes(KeyHandler.Scheme)
            .RequireClaim(KeyHandler.ScopeClaim, ApiKeyShelf.NameOf(KeyScope.Read), ApiKeyShelf.NameOf(KeyScope.TakeIn)));
        authorization.AddPolicy(TakeIn, rule => rule.AddAuthenticationSchemes(KeyHandler.Scheme)
            .RequireClaim(KeyHandler.ScopeClaim, ApiKeyShelf.NameOf(KeyScope.TakeIn)));
        authorization.AddPolicy(ReadDescription, rule => rule
            .AddAuthenticationSchemes(KeyHandler.Scheme, Microsoft.AspNetCore.Authentication.Cookies.CookieAuthenticationDefaults.AuthenticationScheme)
            .RequireAuthenticatedUser());
    }

    /// <summary>The program as the history names it.</summary>
    public static string WhoIs(ClaimsPrincipal user) => Actors.NameOfKey(user.Identity?.Name);

    /// <summary>The key's row id.</summary>
    public static string IdOf(ClaimsPrincipal user) => user.FindFirstValue(ClaimTypes.NameIdentifier)!;
}
