namespace CutShop.Web;

/// <summary>Headers that keep a page to its own scripts, styles and frames, and out of shared caches: what does not change says so itself.</summary>
internal sealed class SafeHeaders(RequestDelegate next)
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    public Task InvokeAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.CacheControl = "no-cache, no-store";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        return next(context);
    }
}
