using System.Globalization;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Store;

/// <summary>Brings an SQLite file's tables up to date with db/migrations, which is built into this assembly.</summary>
internal static class SqliteMigrations
{
    /// <summary>Applies what is missing, each file in a transaction of its own together with its number.</summary>
    public static void Apply(SqliteConnection connection) => Apply(connection, Migration.Newest);

    /// <summary>A database of its own in memory, with the tables as a migration left them and what it put into them.</summary>
    public static SqliteConnection InMemory(long upTo)
    {
        var connection = new SqliteConnection("Data Source=:memory:;Pooling=False");
        connection.Open();
        Apply(connection, upTo);
        return connection;
    }

    /// <summary>The same, up to a number.</summary>
    public static void Apply(SqliteConnection connection, long upTo)
    {
        SqlTypes.Register();
        foreach (var migration in Migration.ForSqlite.Where(migration => migration.Number <= upTo))
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            // Read inside the transaction: another process may just have applied it.
            var applied = connection.Number("PRAGMA user_version");
            Migration.Refuse(applied, Migration.ForSqlite);
            if (applied >= migration.Number)
                continue;
            connection.Run(migration.Text());
            MigrationSteps.After(migration, new ShopSession(connection, transaction, Dialect.Sqlite, TimeProvider.System));
            connection.Run(string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {migration.Number}"));
            transaction.Commit();
        }
    }
}
