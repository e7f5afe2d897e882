using CutShop.Shop.Jobs;
using CutShop.Shop.Maintenance;
using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;

namespace CutShop.Web.Orders;

/// <summary>What the order desk's pages need.</summary>
internal static class DeskServices
{
    public static void AddOrderDesk(this IServiceCollection services)
    {
        services.AddSingleton<ShopTablesShelf>();
        services.AddSingleton<JobSearch>();
        services.AddSingleton<JobRelease>();
        services.AddSingleton<JobChanging>();
        services.AddSingleton<JobsAgainstRules>();
        services.AddSingleton<DraftShelf>();
        services.AddSingleton<DraftPreviews>();
        services.AddSingleton<DraftIntake>();
        services.AddSingleton<PriceBook>();
        services.AddSingleton<QuoteDesk>();
        services.AddSingleton<PullLimit>();
        services.AddSingleton<LetterheadShelf>();
    }
}
