using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Api;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption;
using Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption.ConfigurationModel;

namespace CutShop.Web.Host;

/// <summary>Sets up signing in: the cookie for people, the key for programs, and the rule that what is not open is shut.</summary>
internal static class SignInServices
{
    /// <summary>The query's name for the address to go back to.</summary>
    private const string Back = "back";

    /// <summary>Chooses how a request says who it is: by key under /api, by cookie everywhere else.</summary>
    private const string ByPath = "by path";

    /// <summary>A cookie is renewed no more often than this.</summary>
    private static readonly TimeSpan RenewAfter = TimeSpan.FromMinutes(1);

    public static void AddSignIn(this IServiceCollection services, ShopSiteSettings settings)
    {
        services.AddSingleton<PeopleShelf>();
        services.AddSingleton<SignIn>();
        services.AddSingleton<Sessions>();
        services.AddSingleton<FirstOwner>();
        services.AddSingleton<Tablets>();
        services.AddSingleton<ApiKeyShelf>();

        services.AddAuthentication(ByPath)
            .AddPolicyScheme(ByPath, displayName: null, options => options.ForwardDefaultSelector = context =>
                IsApi(context) ? KeyHandler.Scheme : CookieAuthenticationDefaults.AuthenticationScheme)
            .AddCookie(SetUpCookie)
            .AddScheme<KeyOptions, KeyHandler>(KeyHandler.Scheme, configureOptions: null);

        var authorization = services.AddAuthorizationBuilder()
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
        authorization.AddRights();
        authorization.AddKeyRights();

        KeepKeys(services, settings.Folder);
        services.AddAntiforgery(options =>
        {
            options.Cookie.Name = "cutshop-form";
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
    }

    private static void SetUpCookie(CookieAuthenticationOptions options)
    {
        options.Cookie.Name = "cutshop";
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.LoginPath = SignedIn.SignInPath;
        options.ReturnUrlParameter = Back;
        options.SlidingExpiration = true;
        options.Events.OnValidatePrincipal = SignedIn.CheckAsync;
        options.Events.OnCheckSlidingExpiration = context =>
        {
            context.ShouldRenew = context.ElapsedTime >= RenewAfter;
            return Task.CompletedTask;
        };
        options.Events.OnRedirectToLogin = context =>
        {
            var request = context.Request;
            if (IsApi(context.HttpContext))
                context.Response.StatusCode = StatusCodes.Status401Unauthorized;
            else
                // Without a host: the one that a request names may be anybody's.
                context.Response.Redirect($"{SignedIn.SignInPath}?{Back}={Uri.EscapeDataString(request.Path.ToUriComponent() + request.QueryString.ToUriComponent())}");
            return Task.CompletedTask;
        };
        // The page goes back by itself, to an address that it has checked.
        options.Events.OnRedirectToReturnUrl = _ => Task.CompletedTask;
        options.Events.OnRedirectToAccessDenied = context =>
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        };
    }

    private static bool IsApi(HttpContext context) => ApiRoutes.Serves(context.Request.Path);

    /// <summary>
    /// The keys that cookies are sealed with stay in the shop's folder, so that a restart signs nobody out. They seal with AES-GCM, which
    /// processors do themselves: every page opens one cookie and seals a form's token.
    /// </summary>
    private static void KeepKeys(IServiceCollection services, string folder)
    {
        var keys = ShopFolder.CookieKeysIn(folder);
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(keys);
        else
            Directory.CreateDirectory(keys, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        services.AddDataProtection()
            .SetApplicationName("CutShop")
            .PersistKeysToFileSystem(new DirectoryInfo(keys))
            .UseCryptographicAlgorithms(new AuthenticatedEncryptorConfiguration { EncryptionAlgorithm = EncryptionAlgorithm.AES_256_GCM });
    }
}
