using System.Security.Cryptography;
using System.Text;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>A hash of everything that a shop's database holds: two shops with the same digest are the same.</summary>
public static class ShopDigest
{
    /// <summary>The digest of a database file as of one moment, in hexadecimal.</summary>
    public static string Of(string path)
    {
        using var file = CareFile.Open(path, TimeProvider.System);
        using var moment = file.Connection.BeginTransaction(deferred: true);
        return Of(file.Connection);
    }

    /// <summary>The digest of what a connection sees.</summary>
    internal static string Of(SqliteConnection connection) =>
        Of(TableText.All(connection).Select(table => (table.Name, HashOf(table.Lines(connection)))));

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
