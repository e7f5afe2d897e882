using System.Net.Http.Headers;
using CutShop.Takeoff.Intake;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Api;

/// <summary>Reads the body of a request that brings a file.</summary>
internal static class RequestBody
{
    /// <summary>The body, or the problem: another content type, or more bytes than are taken.</summary>
    public static async Task<(byte[] Bytes, ProblemHttpResult? Problem)> ReadAsync(HttpRequest request, string contentType)
    {
        if (!MediaTypeHeaderValue.TryParse(request.ContentType, out var sent) || !contentType.Equals(sent.MediaType, StringComparison.OrdinalIgnoreCase))
            return ([], ApiProblem.Of(StatusCodes.Status415UnsupportedMediaType, HostWords.Say("ApiSendAs", contentType), new ProblemPlace("Content-Type", request.ContentType ?? "", HostWords.Say("ApiAcceptedType", contentType))));
        if (request.Headers.ContentEncoding is { Count: > 0 } encoding && !encoding.ToString().Equals("identity", StringComparison.OrdinalIgnoreCase))
            return ([], ApiProblem.Of(StatusCodes.Status415UnsupportedMediaType, HostWords.Say("ApiUncompressed"), new ProblemPlace("Content-Encoding", encoding.ToString(), HostWords.Say("ApiIdentity"))));
        try
        {
            using var bytes = new MemoryStream();
            await request.Body.CopyToAsync(bytes, request.HttpContext.RequestAborted);
            return (bytes.ToArray(), null);
        }
        catch (BadHttpRequestException e) when (e.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return ([], ApiProblem.Of(e.StatusCode, HostWords.Say("ApiTooLarge", JobFileReader.LargestFile / (1024 * 1024))));
        }
    }
}
