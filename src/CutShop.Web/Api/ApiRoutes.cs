namespace CutShop.Web.Api;

/// <summary>The HTTP API for programs, described in docs/api.md and at /api/openapi.json.</summary>
internal static class ApiRoutes
{
    public const string Root = "/api";

    /// <summary>True for an address of the API.</summary>
    public static bool Serves(PathString path) => path.StartsWithSegments(Root, StringComparison.OrdinalIgnoreCase);

    public static void MapApi(this WebApplication app)
    {
        var api = app.MapGroup(Root).RequireAuthorization(KeyRights.Read);
        api.MapTakeIn();
        api.MapSheetTakeIn();
        api.MapJobs();
        api.MapJobPaper();
        api.MapJobTables();
        api.MapChanges();
        app.MapOpenApi($"{Root}/openapi.json").RequireAuthorization(KeyRights.ReadDescription);
    }
}
