using System.Globalization;
using System.Net;
using System.Text.Json;
using CutShop.Testing.Trust;

namespace CutShop.Benchmarks.Against;

/// <summary>
/// A shop that one version of the program made and serves, used only by what every version has: commands, pages, and the API. Its
/// owner is signed in, and asks one thing at a time.
/// </summary>
internal sealed class ProgramShop : IDisposable
{
    private const string Owner = "Ada";

    /// <summary>Fewer than an address may ask for in a minute: then the owner goes by another.</summary>
    private const int AsksOfAnAddress = 200;

    private readonly ShopProgram _program;
    private readonly string _password;
    private readonly CookieContainer _cookies = new();
    private ServerProcess? _server;
    private HttpClient? _client;
    private string? _apiKey;
    private string _token = "";
    private int _asks;

    public ProgramShop(ShopProgram program)
    {
        _program = program;
        _password = program.Run("person", "add", Owner, "--role", "owner", "--shop", Folder).Split(':')[^1].Trim();
    }

    /// <summary>The shop's folder.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("cutshop-against-shop-").FullName;

    private HttpClient Client => _client ?? throw new InvalidOperationException("Nobody serves the shop.");

    /// <summary>Takes jobs in by the command, with all their paper.</summary>
    public void TakeIn(IEnumerable<string> files) => _program.Run(["take-in", .. files, "--shop", Folder]);

    /// <summary>Serves the shop. The first time the owner signs in; after that nothing has been asked for when it returns.</summary>
    public void Start()
    {
        if (_server is not null)
            throw new InvalidOperationException("The shop is served already.");
        _server = ServerProcess.StartAsync(_program.Command("serve", "--shop", Folder, "--listen", "http://127.0.0.1:0", "--backup-at", "never")).GetAwaiter().GetResult();
        _client = new(new SocketsHttpHandler { CookieContainer = _cookies, AllowAutoRedirect = false, UseProxy = false }) { BaseAddress = _server.Address };
        if (_cookies.Count > 0)
            return;
        UseFormsOf("/sign-in");
        Post("/sign-in", ("name", Owner), ("password", _password));
    }

    /// <summary>Stops serving it.</summary>
    public void Stop()
    {
        _client?.Dispose();
        _server?.StopAsync().GetAwaiter().GetResult();
        _server?.Dispose();
        (_client, _server) = (null, null);
    }

    /// <summary>A page, whole. It must be this page, and not lead to another.</summary>
    public string Get(string address) => Stayed(address, Send(new(HttpMethod.Get, address)));

    /// <summary>What a form answers in place, without a page of its own.</summary>
    public string Ask(string address, params (string Name, string Value)[] fields) => Stayed(address, Post(address, fields));

    /// <summary>Where a page goes on to by itself, or null where it stays.</summary>
    public string? Follow(string address) => Send(new(HttpMethod.Get, address)).To;

    /// <summary>Reads a page for the token that its forms send.</summary>
    public void UseFormsOf(string address) => _token = PageText.TokenIn(Get(address));

    /// <summary>Sends a form as a browser does.</summary>
    /// <returns>Where it goes on to, or else the page that came.</returns>
    public (string? To, string Text) Post(string address, params (string Name, string Value)[] fields) => Send(Form(address, fields));

    /// <summary>A tap at a bench, which must be taken.</summary>
    /// <returns>Where it goes on to.</returns>
    public string Tap(string address)
    {
        var tap = Form(address, [("key", Guid.NewGuid().ToString("N"))]);
        tap.Headers.Add("X-Tap", "1");
        using var json = JsonDocument.Parse(Send(tap).Text);
        return json.RootElement.GetProperty("problem").GetString() is { } problem
            ? throw new InvalidOperationException($"{_program.Name}: {address}: {problem}")
            : json.RootElement.GetProperty("to").GetString()!;
    }

    /// <summary>Takes a job in by the API, which makes no paper.</summary>
    public void TakeInByApi(byte[] jobFile)
    {
        var content = new ByteArrayContent(jobFile);
        content.Headers.ContentType = new("application/json");
        Send(ByKey(new(HttpMethod.Post, "/api/jobs") { Content = content }));
    }

    /// <summary>The addresses of a job's pages at the benches and for installers, in the order of its pieces and posts.</summary>
    public JobPages PagesOf(string number)
    {
        using var tickets = JsonDocument.Parse(Send(ByKey(new(HttpMethod.Get, $"/api/jobs/{number}/tickets"))).Text);
        var codes = tickets.RootElement.GetProperty("cut").EnumerateArray().Select(ticket => ticket.GetProperty("code").GetString()!.Replace("-", "", StringComparison.Ordinal)).ToList();
        var posts = tickets.RootElement.GetProperty("drill").EnumerateArray().Select(ticket => ticket.GetProperty("post").GetString()!);
        return new([.. codes.Select(code => $"/p/{code}")], [.. codes.Select(code => $"/cut/{code}")], [.. posts.Select(post => $"/drill/{number}/{Uri.EscapeDataString(post)}")]);
    }

    public void Dispose()
    {
        Stop();
        Directory.Delete(Folder, recursive: true);
    }

    private HttpRequestMessage ByKey(HttpRequestMessage request)
    {
        request.Headers.Authorization = new("Bearer", _apiKey ??= MakeKey());
        return request;
    }

    private string MakeKey()
    {
        UseFormsOf("/keys");
        return PageText.SecretIn(Ask("/keys?handler=Make", ("name", "benchmark"), ("scope", "take-in")));
    }

    private HttpRequestMessage Form(string address, (string Name, string Value)[] fields) => new(HttpMethod.Post, address)
    {
        Content = new FormUrlEncodedContent([new(PageText.TokenField, _token), .. fields.Select(field => KeyValuePair.Create(field.Name, field.Value))]),
    };

    private string Stayed(string address, (string? To, string Text) answer) =>
        answer.To is null ? answer.Text : throw new InvalidOperationException($"{_program.Name}: {address} leads to {answer.To}");

    private (string? To, string Text) Send(HttpRequestMessage request)
    {
        using (request)
        {
            var address = _asks++ / AsksOfAnAddress;
            request.Headers.Add("X-Forwarded-For", string.Create(CultureInfo.InvariantCulture, $"10.{address / 65536 % 256}.{address / 256 % 256}.{address % 256}"));
            using var answer = Client.Send(request);
            using var body = new StreamReader(answer.Content.ReadAsStream());
            var text = body.ReadToEnd();
            return (int)answer.StatusCode < 400
                ? (answer.Headers.Location?.OriginalString, text)
                : throw new InvalidOperationException($"{_program.Name}: {request.Method} {request.RequestUri}: {(int)answer.StatusCode}: {text[..Math.Min(text.Length, 500)]}");
        }
    }
}

/// <summary>The addresses of a job's pages.</summary>
/// <param name="OnSite">What the label of each piece leads to.</param>
/// <param name="Cut">The cut ticket of each piece.</param>
/// <param name="Drill">The drill ticket of each post.</param>
internal sealed record JobPages(IReadOnlyList<string> OnSite, IReadOnlyList<string> Cut, IReadOnlyList<string> Drill);
