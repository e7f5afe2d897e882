using System.Globalization;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>Brings an SQLite file's tables up to date with db/migrations, which is built into this assembly.</summary>
internal static class SqliteMigrations
{
    /// <summary>The number of the newest migration.</summary>
    public static int Newest => Migration.ForSqlite.Count;

    /// <summary>Applies what is missing, each file in a transaction of its own together with its number.</summary>
    public static void Apply(SqliteConnection connection) => Apply(connection, Newest);

    /// <summary>The same, up to a number.</summary>
    public static void Apply(SqliteConnection connection, long upTo)
    {
        foreach (var migration in Migration.ForSqlite.Where(migration => migration.Number <= upTo))
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            // Read inside the transaction: another process may just have applied it.
            var applied = connection.Number("PRAGMA user_version");
            Migration.Refuse(applied, Migration.ForSqlite);
            if (applied >= migration.Number)
                continue;
            connection.Run(migration.Text());
            connection.Run(string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {migration.Number}"));
            transaction.Commit();
        }
    }
}
