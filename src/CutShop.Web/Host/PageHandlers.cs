using CutShop.Web.Site;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CutShop.Web.Host;

/// <summary>
/// A page that is sent what it has no handler for is not drawn, since nothing has filled it: 405 where it takes nothing of the kind, 404
/// where it takes forms and none of that name. A handler is called with a form that can be read, else 415 or 400.
/// </summary>
internal sealed class PageHandlers : IAsyncPageFilter
{
    public Task OnPageHandlerSelectionAsync(PageHandlerSelectedContext context) => Task.CompletedTask;

    public async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        context.Result = context.HandlerInstance switch
        {
            // It explains what went wrong and is asked with the method of that; the framework itself would answer OPTIONS with 200.
            TroubleModel trouble => trouble.Page(),
            // It answers in the reader's language, as JSON too.
            SiteForm when context.HandlerMethod is not null => null,
            _ => await RefusalAsync(context),
        };
        if (context.Result is null)
            await next();
    }

    private static async Task<IActionResult?> RefusalAsync(PageHandlerExecutingContext context)
    {
        var request = context.HttpContext.Request;
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
            return null;
        if (context.HandlerMethod is null)
            return NoHandler(context);
        if (!request.HasFormContentType)
            return new StatusCodeResult(StatusCodes.Status415UnsupportedMediaType);
        try
        {
            await request.ReadFormAsync(context.HttpContext.RequestAborted);
            return null;
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException)
        {
            return new StatusCodeResult(broken is BadHttpRequestException { StatusCode: var status } ? status : StatusCodes.Status400BadRequest);
        }
    }

    private static StatusCodeResult NoHandler(PageHandlerExecutingContext context)
    {
        var taken = context.ActionDescriptor.HandlerMethods.Select(handler => handler.HttpMethod.ToUpperInvariant()).Append(HttpMethods.Get).Append(HttpMethods.Head).Distinct().ToList();
        if (taken.Contains(context.HttpContext.Request.Method))
            return new(StatusCodes.Status404NotFound);
        context.HttpContext.Response.Headers.Allow = string.Join(", ", taken);
        return new(StatusCodes.Status405MethodNotAllowed);
    }
}
