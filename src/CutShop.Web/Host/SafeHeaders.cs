using Microsoft.Extensions.Primitives;

namespace CutShop.Web.Host;

/// <summary>
/// Headers of every answer, whoever makes it: a page keeps to its own scripts, styles and frames, asks the browser for no device,
/// and stays out of shared caches unless it says otherwise itself.
/// </summary>
internal sealed class SafeHeaders(RequestDelegate next)
{
    private const string Policy =
        "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
        "form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    private const string NoDevices =
        "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), midi=(), payment=(), serial=(), usb=()";

    private const string HttpsForAYear = "max-age=31536000";

    private static readonly (string Name, StringValues Value)[] Headers =
    [
        ("Content-Security-Policy", Policy),
        ("Cache-Control", "no-cache, no-store"),
        ("X-Content-Type-Options", "nosniff"),
        ("Referrer-Policy", "no-referrer"),
        ("Permissions-Policy", NoDevices),
        ("Cross-Origin-Opener-Policy", "same-origin"),
        ("Cross-Origin-Resource-Policy", "same-origin"),
    ];

    public Task InvokeAsync(HttpContext context)
    {
        // At the last moment, since what answers an error clears the headers first.
        context.Response.OnStarting(Put, context);
        return next(context);
    }

    private static Task Put(object state)
    {
        var context = (HttpContext)state;
        var headers = context.Response.Headers;
        foreach (var (name, value) in Headers)
            headers.TryAdd(name, value);
        if (context.Request.IsHttps)
            headers.StrictTransportSecurity = HttpsForAYear;
        return Task.CompletedTask;
    }
}
