using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;
using CutShop.Web.Benches;
using CutShop.Web.Care;
using CutShop.Web.OnSite;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace CutShop.Web;

/// <summary>What the site is told when it starts.</summary>
/// <param name="Database">The shop's database, open.</param>
/// <param name="Tables">Rope weights, screws and bits.</param>
/// <param name="Paper">Page size, units and words of printed paper.</param>
/// <param name="Address">The address that labels carry while the shop has set none, such as <c>https://shop.example</c>.</param>
public sealed record ShopSiteSettings(ShopDatabase Database, ShopTables Tables, PaperSettings Paper, Uri Address)
{
    /// <summary>The shop's folder, where the keys that cookies are sealed with are kept.</summary>
    public string Folder { get; init; } = Database.Folder;

    /// <summary>When and where the server makes backups by itself; null for never.</summary>
    public NightlySettings? Nightly { get; init; }

    /// <summary>True writes the log as a line of JSON an event, for whatever collects it.</summary>
    public bool JsonLog { get; init; }
}

/// <summary>The shop's web site.</summary>
public static class ShopSite
{
    /// <summary>Builds the site; the caller runs it.</summary>
    /// <param name="settings">What it serves.</param>
    /// <param name="listenOn">Addresses to listen on.</param>
    public static WebApplication Build(ShopSiteSettings settings, params string[] listenOn)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ApplicationName = typeof(ShopSite).Assembly.GetName().Name });
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
        app.Services.GetRequiredService<OwnPages>().TakeFrom(app);
        app.UseRequestLocalization();
        app.UseMiddleware<StoreTroubleAnswers>();
        app.Use(NulCharacters.InQueryAsync);
        app.UseRouting();
        app.UseSizeLimits();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseAuthorization();
        KeptSitePages.Use(app);
        app.MapAssets();
        app.MapHealth();
        app.MapPaper();
        app.MapPlans();
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
        services.AddSingleton<CoilStock>();
        services.AddSingleton<SurplusShelf>();
        services.AddSingleton<PlannedCuts>();
        services.AddSingleton<PlanShelf>();
        services.AddSingleton<CutPlanDesk>();
        services.AddSingleton<PlanSearches>();
        services.AddSingleton<SettingsShelf>();
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
        services.AddRazorPages().AddApplicationPart(typeof(ShopSite).Assembly).AddMvcOptions(options =>
        {
            options.Filters.Add<NulCharacters>(NulCharacters.Order);
            options.Filters.Add<PageHandlers>();
            options.ModelMetadataDetailsProviders.Add(new BlankText());
        });
    }
}
