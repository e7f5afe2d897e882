using System.Net;
using CutShop.Testing.Trust;
using Microsoft.AspNetCore.Builder;

namespace CutShop.Benchmarks.Desk;

/// <summary>A shop of many jobs on a free port, with a bare endpoint beside its own pages and a client signed in at the order desk.</summary>
internal sealed class DeskSite : IDisposable
{
    /// <summary>Answers two letters and does nothing else.</summary>
    public const string Bare = "/bare";

    private const string Name = "Jory";

    private readonly WebApplication _site;
    private readonly HttpClient _client;

    /// <summary>Fills the shop and starts it.</summary>
    public DeskSite(string folder, int jobs)
    {
        Database = ShopDatabase.Open(Path.Combine(folder, $"{jobs}", "cutshop.db"), TimeProvider.System);
        StoredJobs.Fill(Database, jobs);
        _site = ShopSite.Build(new(Database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example")), "http://127.0.0.1:0");
        _site.MapGet(Bare, () => "ok").AllowAnonymous();
        _site.StartAsync().GetAwaiter().GetResult();
        _client = new(new HttpClientHandler { CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(_site.Urls.First()) };
        SignIn();
    }

    /// <summary>The shop's database.</summary>
    public ShopDatabase Database { get; }

    /// <summary>Gets a page whole.</summary>
    public void Get(string address)
    {
        using var answer = _client.GetAsync(new Uri(address, UriKind.Relative)).GetAwaiter().GetResult();
        answer.EnsureSuccessStatusCode();
    }

    /// <summary>Sends a form and gets the answer whole.</summary>
    public void Post(string address, HttpContent form)
    {
        using var answer = _client.PostAsync(new Uri(address, UriKind.Relative), form).GetAwaiter().GetResult();
        answer.EnsureSuccessStatusCode();
    }

    /// <summary>The token that the forms of a page carry.</summary>
    public string TokenOf(string address) =>
        PageText.TokenIn(_client.GetStringAsync(new Uri(address, UriKind.Relative)).GetAwaiter().GetResult());

    /// <inheritdoc/>
    public void Dispose()
    {
        _client.Dispose();
        _site.DisposeAsync().AsTask().GetAwaiter().GetResult();
        Database.Dispose();
    }

    private void SignIn()
    {
        var password = PeopleShelf.DrawPassword();
        new PeopleShelf(Database).AddAsync(Name, Role.Desk, password, "benchmark").GetAwaiter().GetResult();
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["name"] = Name,
            ["password"] = password,
            [PageText.TokenField] = TokenOf("/sign-in"),
        });
        Post("/sign-in", form);
    }
}
