using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Web.Api;
using CutShop.Web.Benches;
using CutShop.Web.Jobs;
using CutShop.Web.Orders;
using CutShop.Web.Shared;
using CutShop.Web.Site;
using CutShop.Web.Stock;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace CutShop.Web.Host;

/// <summary>The shop's web site.</summary>
public static class ShopSite
{
    /// <summary>Builds the site; the caller runs it.</summary>
    /// <param name="settings">What it serves.</param>
    /// <param name="listenOn">Addresses to listen on.</param>
    public static WebApplication Build(ShopSiteSettings settings, params string[] listenOn)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(ShopSite).Assembly.GetName().Name,
            Args = ["--hostBuilder:reloadConfigOnChange=false"], // settings are read when it starts; a watched file takes a handle of which a machine has few
        });
        builder.WebHost.UseUrls(listenOn);
        builder.WebHost.ConfigureKestrel(options =>
        {
            options.AddServerHeader = false;
            options.Limits.MaxRequestBodySize = SizeLimits.Form;
        });
        builder.UseShopLog(settings.JsonLog);
        builder.AddTelemetry();
        AddServices(builder.Services, settings);

        var app = builder.Build();
        // A proxy on this machine says who asks and that the way there is https; nobody else is believed.
        app.UseForwardedHeaders(new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto });
        app.UseMiddleware<SafeHeaders>();
        app.UseTrouble();
        app.Services.GetRequiredService<InternalPages>().TakeFrom(app);
        app.UseRequestLocalization();
        app.UseMiddleware<StorageErrorAnswers>();
        app.Use(NulCharacters.InQueryAsync);
        app.UseRouting();
        app.UseSizeLimits();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseAuthorization();
        CachedSitePages.Use(app);
        app.MapAssets();
        app.MapHealth();
        app.MapPaper();
        app.MapPlans();
        app.MapCoils();
        app.MapQuotes();
        app.MapApi();
        app.MapBenches();
        app.MapOnSite();
        app.MapReports();
        app.MapRazorPages();
        return app;
    }

    private static void AddServices(IServiceCollection services, ShopSiteSettings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton(settings.Database);
        services.AddSingleton(settings.Tables);
        services.AddSingleton(settings.Paper);
        services.AddSingleton<JobShelf>();
        services.AddSingleton<CoilShelf>();
        services.AddSingleton<WettingShelf>();
        services.AddSingleton<SurplusShelf>();
        services.AddSingleton<PlannedCuts>();
        services.AddSingleton<PlanShelf>();
        services.AddSingleton<CutPlanDesk>();
        services.AddSingleton<PlanSearches>();
        services.AddSingleton<CuttingSettingsShelf>();
        services.AddSingleton<LongestCut>();
        services.AddSingleton<HistoryShelf>();
        services.AddOrderDesk();
        services.TryAddSingleton(settings.Database.Time);
        services.AddSignIn(settings);
        GuessLimits.AddTo(services);
        services.AddApi();
        if (settings.Nightly is { } nightly)
            services.AddSingleton(nightly).AddHostedService<NightlyBackups>();
        services.AddBenches();
        services.AddOnSite();
        services.AddRazorPages(options => options.RootDirectory = "/").AddApplicationPart(typeof(ShopSite).Assembly).AddMvcOptions(options =>
        {
            options.Filters.Add<NulCharacters>(NulCharacters.Order);
            options.Filters.Add<PageHandlers>();
            options.ModelMetadataDetailsProviders.Add(new BlankText());
        });
    }
}
