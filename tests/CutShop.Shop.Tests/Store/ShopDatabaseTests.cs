using System.Data.Common;
using CutShop.Testing.Jobs;
using CutShop.Testing.Stores;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Tests.Store;

public sealed class ShopDatabaseTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void A_new_database_is_whole_strict_and_in_write_ahead_mode()
    {
        using var store = TestStore.InFile();
        using var database = store.Open();
        Assert.Equal("ok", database.Read(session => session.Value<string>("PRAGMA integrity_check")));
        Assert.Equal("wal", database.Read(session => session.Value<string>("PRAGMA journal_mode")));
        Assert.Equal(1, database.Read(session => session.Value<long>("PRAGMA foreign_keys")));
        Assert.Empty(database.Read(session => session.All<string>(
            "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'")));
    }

    [Fact]
    public async Task Opening_again_finds_what_was_stored()
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        using var again = _shop.OpenAgain();
        Assert.NotNull(new JobShelf(again).Find("LQ-1"));
    }

    [FileOnlyFact]
    public void A_database_of_a_newer_program_is_left_alone()
    {
        using (var connection = new SqliteConnection($"Data Source={_shop.DatabaseFile};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA user_version = 9999";
            command.ExecuteNonQuery();
        }
        var e = Assert.Throws<InvalidDataException>(() => ShopDatabase.Open(_shop.DatabaseFile, _shop.Time));
        Assert.Contains("Use a newer program", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_write_that_throws_leaves_nothing_behind()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() => _shop.Database.WriteAsync<int>(
            session =>
            {
                session.Record("job", 1, "Ada", HistoryCodes.JobReleased);
                throw new InvalidOperationException("The power went.");
            },
            Cancel));
        Assert.Equal(0, _shop.Count("history"));
        Assert.Equal(1, await _shop.Database.WriteAsync(_ => 1, Cancel));
    }

    [Theory]
    [InlineData("UPDATE history SET what = 'job-cancelled'")]
    [InlineData("DELETE FROM history")]
    public async Task History_is_never_rewritten(string sql)
    {
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var e = await Assert.ThrowsAnyAsync<DbException>(() => _shop.Database.WriteAsync(session => session.Execute(sql), Cancel));
        Assert.Contains("append-only", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Many_writers_each_get_their_turn()
    {
        await Task.WhenAll(Enumerable.Range(0, 200).Select(i => Task.Run(
            () => _shop.Database.WriteAsync(session => { session.Record("job", i, "Ada", HistoryCodes.JobReleased); return i; }, Cancel), Cancel)));
        Assert.Equal(200, _shop.Count("history"));
    }

    public void Dispose() => _shop.Dispose();
}
