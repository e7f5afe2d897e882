using System.Globalization;
using System.IO.Compression;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.OutputCaching;
using Microsoft.AspNetCore.ResponseCompression;

namespace CutShop.Web.Site;

/// <summary>
/// Keeps pages for installers as they were made and compressed, until anything in the shop's database changes: making one
/// costs many times an answer. Only what a stranger gets is kept.
/// </summary>
/// <remarks>
/// A kept page's form has the key that it was made with. Whoever taps on the same page means the same change of the same
/// state, so it rightly counts once; the site's own script gives each tap a key of its own.
/// </remarks>
internal sealed class CachedSitePages(ShopDatabase database) : IOutputCachePolicy
{
    /// <summary>The policy of pages that are kept.</summary>
    public const string Policy = "site pages";

    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    public ValueTask CacheRequestAsync(OutputCacheContext context, CancellationToken cancellation)
    {
        var http = context.HttpContext;
        var isForStrangers = HttpMethods.IsGet(http.Request.Method) && http.User.Identity?.IsAuthenticated != true && !GuessLimits.IsOurs(http);
        context.EnableOutputCaching = context.AllowCacheLookup = context.AllowCacheStorage = context.AllowLocking = isForStrangers;
        context.ResponseExpirationTimeSpan = Longest;
        var vary = context.CacheVaryByRules;
        (vary.QueryKeys, vary.HeaderNames) = ("*", "Accept-Encoding");
        vary.VaryByValues["language"] = CultureInfo.CurrentUICulture.Name;
        vary.VaryByValues["change"] = database.ChangeNumber.ToString(CultureInfo.InvariantCulture);
        return ValueTask.CompletedTask;
    }

    public ValueTask ServeFromCacheAsync(OutputCacheContext context, CancellationToken cancellation) => ValueTask.CompletedTask;

    public ValueTask ServeResponseAsync(OutputCacheContext context, CancellationToken cancellation)
    {
        var response = context.HttpContext.Response;
        context.AllowCacheStorage &= response.StatusCode == StatusCodes.Status200OK && response.Headers.SetCookie.Count == 0;
        return ValueTask.CompletedTask;
    }

    /// <summary>Adds what <see cref="Use"/> needs.</summary>
    public static void Add(IServiceCollection services)
    {
        services.AddOutputCache(options => options.AddPolicy(Policy, builder => builder.AddPolicy<CachedSitePages>(), excludeDefaultPolicy: true));
        services.AddResponseCompression(options => options.EnableForHttps = true);
        services.Configure<BrotliCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal);
    }

    /// <summary>Answers with kept pages; what is made anew is compressed first. Other pages hold secrets of forms and stay as they are.</summary>
    public static void Use(WebApplication app)
    {
        app.UseOutputCache();
        app.UseWhen(
            context => context.GetEndpoint()?.Metadata.GetMetadata<OutputCacheAttribute>() is { PolicyName: Policy },
            pages => pages.UseResponseCompression());
    }
}
