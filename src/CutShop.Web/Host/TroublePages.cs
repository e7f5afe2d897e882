using CutShop.Shop.Store;
using CutShop.Web.Api;

namespace CutShop.Web.Host;

/// <summary>What is answered when something is not there, not allowed or broke: a page to people, a problem as JSON to programs.</summary>
internal static class TroublePages
{
    public static void UseTrouble(this WebApplication app)
    {
        app.UseWhen(IsApi, api =>
        {
            api.UseExceptionHandler(broken => broken.Run(context => ApiProblem.WriteAsync(context, StatusCodes.Status500InternalServerError)));
            api.UseStatusCodePages(context => ApiProblem.WriteAsync(context.HttpContext, context.HttpContext.Response.StatusCode));
        });
        app.UseWhen(context => !IsApi(context), pages =>
        {
            pages.UseExceptionHandler("/trouble");
            pages.UseStatusCodePagesWithReExecute("/trouble", "?status={0}");
        });
    }

    private static bool IsApi(HttpContext context) => ApiRoutes.Serves(context.Request.Path);
}
