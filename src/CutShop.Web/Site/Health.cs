using CutShop.Shop;

namespace CutShop.Web;

/// <summary>Whether the site runs and its database answers, for whatever watches it.</summary>
internal static class Health
{
    public static void MapHealth(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/health", (ShopDatabase database) =>
        {
            database.Read(session => session.Value<long>("SELECT count(*) FROM settings"));
            return TypedResults.Text("well");
        }).AllowAnonymous();
}
