using System.Globalization;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>Brings a database's tables up to date with the numbered files of db/migrations, which are built into this assembly.</summary>
internal static class Migrations
{
    /// <summary>The number of the newest migration.</summary>
    public static int Newest { get; } = Files().Count;

    /// <summary>Applies what is missing, each file in a transaction of its own together with its number.</summary>
    public static void Apply(SqliteConnection connection) => Apply(connection, Newest);

    /// <summary>The same, up to a number.</summary>
    public static void Apply(SqliteConnection connection, long upTo)
    {
        foreach (var (number, name) in Files().Index().Where(file => file.Index < upTo))
        {
            using var transaction = connection.BeginTransaction(deferred: false);
            // Read inside the transaction: another process may just have applied it.
            var applied = Version(connection, transaction);
            if (applied > Newest)
                throw new InvalidDataException($"This database has migration {applied}; this program knows {Newest}. Use a newer program.");
            if (applied > number)
                continue;
            Run(connection, transaction, Text(name));
            Run(connection, transaction, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {number + 1}"));
            transaction.Commit();
        }
    }

    private static List<string> Files() =>
        [.. typeof(Migrations).Assembly.GetManifestResourceNames().Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    private static string Text(string name)
    {
        using var reader = new StreamReader(typeof(Migrations).Assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
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
