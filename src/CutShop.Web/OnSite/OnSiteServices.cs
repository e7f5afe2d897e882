using CutShop.Shop;

namespace CutShop.Web.OnSite;

/// <summary>What the pages for installers need.</summary>
internal static class OnSiteServices
{
    public static void AddOnSite(this IServiceCollection services)
    {
        KeptSitePages.Add(services);
        services
            .AddSingleton<PieceShelf>()
            .AddSingleton<InstalledMarks>()
            .AddSingleton<SiteReports>()
            .AddSingleton<SitePhotos>()
            .AddSingleton<Labels>()
            .AddSingleton<LabelAddressShelf>()
            .AddSingleton<LabelAddress>()
            .AddSingleton<SitePacks>()
            .AddSingleton<OwnPages>()
            .AddSingleton<SitePackPages>();
    }
}
