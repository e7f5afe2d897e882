using CutShop.Shop.Store;
using Npgsql;

namespace CutShop.Shop.Maintenance;

/// <summary>Where a shop is: its folder, and its database, which is a file in that folder or stands on a server.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="connection">The connection string of a database on a PostgreSQL server, or null where the database is the folder's file.</param>
public sealed class ShopPlace(string folder, string? connection = null)
{
    /// <summary>The shop's folder.</summary>
    public string Folder => folder;

    /// <summary>True where the database is on a server.</summary>
    public bool IsOnServer => connection is not null;

    /// <summary>The database file; there is none where the database is on a server.</summary>
    public string DatabaseFile => ShopFolder.DatabaseIn(folder);

    /// <summary>The database as people are told of it, without what opens it: its path, or its name and the server's.</summary>
    public override string ToString() =>
        connection is null ? DatabaseFile : Told(new NpgsqlConnectionStringBuilder(connection));

    /// <summary>Opens the database to work with it; see <see cref="ShopDatabase.Open"/> and <see cref="ShopDatabase.OpenOnServer"/>.</summary>
    public ShopDatabase Open(TimeProvider time) =>
        connection is null ? ShopDatabase.Open(DatabaseFile, time) : ShopDatabase.OpenOnServer(connection, folder, time);

    /// <summary>Opens the database to look after it.</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="InvalidDataException">This is no connection string.</exception>
    /// <exception cref="IOException">The server does not answer, or does not let this program in.</exception>
    internal MaintainedStore OpenForCare(TimeProvider time) => connection is null ? MaintainedFile.Open(DatabaseFile, time) : MaintainedServer.Open(connection, time);

    private static string Told(NpgsqlConnectionStringBuilder parts) => StoreReplies.Say("DatabaseOnServer", parts.Database, parts.Host);
}
