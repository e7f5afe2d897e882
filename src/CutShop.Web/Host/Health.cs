using CutShop.Shop.Store;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Host;

/// <summary>How the site is, for whatever watches it: whether it runs, and whether it can serve.</summary>
internal static class Health
{
    private const string Well = "well";

    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => TypedResults.Text(Well)).AllowAnonymous();
        routes.MapGet("/health/ready", Ready).AllowAnonymous();
    }

    /// <summary>Reads the database, whose trouble is answered with 503 like anybody's; while the program stops nobody new is to come.</summary>
    private static ContentHttpResult Ready(ShopDatabase database, IHostApplicationLifetime lifetime)
    {
        if (lifetime.ApplicationStopping.IsCancellationRequested)
            return TypedResults.Text("stopping", statusCode: StatusCodes.Status503ServiceUnavailable);
        database.Probe();
        return TypedResults.Text(Well);
    }
}
