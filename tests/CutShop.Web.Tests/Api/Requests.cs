using System.Net.Http.Headers;
using System.Text.Json;

namespace CutShop.Web.Tests.Api;

/// <summary>What a program sends and reads.</summary>
public static class Requests
{
    /// <summary>Sends a job file.</summary>
    public static async Task<HttpResponseMessage> SendJobAsync(
        this HttpClient program, byte[] body, string? key = null, string contentType = "application/json", string address = "/api/jobs")
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(address, UriKind.Relative)) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse(contentType);
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);
        return await program.SendAsync(request, TestContext.Current.CancellationToken);
    }

    /// <summary>The answer's JSON.</summary>
    public static async Task<JsonElement> JsonAsync(this HttpResponseMessage answer)
    {
        using var document = JsonDocument.Parse(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        return document.RootElement.Clone();
    }

    /// <summary>The JSON at an address.</summary>
    public static async Task<JsonElement> JsonAtAsync(this HttpClient program, string address)
    {
        using var answer = await program.AskAsync(address);
        Assert.True(answer.IsSuccessStatusCode, $"{address}: {answer.StatusCode}");
        return await answer.JsonAsync();
    }

    /// <summary>A text at a JSON path of names.</summary>
    public static string? TextAt(this JsonElement element, string name) => element.GetProperty(name).GetString();
}
