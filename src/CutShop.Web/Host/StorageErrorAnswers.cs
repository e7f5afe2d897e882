using System.Net;
using CutShop.Shop.Maintenance;
using CutShop.Web.Api;
using CutShop.Web.Shared;

namespace CutShop.Web.Host;

/// <summary>
/// Answers 503 where the machine and not the request is at fault: disk full, folder not writable, database busy or damaged. The
/// answer says what is wrong and that nothing was stored. It asks nothing of the database.
/// </summary>
internal sealed partial class StorageErrorAnswers(RequestDelegate next, ILogger<StorageErrorAnswers> logger)
{
    private const string RetryAfterSeconds = "10";

    private static readonly PageText T = new(StorageErrorWords.List);

    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (Exception e) when (!context.Response.HasStarted && StorageError.Of(e) is not null)
        {
            var trouble = StorageError.Of(e)!;
            LogTrouble(logger, trouble.Text, e);
            var stored = trouble.IsUnsure && !HttpMethods.IsGet(context.Request.Method) ? "PerhapsStored" : "NothingStored";
            context.Response.Headers.RetryAfter = RetryAfterSeconds;
            if (ApiRoutes.Serves(context.Request.Path))
            {
                await ApiProblem.Of(StatusCodes.Status503ServiceUnavailable, $"{trouble.Text} {StorageErrorWords.List.InEnglish(stored)}").ExecuteAsync(context);
                return;
            }
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            context.Response.ContentType = "text/html; charset=utf-8";
            await context.Response.WriteAsync(Page(trouble, stored), context.RequestAborted);
        }
    }

    private static string Page(StorageError trouble, string stored) =>
        $"""
        <!DOCTYPE html>
        <html lang="{ReaderLanguage.Tag}">
        <head>
          <meta charset="utf-8">
          <meta name="viewport" content="width=device-width, initial-scale=1">
          <title>{Html(T["NotStored"])} · CutShop</title>
          <link rel="icon" href="{Assets.Address("mark.svg")}" type="image/svg+xml">
          <link rel="stylesheet" href="{Assets.Address("site.css")}">
        </head>
        <body>
          <header class="top"><a class="name" href="/">CutShop</a></header>
          <main id="content">
            <h1>{Html(T["NotStored"])}</h1>
            <p>{Html(T[trouble.Said])}</p>
            <p>{Html(T[stored])}</p>
          </main>
        </body>
        </html>
        """;

    private static string Html(string words) => WebUtility.HtmlEncode(words);

    [LoggerMessage(Level = LogLevel.Error, Message = "{Trouble}")]
    private static partial void LogTrouble(ILogger logger, string trouble, Exception exception);
}
