using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Tests.Store;

/// <summary>A database of before there were people keeps its history, line for line.</summary>
public sealed class HistorySubjectsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cutshop-").FullName;

    private string DatabaseFile => Path.Combine(_folder, "cutshop.db");

    [Fact]
    public async Task The_history_goes_on_where_it_was_and_is_append_only_still()
    {
        Run("0001_jobs_and_tickets.sql", "0002_stock_and_cut_plans.sql");
        Execute("INSERT INTO history (id, at, who, subject, subject_id, what, before, after, reason) VALUES (41, '2027-02-01T08:00:00.000Z', 'Ada', 'coil', 7, 'received', '', '600'' 0\"', 'why')");
        Execute("PRAGMA user_version = 2");

        using var database = ShopDatabase.Open(DatabaseFile, TimeProvider.System);
        Assert.Equal(
            "41 2027-02-01T08:00:00.000Z Ada coil 7 coil-received 182880000000 why",
            database.Read(session => session.Value<string>(
                "SELECT concat_ws(' ', history.id, at, name, subject, subject_id, what, after_nm, reason) FROM history JOIN actors ON actors.id = actor_id")));
        var answer = await new PeopleShelf(database).AddAsync("Ada", Role.Owner, PeopleShelf.DrawPassword(), "test", TestContext.Current.CancellationToken);
        Assert.True(answer.IsDone);
        Assert.Equal(42, database.Read(session => session.Value<long>("SELECT id FROM history WHERE subject = 'person'")));
        await Assert.ThrowsAsync<SqliteException>(() => database.WriteAsync(session => session.Execute("DELETE FROM history"), TestContext.Current.CancellationToken));
        await Assert.ThrowsAsync<SqliteException>(() => database.WriteAsync(session => session.Execute("UPDATE history SET what = 'x'"), TestContext.Current.CancellationToken));
        await Assert.ThrowsAsync<SqliteException>(() => database.WriteAsync(
            session => { session.Record("no such subject", 1, "test", HistoryCodes.JobReleased); return true; }, TestContext.Current.CancellationToken));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Run(params string[] files)
    {
        foreach (var file in files)
        {
            using var reader = new StreamReader(typeof(ShopDatabase).Assembly.GetManifestResourceStream(file)!);
            Execute(reader.ReadToEnd());
        }
    }

    private void Execute(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={DatabaseFile};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The text is this test's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
