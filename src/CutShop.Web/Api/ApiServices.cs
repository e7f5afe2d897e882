using CutShop.Shop.Jobs;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace CutShop.Web.Api;

/// <summary>What the API needs.</summary>
internal static class ApiServices
{
    public static void AddApi(this IServiceCollection services)
    {
        services.TryAddSingleton<JobIntake>();
        services.TryAddSingleton<JobFeed>();
        services.AddOpenApi(options =>
        {
            options.ShouldInclude = route => ApiRoutes.Serves($"/{route.RelativePath}");
            options.AddDocumentTransformer(ApiDescription.Describe);
            options.AddOperationTransformer(ApiDescription.DescribeOperation);
        });
    }
}
