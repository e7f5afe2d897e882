using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.Metadata;

namespace CutShop.Web.Host;

/// <summary>How much one request may bring. A route that takes more, such as a job file, says so itself and refuses for itself.</summary>
public static class SizeLimits
{
    /// <summary>The most bytes of a form: that of a draft of 400 posts has under 1 MiB.</summary>
    public const int Form = 4 * 1024 * 1024;

    /// <summary>Answers 413 where a page is sent more than it takes and says so beforehand. What says nothing is cut off as it is read.</summary>
    internal static void UseSizeLimits(this WebApplication app) => app.Use((context, next) =>
    {
        var hasOwn = context.GetEndpoint()?.Metadata.GetMetadata<IRequestSizeLimitMetadata>() is not null;
        if (hasOwn || context.Request.ContentLength is null or <= Form)
            return next(context);
        // What still comes is passed over, so that the browser reads the answer; the page that answers has nothing of it.
        context.Features.GetRequiredFeature<IHttpMaxRequestBodySizeFeature>().MaxRequestBodySize = null;
        (context.Request.Body, context.Request.ContentLength) = (Stream.Null, 0);
        context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        return Task.CompletedTask;
    });
}
