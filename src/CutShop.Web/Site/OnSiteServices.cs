using CutShop.Shop.Site;
using CutShop.Web.Shared;

namespace CutShop.Web.Site;

/// <summary>What the pages for installers need.</summary>
internal static class OnSiteServices
{
    public static void AddOnSite(this IServiceCollection services)
    {
        CachedSitePages.Add(services);
        services
            .AddSingleton<PieceShelf>()
            .AddSingleton<InstalledMarks>()
            .AddSingleton<BoreTicks>()
            .AddSingleton<MeasuredSpans>()
            .AddSingleton<SiteReports>()
            .AddSingleton<SitePhotos>()
            .AddSingleton<LabelShelf>()
            .AddSingleton<LabelAddressShelf>()
            .AddSingleton<LabelAddress>()
            .AddSingleton<SitePackShelf>()
            .AddSingleton<InternalPages>()
            .AddSingleton<SitePackPages>();
    }
}
