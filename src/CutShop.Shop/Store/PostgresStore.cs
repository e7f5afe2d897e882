using System.Data;
using System.Diagnostics;
using Dapper;
using Npgsql;

namespace CutShop.Shop.Store;

/// <summary>
/// A shop in a database on a PostgreSQL server, for several processes at once. A write holds the shop's lock from its first
/// statement to its end, so that no two overlap, whichever process they come from; that is what the code of every change may rely on, as it
/// may in a file. Taking a ticket holds the same lock shared: takers go side by side, each with rows of its own.
/// </summary>
internal sealed class PostgresStore : ShopDatabase
{
    /// <summary>The locks of a shop in its database. The history's own lock, 2, is taken by the trigger that numbers its lines.</summary>
    private const int Locks = 20270201;
    private const int WriteLock = 1;
    private const int PersonLocks = 20270202;

    private const int MostTakersAtOnce = 8;

    /// <summary>Keys of the connection string that count where the shop's own does not say otherwise: a text that comes again is not planned again.</summary>
    private const string Usual = "Application Name=CutShop;Max Auto Prepare=500;Auto Prepare Min Usages=2;Command Timeout=30;Timeout=5;";

    // What was acknowledged is on the disk, whatever the server's usual way is; a lock that does not come is an error, not a hang.
    private const string Careful = "SELECT set_config('synchronous_commit', 'on', true), set_config('lock_timeout', '5s', true)";

    private static readonly Lock Clearing = new();

    private readonly SemaphoreSlim _gate = new(1, 1); // the turn of this process's writes, so that they wait here and not with a connection each
    private readonly SemaphoreSlim _takers = new(MostTakersAtOnce, MostTakersAtOnce);
    private readonly NpgsqlDataSource _source;

    private PostgresStore(NpgsqlDataSource source, string folder, TimeProvider time)
        : base(folder, time) => _source = source;

    /// <summary>The snapshot is another one whenever a transaction has ended that wrote.</summary>
    public override long ChangeNumber =>
        Read(session => session.Value<long>("SELECT hashtextextended(CAST(pg_current_snapshot() AS text), 0)"));

    /// <summary>Opens the database and brings its tables up to date.</summary>
    public static PostgresStore Connect(string connection, string folder, TimeProvider time)
    {
        var store = new PostgresStore(Source(connection), folder, time);
        try
        {
            Directory.CreateDirectory(store.Folder);
            using var first = store._source.OpenConnection();
            PostgresMigrations.Apply(first, time);
            return store;
        }
        catch (NpgsqlException e)
        {
            store.Dispose();
            throw CannotBeUsed(e);
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public override T Read<T>(Func<ShopSession, T> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Read(_source, Time, work);
    }

    /// <inheritdoc/>
    public override void Probe() => Read(session => session.Value<long>(ProbeQuery));

    /// <summary>Reads from a database, up to date or not.</summary>
    internal static T Read<T>(NpgsqlDataSource source, TimeProvider time, Func<ShopSession, T> work)
    {
        using var connection = Begin(source, IsolationLevel.RepeatableRead, "SET TRANSACTION READ ONLY", values: null, out var transaction);
        using (transaction)
            return work(new ShopSession(connection, transaction, Dialect.Postgres, time));
    }

    /// <inheritdoc/>
    public override Task<T> WriteAsync<T>(Func<ShopSession, T> work, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(work);
        return RunAsync(_gate, $"{Careful}, pg_advisory_xact_lock({Locks}, {WriteLock})", values: null, work, cancel);
    }

    /// <inheritdoc/>
    internal override Task<T> TakeTicketAsync<T>(string who, Func<ShopSession, T> work, CancellationToken cancel) => RunAsync(
        _takers,
        $"{Careful}, pg_advisory_xact_lock_shared({Locks}, {WriteLock}), pg_advisory_xact_lock({PersonLocks}, hashtext(@who))",
        new { who },
        work,
        cancel);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        _gate.Dispose();
        _takers.Dispose();
        _source.Dispose();
    }

    /// <summary>What is told where the server does not answer, or does not let this program in.</summary>
    internal static IOException CannotBeUsed(NpgsqlException e) => new(StoreReplies.Say("ServerCannotBeUsed", e.Message), e);

    /// <summary>Connections by a connection string.</summary>
    /// <exception cref="InvalidDataException">This is no connection string.</exception>
    internal static NpgsqlDataSource Source(string connection)
    {
        try
        {
            return NpgsqlDataSource.Create(Usual + connection);
        }
        catch (ArgumentException e)
        {
            throw new InvalidDataException(StoreReplies.Say("ConnectionString", e.Message), e);
        }
    }

    /// <summary>
    /// Begins a transaction with its first statement. A kept connection that the server has ended since, as it does when it restarts,
    /// is known by that: nothing was done on it, those beside it are ended too, and a new one takes its place.
    /// </summary>
    private static NpgsqlConnection Begin(NpgsqlDataSource source, IsolationLevel level, string first, object? values, out NpgsqlTransaction transaction)
    {
        for (var isKept = true; ; isKept = false)
        {
            var connection = source.OpenConnection();
            try
            {
                transaction = connection.BeginTransaction(level);
                connection.Execute(first, values, transaction);
                return connection;
            }
            catch (NpgsqlException) when (isKept && connection.State != ConnectionState.Open)
            {
                // One after another: while one clears, the call returns at once to others, who would be given a second ended connection.
                lock (Clearing)
                    source.Clear();
                connection.Dispose();
            }
            catch
            {
                connection.Dispose();
                throw;
            }
        }
    }

    /// <summary>
    /// Each statement sees what was committed before it began, so the first one after the lock sees all that was done under it.
    /// </summary>
    private async Task<T> RunAsync<T>(SemaphoreSlim turn, string begin, object? values, Func<ShopSession, T> work, CancellationToken cancel)
    {
        var asked = Stopwatch.GetTimestamp();
        await turn.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            using var connection = Begin(_source, IsolationLevel.ReadCommitted, begin, values, out var transaction);
            using (transaction)
            {
                Meter.Waited(Stopwatch.GetElapsedTime(asked));
                var session = new ShopSession(connection, transaction, Dialect.Postgres, Time, BeforeEachWrite);
                var result = work(session);
                transaction.Commit();
                Meter.Add(session.Counted);
                return result;
            }
        }
        finally
        {
            turn.Release();
        }
    }
}
