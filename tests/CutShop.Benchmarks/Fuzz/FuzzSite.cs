using System.Net;
using CutShop.Testing.Fuzz;
using CutShop.Testing.Jobs;
using Microsoft.AspNetCore.Builder;

namespace CutShop.Benchmarks.Fuzz;

/// <summary>A shop with something on every page, on a free port, with its owner signed in and a program that has a key.</summary>
internal sealed class FuzzSite : IAsyncDisposable
{
    private const string Name = "Ada";

    private readonly string _folder;
    private readonly ShopDatabase _database;
    private readonly WebApplication _site;

    private FuzzSite(string folder, ShopDatabase database, WebApplication site)
    {
        (_folder, _database, _site) = (folder, database, site);
        Owner = new(new HttpClientHandler { CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(site.Urls.First()) };
        Program = new() { BaseAddress = Owner.BaseAddress };
    }

    /// <summary>The demo's job files.</summary>
    public static IEnumerable<string> DemoFiles => Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "demo")).Order(StringComparer.Ordinal);

    /// <summary>The owner's browser.</summary>
    public HttpClient Owner { get; }

    /// <summary>A program that may take jobs in.</summary>
    public HttpClient Program { get; }

    /// <summary>The codes of all pieces.</summary>
    public IReadOnlyList<string> Codes => _database.Read(session => session.All<string>("SELECT code FROM pieces ORDER BY id"));

    /// <summary>Starts it.</summary>
    /// <param name="connection">A database on a server, or null for a file.</param>
    public static async Task<FuzzSite> StartAsync(string? connection)
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-fuzz-").FullName;
        var database = new ShopPlace(folder, connection).Open(TimeProvider.System);
        await FillAsync(database);
        var app = ShopSite.Build(new(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example")), "http://127.0.0.1:0");
        await app.StartAsync();
        var site = new FuzzSite(folder, database, app);
        await site.SignInAsync();
        return site;
    }

    public async ValueTask DisposeAsync()
    {
        Owner.Dispose();
        Program.Dispose();
        await _site.DisposeAsync();
        _database.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static async Task FillAsync(ShopDatabase database)
    {
        foreach (var file in DemoFiles)
            await new JobIntake(database, ShopTables.Standard).TakeInAsync(JobFileReader.Read(await File.ReadAllBytesAsync(file)).Job!, "fuzz");
        var rope = new RopeKind(RopeMaterial.Polypropylene, Length.Inch + Length.FromSixtyFourths(32), RopeKind.ThreeStrand);
        await new CoilShelf(database).ReceiveAsync(new(rope, "P-1", Length.Foot * 600, "rack"), "fuzz", "coil");
        var desk = new CutPlanDesk(database);
        var plan = await desk.DraftAsync(rope, dueBy: null, new PlanBudget(TimeSpan.FromSeconds(2), UseSolver: false), "fuzz");
        await desk.AcceptAsync(plan.PlanId, "fuzz");
        await new CutBench(database).NextAsync(Name, "next");
        await new DraftShelf(database).StartAsync(SmallJobs.Posts(4, "LQ-5001", customer: ""), "fuzz", "draft");
    }

    private async Task SignInAsync()
    {
        var password = PeopleShelf.DrawPassword();
        await new PeopleShelf(_database).AddAsync(Name, Role.Owner, password, "fuzz");
        var form = PageForm.On("/sign-in", await Owner.GetStringAsync(new Uri("/sign-in", UriKind.Relative))).First();
        using var content = new FormUrlEncodedContent([.. form.Fields.Where(field => field.Key == "__RequestVerificationToken"), new("name", Name), new("password", password)]);
        using var answer = await Owner.PostAsync(new Uri("/sign-in", UriKind.Relative), content);
        answer.EnsureSuccessStatusCode();
        Program.DefaultRequestHeaders.Authorization = new("Bearer", (await new ApiKeyShelf(_database).MakeAsync("fuzz", KeyScope.TakeIn, "fuzz")).Key);
    }
}
