using CutShop.Shop.Site;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Site;

/// <summary>Addresses of reports that are no pages: their photos, for the shop's own people.</summary>
internal static class ReportRoutes
{
    public static void MapReports(this IEndpointRouteBuilder routes) => routes.MapGet("/reports/{id:long}/photo", Photo);

    private static Results<PhysicalFileHttpResult, NotFound> Photo(long id, SiteReports reports, SitePhotos photos) =>
        reports.Find(id) is { Photo: { } name } && photos.FileOf(name) is { } file
            ? TypedResults.PhysicalFile(file, SitePhotos.ContentType)
            : TypedResults.NotFound();
}
