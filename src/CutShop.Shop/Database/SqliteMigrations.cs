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
            var applied = Version(connection, transaction);
            Migration.Refuse(applied, Migration.ForSqlite);
            if (applied >= migration.Number)
                continue;
            Run(connection, transaction, migration.Text());
            Run(connection, transaction, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {migration.Number}"));
            transaction.Commit();
        }
    }

    private static long Version(SqliteConnection connection, SqliteTransaction transaction)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "PRAGMA user_version";
        return (long)command.ExecuteScalar()!;
    }

    private static void Run(SqliteConnection connection, SqliteTransaction transaction, string sql)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
#pragma warning disable CA2100 // The text comes from this assembly, not from a person.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
