using System.Net.Http.Headers;
using CutShop.Web.Api;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CutShop.Web.Host;

/// <summary>
/// Refuses a NUL character in what is typed into a form or asked for in an address: nobody types one, and a database on a server
/// stores none. Job files and sheets refuse it where they are read. Half a surrogate pair cannot come in either way: both are UTF-8.
/// </summary>
internal sealed class NulCharacters : IAsyncAuthorizationFilter
{
    /// <summary>Its place among filters: after the limits that a page sets to its form (900), before the form's token is read (1000).</summary>
    public const int Order = 950;

    private const string UrlEncoded = "application/x-www-form-urlencoded";

    private static readonly object FieldKey = new();

    /// <summary>The field for which a request was refused, or null.</summary>
    public static string? FieldOf(HttpContext context) => context.Items[FieldKey] as string;

    /// <summary>Looks at the query of every request: 400, and the page or the problem details name the value.</summary>
    public static Task InQueryAsync(HttpContext context, RequestDelegate next)
    {
        if (Find(context.Request.Query) is not { } field)
            return next(context);
        if (ApiRoutes.Serves(context.Request.Path))
            return ApiProblem.Of(StatusCodes.Status400BadRequest, HostWords.Say("ApiUnreadableValue"), new ProblemPlace(field, "", HostWords.Say("ApiNul"))).ExecuteAsync(context);
        context.Items[FieldKey] = field;
        context.Response.StatusCode = StatusCodes.Status400BadRequest;
        return Task.CompletedTask;
    }

    /// <summary>Looks at the form of a page before its token is looked for in it.</summary>
    public async Task OnAuthorizationAsync(AuthorizationFilterContext context)
    {
        var request = context.HttpContext.Request;
        // The page that tells of it is asked with the same form.
        if (!request.HasFormContentType || FieldOf(context.HttpContext) is not null || await InFormAsync(request) is not { } field)
            return;
        context.HttpContext.Items[FieldKey] = field;
        context.Result = new StatusCodeResult(StatusCodes.Status400BadRequest);
    }

    private static async Task<string?> InFormAsync(HttpRequest request)
    {
        var isUrlEncoded = MediaTypeHeaderValue.TryParse(request.ContentType, out var type) && type.MediaType == UrlEncoded;
        if (isUrlEncoded)
            request.EnableBuffering();
        try
        {
            return Find(await request.ReadFormAsync(request.HttpContext.RequestAborted));
        }
        catch (InvalidDataException) when (isUrlEncoded)
        {
            // The framework reads no NUL that is written as %00, and does not say in which field.
            request.Body.Position = 0;
            using var body = new StreamReader(request.Body, leaveOpen: true);
            return FindEncoded(await body.ReadToEndAsync(request.HttpContext.RequestAborted));
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException)
        {
            // The page that takes the form says so.
            return null;
        }
    }

    private static string? FindEncoded(string body) => body.Split('&')
        .Where(field => field.Contains("%00", StringComparison.Ordinal))
        .Select(field => Uri.UnescapeDataString(field.Split('=')[0]).Replace('\0', '\uFFFD'))
        .FirstOrDefault();

    /// <summary>The first field with one in its name or a value, as it can be shown.</summary>
    private static string? Find(IEnumerable<KeyValuePair<string, Microsoft.Extensions.Primitives.StringValues>> fields) => fields
        .Where(field => field.Value.Append(field.Key).Any(text => text?.Contains('\0', StringComparison.Ordinal) == true))
        .Select(field => field.Key.Replace('\0', '\uFFFD'))
        .FirstOrDefault();
}
