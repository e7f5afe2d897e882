using System.Net;

namespace CutShop.Web.Tests.Host;

/// <summary>What every answer carries, whoever makes it: pages, files, programs' answers, redirects, refusals, crashes.</summary>
public sealed class HeadersTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_kind_of_answer_carries_the_headers_that_keep_a_browser_safe()
    {
        await using var shop = await RunningShop.StartAsync();
        var job = await shop.TakeInDemoAsync("lq-1043-beach-ramp.json");
        var cutter = await shop.SignInAsync(Role.Cutter, follow: false);
        using var program = await shop.WithKeyAsync(KeyScope.TakeIn);
        var asset = (await shop.Client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel)).Split("href=\"").First(part => part.StartsWith("/assets/", StringComparison.Ordinal)).Split('"')[0];

        await SafeAsync(HttpStatusCode.OK, shop.Client, "/");
        await SafeAsync(HttpStatusCode.OK, shop.Client, "/cut");
        await SafeAsync(HttpStatusCode.OK, shop.Client, asset);
        await SafeAsync(HttpStatusCode.OK, shop.Client, $"/jobs/{job.Number}/labels.pdf");
        await SafeAsync(HttpStatusCode.OK, shop.Client, "/board.csv");
        await SafeAsync(HttpStatusCode.OK, shop.Client, "/board/news");
        await SafeAsync(HttpStatusCode.OK, shop.Stranger, $"/p/{job.Codes[0].Plain}");
        await SafeAsync(HttpStatusCode.OK, shop.Stranger, "/health/live");
        await SafeAsync(HttpStatusCode.Redirect, shop.Stranger, "/stock");
        await SafeAsync(HttpStatusCode.NotFound, shop.Client, "/jobs/none");
        await SafeAsync(HttpStatusCode.Forbidden, cutter, "/people");
        await SafeAsync(HttpStatusCode.BadRequest, shop.Client, "/people", HttpMethod.Post);
        await SafeAsync(HttpStatusCode.OK, program, "/api/jobs");
        await SafeAsync(HttpStatusCode.NotFound, program, "/api/jobs/none");
        await SafeAsync(HttpStatusCode.UnsupportedMediaType, program, "/api/jobs", HttpMethod.Post);
        await SafeAsync(HttpStatusCode.Unauthorized, shop.Stranger, "/api/jobs");

        // Whatever broke: a table is not there.
        await shop.Database.WriteAsync(session => session.Execute("ALTER TABLE coils RENAME TO gone"), Cancel);
        await SafeAsync(HttpStatusCode.InternalServerError, shop.Client, "/stock");
        await shop.Database.WriteAsync(session => session.Execute("ALTER TABLE jobs RENAME TO gone_too"), Cancel);
        await SafeAsync(HttpStatusCode.InternalServerError, program, "/api/jobs");
    }

    [Theory]
    [InlineData("https", true)]
    [InlineData("http", false)]
    public async Task Over_https_a_browser_is_told_to_stay_with_it(string scheme, bool isTold)
    {
        await using var shop = await RunningShop.StartAsync();
        shop.Stranger.DefaultRequestHeaders.Add("X-Forwarded-Proto", scheme);
        using var answer = await shop.Stranger.AskAsync("/sign-in");
        Assert.Equal(isTold, answer.Headers.Contains("Strict-Transport-Security"));
    }

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/language/es")]
    public async Task Every_cookie_is_hidden_from_scripts_kept_from_other_sites_and_over_https_sent_over_https_alone(string address)
    {
        await using var shop = await RunningShop.StartAsync();
        shop.Client.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        shop.Stranger.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(address, UriKind.Relative));
        using var answer = await (address == "/sign-in" ? shop.Stranger : await shop.SignInAsync(Role.Desk, follow: false)).SendAsync(Forwarded(request), Cancel);
        var cookies = answer.Headers.GetValues("Set-Cookie").ToList();
        Assert.NotEmpty(cookies);
        Assert.All(cookies, cookie =>
        {
            Assert.Contains("; httponly", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("; samesite=", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("samesite=none", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("; secure", cookie, StringComparison.OrdinalIgnoreCase);
        });
    }

    private static HttpRequestMessage Forwarded(HttpRequestMessage request)
    {
        request.Headers.Remove("X-Forwarded-Proto");
        request.Headers.Add("X-Forwarded-Proto", "https");
        return request;
    }

    private static async Task SafeAsync(HttpStatusCode status, HttpClient client, string address, HttpMethod? method = null)
    {
        using var request = new HttpRequestMessage(method ?? HttpMethod.Get, new Uri(address, UriKind.Relative));
        using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Cancel);
        Assert.Equal((address, status), (address, answer.StatusCode));
        string Header(string name) => answer.Headers.TryGetValues(name, out var values) ? string.Join(", ", values) : $"{address} has no {name}";
        var policy = Header("Content-Security-Policy").Split(';', StringSplitOptions.TrimEntries);
        Assert.Contains("default-src 'none'", policy);
        Assert.Contains("script-src 'self'", policy);
        Assert.Contains("style-src 'self'", policy);
        Assert.Contains("frame-ancestors 'none'", policy);
        Assert.Contains("base-uri 'none'", policy);
        Assert.DoesNotContain(policy, directive => directive.Contains("unsafe", StringComparison.Ordinal));
        Assert.Equal("nosniff", Header("X-Content-Type-Options"));
        Assert.Equal("no-referrer", Header("Referrer-Policy"));
        Assert.Contains("camera=()", Header("Permissions-Policy"), StringComparison.Ordinal);
        Assert.Equal("same-origin", Header("Cross-Origin-Opener-Policy"));
        Assert.Equal("same-origin", Header("Cross-Origin-Resource-Policy"));
        Assert.True(answer.Headers.CacheControl!.NoStore || address.StartsWith("/assets/", StringComparison.Ordinal), $"{address} may be kept");
        Assert.False(answer.Headers.Contains("Server"));
    }
}
