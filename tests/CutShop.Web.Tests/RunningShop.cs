using System.Net;
using CutShop.Testing.Stores;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace CutShop.Web.Tests;

/// <summary>A whole shop on a free port with a database of its own, gone when disposed.</summary>
public sealed class RunningShop : IAsyncDisposable
{
    /// <summary>One password a role for all shops: a password is hashed slowly.</summary>
    private static readonly Dictionary<Role, (string Password, string Hash)> Passwords = Enum.GetValues<Role>().ToDictionary(role => role, _ => Hashed(PeopleShelf.DrawPassword()));

    private readonly TestStore _store;
    private readonly Dictionary<Role, string> _passwords = [];
    private readonly List<HttpClient> _clients = [];
    private readonly List<Func<Task>> _closeFirst = [];
    private WebApplication _site;

    private RunningShop(TestStore store, ShopDatabase database, WebApplication site)
    {
        (_store, Database, _site) = (store, database, site);
        Address = new Uri(site.Urls.First());
        Stranger = NewClient(new CookieContainer(), follow: false);
        Client = NewClient(OwnersCookies, follow: true);
    }

    public Uri Address { get; }

    /// <summary>Signed in as the owner; follows redirects.</summary>
    public HttpClient Client { get; }

    /// <summary>Not signed in; follows no redirect.</summary>
    public HttpClient Stranger { get; }

    public ShopDatabase Database { get; }

    /// <summary>Every job that is stored, up to a page of them.</summary>
    public IReadOnlyList<JobFound> AllJobs() => new JobSearch(Database).Find(new(JobsShown.All)).Jobs;

    public JobShelf Jobs => new(Database);

    public PeopleShelf People => new(Database);

    /// <summary>The cookies of <see cref="Client"/>.</summary>
    public CookieContainer OwnersCookies { get; } = new();

    /// <summary>What the site is made of.</summary>
    public IServiceProvider Services => _site.Services;

    /// <summary>Every route that the site answers.</summary>
    public IEnumerable<RouteEndpoint> Routes => _site.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    /// <summary>Starts a shop where the owner is signed in on <see cref="Client"/>.</summary>
    /// <param name="time">Its clock.</param>
    /// <param name="store">Where its database is; a place of the kind that the test run asks for unless it is given.</param>
    public static async Task<RunningShop> StartAsync(TimeProvider? time = null, TestStore? store = null)
    {
        var shop = await StartEmptyAsync(time, store);
        await shop.SignInAsync(Role.Owner, shop.OwnersCookies);
        return shop;
    }

    /// <summary>Starts a shop that has nobody yet.</summary>
    public static async Task<RunningShop> StartEmptyAsync(TimeProvider? time = null, TestStore? store = null)
    {
        store ??= new TestStore();
        var database = store.Open(time);
        return new RunningShop(store, database, await RunAsync(database, "http://127.0.0.1:0"));
    }

    /// <summary>The name of the person of a role.</summary>
    public static string NameOf(Role role) => $"Test {RoleNames.NameOf(role)}";

    /// <summary>The password of the person of a role, who is added where there is none.</summary>
    public async Task<string> PasswordOfAsync(Role role)
    {
        if (_passwords.TryGetValue(role, out var known))
            return known;
        var (password, hash) = Passwords[role];
        var answer = await Database.WriteAsync(session => PeopleShelf.Add(session, NameOf(role), role, hash, "test"), TestContext.Current.CancellationToken);
        Assert.True(answer.IsDone);
        return _passwords[role] = password;
    }

    /// <summary>A client that is signed in as the person of a role, as with a password.</summary>
    public async Task<HttpClient> SignInAsync(Role role, bool follow = true)
    {
        var cookies = new CookieContainer();
        await SignInAsync(role, cookies);
        return NewClient(cookies, follow);
    }

    /// <summary>The cookies of someone signed in as the person of a role.</summary>
    public async Task<CookieContainer> CookiesOfAsync(Role role)
    {
        if (role == Role.Owner)
            return OwnersCookies;
        var cookies = new CookieContainer();
        await SignInAsync(role, cookies);
        return cookies;
    }

    /// <summary>A client with cookies of its own and nobody signed in.</summary>
    public HttpClient NewClient(CookieContainer? cookies = null, bool follow = false)
    {
        var client = new HttpClient(new HttpClientHandler { CookieContainer = cookies ?? new CookieContainer(), AllowAutoRedirect = follow }) { BaseAddress = Address };
        _clients.Add(client);
        return client;
    }

    /// <summary>A client for a program with a new key.</summary>
    public async Task<HttpClient> WithKeyAsync(KeyScope scope)
    {
        var (answer, key) = await new ApiKeyShelf(Database).MakeAsync($"{ApiKeyShelf.NameOf(scope)} program", scope, "test", TestContext.Current.CancellationToken);
        Assert.True(answer.IsDone);
        var client = NewClient();
        client.DefaultRequestHeaders.Authorization = new("Bearer", key);
        return client;
    }

    /// <summary>Opens its database once more, as another program does.</summary>
    public ShopDatabase OpenAgain() => _store.Open();

    /// <summary>Stops the site and starts it again at the same address, on the same database.</summary>
    public async Task RestartAsync()
    {
        await _site.DisposeAsync();
        _site = await RunAsync(Database, Address.ToString());
    }

    /// <summary>Takes in one of the demo's jobs.</summary>
    public async Task<StoredJob> TakeInDemoAsync(string file)
    {
        var job = JobFileReader.Read(await DemoFileAsync(file)).Job!;
        await new JobIntake(Database, ShopTables.Standard).TakeInAsync(job, "test", cancel: TestContext.Current.CancellationToken);
        return Jobs.Find(job.Number)!;
    }

    /// <summary>The bytes of one of the demo's job files.</summary>
    public static Task<byte[]> DemoFileAsync(string file) =>
        File.ReadAllBytesAsync(Path.Combine(AppContext.BaseDirectory, "demo", file), TestContext.Current.CancellationToken);

    /// <summary>What ends before the shop does, such as a browser that would ask a site that is gone for news, again and again.</summary>
    public void CloseFirst(Func<Task> close) => _closeFirst.Add(close);

    public async ValueTask DisposeAsync()
    {
        foreach (var close in _closeFirst)
            await close();
        foreach (var client in _clients)
            client.Dispose();
        await _site.DisposeAsync();
        Database.Dispose();
        _store.Dispose();
    }

    /// <summary>Signs the person of a role in without the form, which hashes the password slowly; the form has tests of its own.</summary>
    private async Task SignInAsync(Role role, CookieContainer cookies)
    {
        await PasswordOfAsync(role);
        await using var scope = Services.CreateAsyncScope();
        var context = new DefaultHttpContext { RequestServices = scope.ServiceProvider };
        (context.Request.Scheme, context.Request.Host) = (Address.Scheme, new(Address.Authority));
        await SignedIn.InAsync(context, People.Find(NameOf(role))!, SignedIn.ByPassword);
        foreach (var cookie in context.Response.Headers.SetCookie)
            cookies.SetCookies(Address, cookie!);
    }

    private static (string Password, string Hash) Hashed(string password) => (password, Secrets.Hash(password));

    private static async Task<WebApplication> RunAsync(ShopDatabase database, string address)
    {
        var settings = new ShopSiteSettings(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example"));
        var site = ShopSite.Build(settings, address);
        await site.StartAsync(TestContext.Current.CancellationToken);
        return site;
    }
}
