using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>A shop in an SQLite file. Writes go through one gate of this process; the file lets one process write at a time.</summary>
internal sealed class SqliteStore : ShopDatabase
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(5);

    private readonly SemaphoreSlim _gate = new(1, 1);
    private readonly string _connectionString;
    private readonly ChangeWatch _changes;
    private readonly ConcurrentStack<CachedStatements> _readers = []; // kept open between reads; whoever reads takes the last one used, whose pages are in memory
    private CachedStatements? _writer; // kept open between writes, and used only inside the gate

    private SqliteStore(string path, TimeProvider time)
        : base(System.IO.Path.GetDirectoryName(path)!, time)
    {
        Path = path;
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

    /// <inheritdoc/>
    public override string Path { get; }

    /// <inheritdoc/>
    public override long ChangeNumber => _changes.Now();

    /// <summary>Opens the file, makes it where there is none, and brings its tables up to date.</summary>
    public static SqliteStore OpenFile(string path, TimeProvider time)
    {
        var full = System.IO.Path.GetFullPath(path);
        var store = new SqliteStore(full, time);
        Directory.CreateDirectory(store.Folder);
        if (store.RefusalOfEmpty() is { } refusal)
        {
            store.Dispose();
            throw new InvalidDataException(refusal);
        }
        using var connection = store.Connect();
        connection.Run("PRAGMA journal_mode = WAL");
        SqliteMigrations.Apply(connection);
        return store;
    }

    /// <inheritdoc/>
    public override T Read<T>(Func<ShopSession, T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var reader = _readers.TryPop(out var kept) ? kept : new CachedStatements(Connect());
        try
        {
            using var transaction = reader.BeginRead();
            var result = work(new ShopSession(reader, transaction, Dialect.Sqlite, Time));
            transaction.Commit();
            _readers.Push(reader);
            return result;
        }
        catch
        {
            // Whatever went wrong, nobody reads on with it.
            reader.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public override void Probe()
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder(_connectionString) { Pooling = false }.ToString());
        connection.Open();
        connection.Number(ProbeQuery);
    }

    /// <inheritdoc/>
    public override async Task<T> WriteAsync<T>(Func<ShopSession, T> work, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(work);
        var asked = Stopwatch.GetTimestamp();
        await _gate.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            Meter.Waited(Stopwatch.GetElapsedTime(asked));
            _writer ??= new CachedStatements(Connect());
            using var transaction = _writer.BeginWrite();
            var session = new ShopSession(_writer, transaction, Dialect.Sqlite, Time, BeforeEachWrite);
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
    internal override Task<T> TakeTicketAsync<T>(string who, Func<ShopSession, T> work, CancellationToken cancel) => WriteAsync(work, cancel);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        _gate.Dispose();
        _changes.Dispose();
        _writer?.Dispose();
        foreach (var reader in _readers)
            reader.Dispose();
        using var connection = new SqliteConnection(_connectionString);
        SqliteConnection.ClearPool(connection);
    }

    /// <summary>A file without tables is a new shop's only where its folder is new.</summary>
    private string? RefusalOfEmpty()
    {
        if (!File.Exists(Path))
            return ShopStart.NotNew(Path);
        using var connection = Connect();
        return connection.Number("SELECT count(*) FROM sqlite_schema") == 0 ? ShopStart.NotNew(Path) : null;
    }

    private SqliteConnection Connect()
    {
        var connection = new SqliteConnection(_connectionString);
        connection.Open();
        connection.Run("PRAGMA synchronous = FULL; PRAGMA cache_size = -32768"); // KiB, so that a page of a long list is found in memory
        return connection;
    }
}
