using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CutShop.Web.Tests.Museum;

/// <summary>A shop of the museum with its site running, asked as people, programs and phones ask it.</summary>
internal sealed partial class MuseumSite : IAsyncDisposable
{
    /// <summary>The owner in each shop of the museum.</summary>
    public const string Owner = "Ada";

    /// <summary>The password of everybody in a shop of the museum.</summary>
    public const string Password = "rope and timber 42";

    private readonly ShopDatabase _database;
    private readonly WebApplication _site;
    private readonly Dictionary<string, HttpClient> _people = [];
    private HttpClient? _program;
    private int _asked;

    private MuseumSite(ShopDatabase database, WebApplication site)
    {
        (_database, _site) = (database, site);
        Phone = NewClient();
    }

    public ShopDatabase Database => _database;

    /// <summary>Not signed in.</summary>
    public HttpClient Phone { get; }

    /// <summary>Every route that the site answers.</summary>
    public IEnumerable<RouteEndpoint> Routes => _site.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    /// <summary>Opens a shop, which brings its tables up to date, and runs its site.</summary>
    public static async Task<MuseumSite> StartAsync(ShopPlace place, TimeProvider clock)
    {
        var database = place.Open(clock);
        var site = ShopSite.Build(new(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example")), "http://127.0.0.1:0");
        await site.StartAsync();
        return new(database, site);
    }

    /// <summary>Asks as a person who is signed in.</summary>
    public async Task<HttpResponseMessage> AskAsync(string address, string who = Owner) => await (await PersonAsync(who)).SendAsync(Get(address));

    /// <summary>Asks as a program with a key that reads.</summary>
    public async Task<HttpResponseMessage> AskAsProgramAsync(string address)
    {
        if (_program is null)
        {
            _program = NewClient();
            var (_, key) = await new ApiKeyShelf(_database).MakeAsync("who looks at the museum", KeyScope.Read, Owner);
            _program.DefaultRequestHeaders.Authorization = new("Bearer", key);
        }
        return await _program.SendAsync(Get(address));
    }

    /// <summary>A page's text, which must be there.</summary>
    public static async Task<string> TextAsync(HttpResponseMessage answer)
    {
        using (answer)
        {
            return answer.StatusCode == HttpStatusCode.OK
                ? await answer.Content.ReadAsStringAsync()
                : throw new InvalidOperationException($"{answer.RequestMessage!.RequestUri!.PathAndQuery} answers {(int)answer.StatusCode}.");
        }
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var client in _people.Values)
            client.Dispose();
        _program?.Dispose();
        Phone.Dispose();
        await _site.DisposeAsync();
        _database.Dispose();
    }

    private HttpClient NewClient() => new(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = new(_site.Urls.First()) };

    /// <summary>Each request comes from another address, as a proxy says it, because one address may ask for few codes a minute.</summary>
    private HttpRequestMessage Get(string address)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, new Uri(address, UriKind.Relative));
        var number = Interlocked.Increment(ref _asked);
        request.Headers.Add("X-Forwarded-For", FormattableString.Invariant($"10.{(number >> 16) & 255}.{(number >> 8) & 255}.{number & 255}"));
        return request;
    }

    /// <summary>Cookies are carried by hand: the shop's clock is not this machine's, so that a cookie jar would take them for old.</summary>
    private async Task<HttpClient> PersonAsync(string who)
    {
        if (_people.TryGetValue(who, out var known))
            return known;
        var client = NewClient();
        var cookies = new Dictionary<string, string>();
        string token;
        using (var page = await client.SendAsync(Get("/sign-in")))
        {
            Take(page, cookies);
            token = Token().Match(await page.Content.ReadAsStringAsync()).Groups["value"].Value;
        }
        using var form = new FormUrlEncodedContent([new("name", who), new("password", Password), new("__RequestVerificationToken", token)]);
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/sign-in", UriKind.Relative)) { Content = form };
        request.Headers.Add("Cookie", Joined(cookies));
        using var answer = await client.SendAsync(request);
        Take(answer, cookies);
        if (answer.StatusCode != HttpStatusCode.Redirect)
            throw new InvalidOperationException($"{who} cannot sign in: {(int)answer.StatusCode}.");
        client.DefaultRequestHeaders.Add("Cookie", Joined(cookies));
        return _people[who] = client;
    }

    private static void Take(HttpResponseMessage answer, Dictionary<string, string> cookies)
    {
        if (!answer.Headers.TryGetValues("Set-Cookie", out var set))
            return;
        foreach (var cookie in set.Select(line => line.Split(';')[0].Split('=', 2)))
            cookies[cookie[0]] = cookie[1];
    }

    private static string Joined(Dictionary<string, string> cookies) => string.Join("; ", cookies.Select(pair => $"{pair.Key}={pair.Value}"));

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Token();
}
