using CutShop.Testing.Stores;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace CutShop.Shop.Tests.Store;

/// <summary>A ticket that an older program left at one of its six steps goes on at the one of four that holds it.</summary>
public sealed class FourCutStepsTests
{
    /// <summary>The migration before.</summary>
    private const int Before = 15;

    /// <summary>Steps done of the six (mark, ends, cut, measure, label, coil and tie), and of the four (mark, ends and cut, measure, label and tie).</summary>
    private static readonly (long Six, long Four)[] Steps = [(0, 0), (1, 1), (2, 1), (3, 2), (4, 3), (5, 3), (6, 4)];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_number_of_steps_is_carried_over(bool onServer)
    {
        using var store = onServer ? TestStore.OnServerWithoutTables() : TestStore.InFile();
        SqlTypes.Register();
        if (onServer)
        {
            using var connection = new NpgsqlConnection(store.Connection);
            connection.Open();
            PostgresMigrations.Apply(connection, TimeProvider.System, Before);
            using var transaction = connection.BeginTransaction();
            Fill(new(connection, transaction, Dialect.Postgres, TimeProvider.System));
            transaction.Commit();
        }
        else
        {
            using var connection = new SqliteConnection($"Data Source={store.DatabaseFile};Pooling=False");
            connection.Open();
            SqliteMigrations.Apply(connection, Before);
            using var transaction = connection.BeginTransaction();
            Fill(new(connection, transaction, Dialect.Sqlite, TimeProvider.System));
            transaction.Commit();
        }
        using var shop = store.Open();
        Assert.Equal(Steps.Select(pair => pair.Four), shop.Read(session => session.All<long>("SELECT steps FROM cut_tickets ORDER BY id")));
    }

    private static void Fill(ShopSession session)
    {
        session.Execute("INSERT INTO jobs (id, number, customer, job_file, one_lot, taken_in_at) VALUES (1, 'LQ-1', 'Lantern Quay', '{}', 1, '2027-01-01T00:00:00.000Z')");
        foreach (var (i, (six, _)) in Steps.Index())
        {
            var row = new { id = (long)i + 1, code = $"33333333333{i}", six };
            session.Execute(
                "INSERT INTO pieces (id, job_id, position, run, code, material, diameter_nm, cut_nm) VALUES (@id, 1, @id, 'A-' || @id, @code, 'polypropylene', 38100000, 254000000)", row);
            session.Execute("INSERT INTO cut_tickets (id, piece_id, state, steps) VALUES (@id, @id, 'waiting', @six)", row);
        }
    }
}
