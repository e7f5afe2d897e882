using CutShop.Shop;
using CutShop.Web.Words;

namespace CutShop.Web.OnSite;

/// <summary>What the pages for installers need.</summary>
internal static class OnSiteServices
{
    public static void AddOnSite(this IServiceCollection services)
    {
        KeptSitePages.Add(services);
        services
            .AddSingleton<SiteText>()
            .AddSingleton<PieceShelf>()
            .AddSingleton<Installing>()
            .AddSingleton<SiteReports>()
            .AddSingleton<SitePhotos>()
            .AddSingleton<Labels>()
            .AddSingleton<SiteAddressShelf>()
            .AddSingleton<LabelAddress>()
            .AddSingleton<SitePacks>()
            .AddSingleton<OwnPages>()
            .AddSingleton<SitePackPages>();
    }
}
