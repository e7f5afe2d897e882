using System.Net;
using CutShop.Testing.Stores;
using Microsoft.Data.Sqlite;

namespace CutShop.Web.Tests.Host;

public sealed class HealthTests
{
    [Fact]
    public async Task A_shop_whose_database_answers_is_live_and_ready_to_anyone_who_asks()
    {
        await using var shop = await RunningShop.StartAsync();
        foreach (var address in new[] { "/health/live", "/health/ready" })
        {
            using var answer = await shop.Stranger.AskAsync(address);
            Assert.Equal((HttpStatusCode.OK, "well"), (answer.StatusCode, await answer.TextAsync()));
        }
    }

    [FileOnlyFact]
    public async Task A_shop_whose_database_is_damaged_is_live_and_not_ready()
    {
        await using var shop = await RunningShop.StartAsync();
        SqliteConnection.ClearAllPools();
        File.Delete(shop.Database.Path + "-wal");
        await File.WriteAllTextAsync(shop.Database.Path, string.Concat(Enumerable.Repeat("not a database at all. ", 4000)), TestContext.Current.CancellationToken);
        using var live = await shop.Stranger.AskAsync("/health/live");
        Assert.Equal(HttpStatusCode.OK, live.StatusCode);
        using var ready = await shop.Stranger.AskAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
    }
}
