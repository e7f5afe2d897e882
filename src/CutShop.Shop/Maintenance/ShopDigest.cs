using System.Security.Cryptography;
using System.Text;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>A hash of everything that a shop's database holds: two shops with the same digest are the same.</summary>
public static class ShopDigest
{
    /// <summary>The digest of a database file as of one moment, in hexadecimal.</summary>
    public static string Of(string path)
    {
        using var file = MaintainedFile.Open(path, TimeProvider.System);
        return Of(file);
    }

    /// <summary>The digest of a shop's database, in a file or on a server, as of one moment.</summary>
    public static string Of(ShopPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        using var store = place.OpenForCare(TimeProvider.System);
        return Of(store);
    }

    /// <summary>The digest of what a transaction sees in the tables of a migration.</summary>
    internal static string Of(ShopSession session, long migration) =>
        Of(TableText.All(migration).Select(table => (table.Name, HashOf(table.Lines(session)))));

    /// <summary>The digest of a shop in which nothing was done yet: what the migrations up to one put into it.</summary>
    internal static string OfNew(long migration)
    {
        using var connection = SqliteMigrations.InMemory(migration);
        using var transaction = connection.BeginTransaction();
        return Of(new ShopSession(connection, transaction, Dialect.Sqlite, TimeProvider.System), migration);
    }

    private static string Of(MaintainedStore store)
    {
        var migration = store.Version;
        return store.Read(session => Of(session, migration));
    }

    /// <summary>The digest of tables whose hashes are known, in the order of their names.</summary>
    internal static string Of(IEnumerable<(string Table, string Hash)> tables) => HashOf(tables.Select(table => $"{table.Table} {table.Hash}"));

    /// <summary>The hash of lines, each ended by a line feed.</summary>
    internal static string HashOf(IEnumerable<string> lines)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var line in lines)
            hash.AppendData(Encoding.UTF8.GetBytes(line + "\n"));
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
