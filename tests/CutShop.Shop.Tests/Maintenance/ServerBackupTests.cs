using CutShop.Testing.Jobs;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Maintenance;

/// <summary>A backup of a shop on a server is made and restored by the server's own programs, as docs/operations.md says.</summary>
public sealed class ServerBackupTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_dump_made_while_people_work_restores_into_a_new_database_as_a_shop_that_is_well_and_goes_on()
    {
        using var store = TestStore.OnServer();
        using var shop = store.Open();
        await FillAsync(shop);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var before = Lines(shop);
        var work = Task.Run(() => CountAgainAndAgainAsync(shop, stop.Token), Cancel);
        while (Lines(shop) == before)
            await Task.Delay(TimeSpan.FromMilliseconds(2), Cancel);

        var dump = Path.Combine(store.Folder, "cutshop.dump");
        PostgresServer.RunTool(store.Connection, "pg_dump", "--format=custom", $"--file={dump}");
        await stop.CancelAsync();
        await work;

        var restored = PostgresServer.NewEmptyDatabase();
        PostgresServer.RunTool(restored, "pg_restore", "--no-owner", "--single-transaction", dump);
        var place = new ShopPlace(store.Folder, restored);
        Assert.Empty(ShopCheck.Of(place, TimeProvider.System));
        using (var again = place.Open(TimeProvider.System))
        {
            Assert.NotEqual(HistoryEpoch.Of(shop), HistoryEpoch.Of(again));
            Assert.NotNull(new JobShelf(again).Find("LQ-1"));
            var lines = Lines(again);
            Assert.True(lines > before);
            await FillAsync(again, "LQ-2");
            Assert.True(Lines(again) > lines);
        }
        Assert.Empty(ShopCheck.Of(place, TimeProvider.System));
        PostgresServer.Drop(restored);
    }

    [Fact]
    public async Task A_dump_restored_with_nothing_done_since_is_the_same_shop()
    {
        using var store = TestStore.OnServer();
        using (var shop = store.Open())
            await FillAsync(shop);
        var dump = Path.Combine(store.Folder, "cutshop.dump");
        PostgresServer.RunTool(store.Connection, "pg_dump", "--format=custom", $"--file={dump}");
        var restored = PostgresServer.NewEmptyDatabase();
        PostgresServer.RunTool(restored, "pg_restore", "--no-owner", "--single-transaction", dump);
        Assert.Equal(ShopDigest.Of(new ShopPlace(store.Folder, store.Connection)), ShopDigest.Of(new ShopPlace(store.Folder, restored)));
        PostgresServer.Drop(restored);
    }

    private static async Task FillAsync(ShopDatabase shop, string number = "LQ-1")
    {
        await new JobIntake(shop, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece(number), "Ada", cancel: Cancel);
        await new CoilShelf(shop).ReceiveAsync(new(FaultShop.Rope, "L1", Length.Foot * 50, "rack 1"), "Ada", $"a coil for {number}", Cancel);
    }

    private static async Task CountAgainAndAgainAsync(ShopDatabase shop, CancellationToken stop)
    {
        for (var i = 0; !stop.IsCancellationRequested; i++)
            Assert.True((await new CoilShelf(shop).AdjustAsync("K0001", Length.Foot * 40 - Length.FromNanometres(i), "counted", "Ada", $"count {i}", CancellationToken.None)).IsDone);
    }

    private static long Lines(ShopDatabase shop) => shop.Read(session => session.Value<long>("SELECT count(*) FROM history"));
}
