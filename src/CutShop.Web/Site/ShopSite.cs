using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace CutShop.Web;

/// <summary>What the site is told when it starts.</summary>
/// <param name="Database">The shop's database, open.</param>
/// <param name="Tables">Rope weights, screws and bits.</param>
/// <param name="Paper">Page size, units and words of printed paper.</param>
/// <param name="Address">The address that labels carry, such as <c>https://shop.example</c>.</param>
public sealed record ShopSiteSettings(ShopDatabase Database, ShopTables Tables, PaperSettings Paper, Uri Address);

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
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning);
        AddServices(builder.Services, settings);

        var app = builder.Build();
        app.UseExceptionHandler("/trouble");
        app.UseStatusCodePagesWithReExecute("/trouble", "?status={0}");
        app.UseMiddleware<SafeHeaders>();
        app.UseRouting();
        app.MapAssets();
        app.MapPaper();
        app.MapPlans();
        app.MapQuotes();
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
        services.AddSingleton<PlanShelf>();
        services.AddSingleton<CutPlanDesk>();
        services.AddSingleton<PlanSearches>();
        services.AddSingleton<SettingsShelf>();
        services.AddSingleton<HistoryShelf>();
        services.AddOrderDesk();
        services.TryAddSingleton(settings.Database.Time);
        services.AddRazorPages().AddApplicationPart(typeof(ShopSite).Assembly);
    }
}
