using Dapper;
using Npgsql;

namespace CutShop.Shop.Store;

/// <summary>Brings a PostgreSQL database's tables up to date with db/migrations/postgresql, which is built into this assembly.</summary>
internal static class PostgresMigrations
{
    /// <summary>One program migrates at a time, and the first to come makes the table that says how far it is.</summary>
    private const string Begin =
        """
        SELECT pg_advisory_xact_lock(20270201, 3);
        CREATE TABLE IF NOT EXISTS migrations (number bigint PRIMARY KEY, name text NOT NULL, applied_at timestamptz NOT NULL);
        """;

    private const string AppliedText = "SELECT coalesce(max(number), 0) FROM migrations";

    /// <summary>The number of the newest migration of a database; 0 where it has none.</summary>
    public static long Applied(ShopSession session) =>
        session.Value<bool>("SELECT to_regclass('migrations') IS NOT NULL") ? session.Value<long>(AppliedText) : 0;

    /// <summary>Applies what is missing, each file in a transaction of its own together with its number.</summary>
    public static void Apply(NpgsqlConnection connection, TimeProvider time) => Apply(connection, time, Migration.Newest);

    /// <summary>The same, up to a number.</summary>
    public static void Apply(NpgsqlConnection connection, TimeProvider time, long upTo)
    {
        foreach (var migration in Migration.ForPostgres.Where(migration => migration.Number <= upTo))
        {
            using var transaction = connection.BeginTransaction();
            connection.Execute(Begin, transaction: transaction);
            // Read under the lock: another process may just have applied it.
            var applied = connection.QuerySingle<long>(AppliedText, transaction: transaction);
            Migration.Refuse(applied, Migration.ForPostgres);
            if (applied >= migration.Number)
                continue;
            // A large shop's rows may take longer than a statement may otherwise.
            connection.Execute(migration.Text(), transaction: transaction, commandTimeout: 0);
            MigrationSteps.After(migration, new ShopSession(connection, transaction, Dialect.Postgres, time));
            connection.Execute(
                "INSERT INTO migrations (number, name, applied_at) VALUES (@Number, @Name, @at)",
                new { Number = (long)migration.Number, migration.Name, at = time.GetUtcNow().UtcDateTime },
                transaction);
            transaction.Commit();
        }
    }
}
