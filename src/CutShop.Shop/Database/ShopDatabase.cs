using System.Diagnostics;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>
/// The shop's database file. Writes go one at a time through one gate, in the order they come, each in a transaction that
/// is on the disk when the call returns; reads see one moment and never wait for a write.
/// </summary>
public sealed class ShopDatabase : IDisposable
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);

    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly string _connectionString;
    private readonly TimeProvider _time;
    private readonly ChangeWatch _changes;
    private KeptStatements? _writer; // kept open between writes, and used only inside the gate

    private ShopDatabase(string path, TimeProvider time)
    {
        (Path, _time) = (path, time);
        _connectionString = new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = SqliteOpenMode.ReadWriteCreate,
            ForeignKeys = true,
            DefaultTimeout = (int)LongestWait.TotalSeconds,
            Pooling = true,
        }.ToString();
        _changes = new(Connect);
    }

    /// <summary>Where the database file is.</summary>
    public string Path { get; }

    /// <summary>A number that is another after each change, by whichever program; it means nothing after a restart.</summary>
    public long ChangeNumber => _changes.Now();

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => _time;

    /// <summary>What is measured of this shop.</summary>
    public ShopMeter Meter { get; } = new();

    /// <summary>Called before each statement of a write, so that a test can break one.</summary>
    internal Action? BeforeEachWrite { get; set; }

    /// <summary>Opens the database, makes it where there is none, and brings its tables up to date.</summary>
    /// <param name="path">The database file.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="InvalidDataException">The database was made by a newer version of the program.</exception>
    public static ShopDatabase Open(string path, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        SqlTypes.Register();
        var full = System.IO.Path.GetFullPath(path);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
        var database = new ShopDatabase(full, time);
        using var connection = database.Connect();
        Execute(connection, "PRAGMA journal_mode = WAL");
        Migrations.Apply(connection);
        return database;
    }

    /// <summary>Reads, all of it as of one moment.</summary>
    public T Read<T>(Func<ShopSession, T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        using var connection = Connect();
        using var transaction = connection.BeginTransaction(deferred: true);
        return work(new ShopSession(connection, transaction, _time));
    }

    /// <summary>
    /// Writes: all of <paramref name="work"/> is stored, or nothing where it throws. It is on the disk when the task ends.
    /// </summary>
    public async Task<T> WriteAsync<T>(Func<ShopSession, T> work, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(work);
        var asked = Stopwatch.GetTimestamp();
        await _gate.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            Meter.Waited(Stopwatch.GetElapsedTime(asked));
            _writer ??= new KeptStatements(Connect());
            using var transaction = _writer.BeginWrite();
            var session = new ShopSession(_writer, transaction, _time, BeforeEachWrite);
            var result = work(session);
            transaction.Commit();
            Meter.Add(session.Counted);
            return result;
        }
        catch
        {
            // Whatever went wrong, the next write starts with a connection that has seen none of it.
            _writer?.Dispose();
            _writer = null;
            throw;
        }
        finally
        {
            _gate.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Meter.Dispose();
        _gate.Dispose();
        _changes.Dispose();
        _writer?.Dispose();
        using var connection = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(connection);
    }

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection(_connectionString);
        connection.Open();
        Execute(connection, "PRAGMA synchronous = FULL; PRAGMA cache_size = -32768"); // KiB, so that a page of a long list is found in memory
        return connection;
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
