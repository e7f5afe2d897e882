using System.Net;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Localization;

namespace CutShop.Web.Site;

/// <summary>
/// Reads the site's own pages inside the program, as a stranger with the reader's language gets them: what is stored on a
/// phone is then the very page that it would have loaded.
/// </summary>
internal sealed class InternalPages(IServiceScopeFactory scopes)
{
    private RequestDelegate? _site;

    /// <summary>Takes what the site answers with from here on.</summary>
    public void TakeFrom(IApplicationBuilder app) => app.Use(next => _site = next);

    /// <summary>A page as text, or null where it does not answer with 200 or the other status that is wanted.</summary>
    /// <param name="reader">Who asks: its language, host and scheme are taken over, nothing else.</param>
    /// <param name="path">The page's path.</param>
    /// <param name="also">Another status of a page that is wanted.</param>
    public async Task<string?> ReadAsync(HttpContext reader, string path, HttpStatusCode also = HttpStatusCode.OK)
    {
        await using var scope = scopes.CreateAsyncScope();
        using var body = new MemoryStream();
        var context = new DefaultHttpContext { RequestServices = scope.ServiceProvider, RequestAborted = reader.RequestAborted };
        context.Features.Set<IHttpResponseBodyFeature>(new StreamResponseBodyFeature(body));
        context.Features.Set<IHttpMaxRequestBodySizeFeature>(new NoBody());
        GuessLimits.MarkOurs(context);
        var request = context.Request;
        (request.Method, request.Scheme, request.Host, request.Path) = (HttpMethods.Get, reader.Request.Scheme, reader.Request.Host, path);
        if (reader.Request.Cookies[CookieRequestCultureProvider.DefaultCookieName] is { } language)
            request.Headers.Cookie = $"{CookieRequestCultureProvider.DefaultCookieName}={Uri.EscapeDataString(language)}";
        await _site!(context);
        await context.Response.CompleteAsync();
        return (HttpStatusCode)context.Response.StatusCode is var status && (status == HttpStatusCode.OK || status == also) ? System.Text.Encoding.UTF8.GetString(body.GetBuffer(), 0, (int)body.Length) : null;
    }

    /// <summary>A page that is only read sends nothing, whatever it would take.</summary>
    private sealed class NoBody : IHttpMaxRequestBodySizeFeature
    {
        public bool IsReadOnly => false;

        public long? MaxRequestBodySize { get; set; }
    }
}
