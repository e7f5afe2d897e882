using CutShop.Shop.Store;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Maintenance;

/// <summary>A database file opened for its care; never pooled, so that it is let go when it is closed.</summary>
internal sealed class MaintainedFile : MaintainedStore
{
    private readonly TimeProvider _time;

    private MaintainedFile(SqliteConnection connection, TimeProvider time) => (Connection, _time) = (connection, time);

    /// <summary>The open connection.</summary>
    public SqliteConnection Connection { get; }

    /// <inheritdoc/>
    public override long Version => Connection.Number("PRAGMA user_version");

    /// <summary>Opens a file that is there.</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    public static MaintainedFile Open(string path, TimeProvider time)
    {
        if (!File.Exists(path))
            throw new FileNotFoundException(StoreReplies.Say("NoDatabaseAt", path), path);
        return Connect(path, SqliteOpenMode.ReadWrite, time);
    }

    /// <summary>Makes an empty file, in place of one that is there.</summary>
    public static MaintainedFile Create(string path, TimeProvider time)
    {
        Delete(path);
        return Connect(path, SqliteOpenMode.ReadWriteCreate, time);
    }

    /// <summary>Deletes a database file with what the write-ahead mode keeps beside it.</summary>
    public static void Delete(string path)
    {
        foreach (var part in PartsOf(path))
            File.Delete(part);
    }

    /// <summary>The files that a database is made of, the main one last.</summary>
    public static IReadOnlyList<string> PartsOf(string path) => [path + "-wal", path + "-shm", path + "-journal", path];

    /// <inheritdoc/>
    public override T Read<T>(Func<ShopSession, T> work)
    {
        using var transaction = Connection.BeginTransaction(deferred: true);
        return work(new ShopSession(Connection, transaction, Dialect.Sqlite, _time));
    }

    /// <inheritdoc/>
    public override IEnumerable<CheckFinding> OwnFindings(ShopSession session) => SqliteIntegrity.Of(session);

    /// <summary>Writes all of it or, where it throws, nothing.</summary>
    public void Write(Action<ShopSession> work)
    {
        using var transaction = Connection.BeginTransaction(deferred: false);
        work(new ShopSession(Connection, transaction, Dialect.Sqlite, _time));
        transaction.Commit();
    }

    /// <summary>Leaves the file as one piece: what stands in the write-ahead log goes into it.</summary>
    public void MakeOnePiece() => Connection.Run("PRAGMA journal_mode = DELETE");

    /// <inheritdoc/>
    public override void Dispose() => Connection.Dispose();

    private static MaintainedFile Connect(string path, SqliteOpenMode mode, TimeProvider time)
    {
        SqlTypes.Register();
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            ForeignKeys = true,
            DefaultTimeout = 5,
            Pooling = false,
        }.ToString());
        connection.Open();
        connection.Run("PRAGMA busy_timeout = 5000");
        connection.Run("PRAGMA synchronous = FULL");
        return new(connection, time);
    }
}
