using CutShop.Paper;
using CutShop.Shop;
using CutShop.Takeoff;
using Microsoft.AspNetCore.Builder;

namespace CutShop.Web.Tests;

/// <summary>A whole shop on a free port with a database of its own, gone when disposed.</summary>
public sealed class RunningShop : IAsyncDisposable
{
    private readonly string _folder;
    private readonly WebApplication _site;

    private RunningShop(string folder, ShopDatabase database, WebApplication site)
    {
        (_folder, Database, _site) = (folder, database, site);
        Address = new Uri(site.Urls.First());
        Client = new HttpClient { BaseAddress = Address };
    }

    public Uri Address { get; }

    public HttpClient Client { get; }

    public ShopDatabase Database { get; }

    public JobShelf Jobs => new(Database, ShopTables.Standard);

    public static async Task<RunningShop> StartAsync(TimeProvider? time = null)
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-").FullName;
        var database = ShopDatabase.Open(Path.Combine(folder, "cutshop.db"), time ?? TimeProvider.System);
        var settings = new ShopSiteSettings(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example"));
        var site = ShopSite.Build(settings, "http://127.0.0.1:0");
        await site.StartAsync(TestContext.Current.CancellationToken);
        return new RunningShop(folder, database, site);
    }

    /// <summary>Takes in one of the demo's jobs.</summary>
    public async Task<StoredJob> TakeInDemoAsync(string file)
    {
        var bytes = await File.ReadAllBytesAsync(Path.Combine(AppContext.BaseDirectory, "demo", file), TestContext.Current.CancellationToken);
        var job = JobFileReader.Read(bytes).Job!;
        await new JobIntake(Database, ShopTables.Standard).TakeInAsync(job, "test", cancel: TestContext.Current.CancellationToken);
        return Jobs.Find(job.Number)!;
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _site.DisposeAsync();
        Database.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
