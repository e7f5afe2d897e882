using System.Data.Common;
using System.Text.Json;
using CutShop.Takeoff.Lengths;
using Dapper;

namespace CutShop.Shop.Store;

/// <summary>One transaction on the shop's database. Every statement goes through here, so none can miss the transaction.</summary>
public sealed class ShopSession
{
    private static readonly JsonSerializerOptions DetailNames = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private readonly DbConnection _connection;
    private readonly DbTransaction _transaction;
    private readonly Action? _beforeEach;
    private readonly List<ShopCount> _counted = [];
    private readonly Dictionary<string, long> _actors = [];

    internal ShopSession(DbConnection connection, DbTransaction transaction, Dialect dialect, TimeProvider time, Action? beforeEach = null)
    {
        Dialect = dialect;
        (_connection, _transaction, _beforeEach) = (connection, transaction, beforeEach);
        Now = time.GetUtcNow();
        Today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Now, time.LocalTimeZone).DateTime);
    }

    /// <summary>What the database reads otherwise than the other one.</summary>
    internal Dialect Dialect { get; }

    /// <summary>The moment of this transaction, UTC.</summary>
    public DateTimeOffset Now { get; }

    /// <summary>The day in the shop at that moment.</summary>
    public DateOnly Today { get; }

    /// <summary>When something was done by another's clock, such as a phone's: never later than now, and now where it is not known.</summary>
    public DateTimeOffset NoLaterThanNow(DateTimeOffset? at) => at < Now ? at.Value : Now;

    /// <summary>What this transaction did that is counted.</summary>
    internal IReadOnlyList<ShopCount> Counted => _counted;

    /// <summary>
    /// All rows of a query. A computed column may not be null: give it a value with coalesce. A computed number is a bigint: say so
    /// with CAST, for a sum and a literal are of other types on a server.
    /// </summary>
    public IReadOnlyList<T> All<T>(string sql, object? values = null)
    {
        using var reader = (DbDataReader)_connection.ExecuteReader(sql, values, _transaction);
        // Without a row SQLite does not know the type of a computed column, and no record would fit.
        return reader.HasRows ? reader.Parse<T>().AsList() : [];
    }

    /// <summary>The rows of a query one after the other, for a table that is too large to be held; nothing else is asked meanwhile.</summary>
    internal IEnumerable<DbDataReader> Rows(string sql)
    {
        using var reader = (DbDataReader)_connection.ExecuteReader(sql, transaction: _transaction);
        while (reader.Read())
            yield return reader;
    }

    /// <summary>The first row, or the type's default where there is none.</summary>
    public T? FirstOrDefault<T>(string sql, object? values = null) => All<T>(sql, values) is [var first, ..] ? first : default;

    /// <summary>The one value of a query that always has one.</summary>
    public T Value<T>(string sql, object? values = null) => _connection.QuerySingle<T>(sql, values, _transaction);

    /// <summary>Runs a statement, once for each element where <paramref name="values"/> is a list.</summary>
    /// <returns>Rows changed.</returns>
    public int Execute(string sql, object? values = null)
    {
        _beforeEach?.Invoke();
        return _connection.Execute(sql, values, _transaction);
    }

    /// <summary>Runs an INSERT and gives the new row's id.</summary>
    public long Insert(string sql, object values)
    {
        _beforeEach?.Invoke();
        return _connection.QuerySingle<long>(sql + " RETURNING id", values, _transaction);
    }

    /// <summary>Adds a line to the append-only history. Every change of state has one, in the same transaction.</summary>
    /// <param name="subject">What changed: a name in the table of the history's subjects, such as job or cut ticket.</param>
    /// <param name="subjectId">Its row id.</param>
    /// <param name="who">Who changed it.</param>
    /// <param name="what">What was done.</param>
    /// <param name="before">The state before, as its table keeps it; empty where there was none.</param>
    /// <param name="after">The state after.</param>
    /// <param name="reason">Why, where there is a reason.</param>
    /// <param name="beforeLength">The length before, where it is a length that changed.</param>
    /// <param name="afterLength">The length after.</param>
    /// <param name="details">What else the words of <paramref name="what"/> ask for: whole numbers and codes by name. No words, and nobody's name.</param>
    /// <param name="from">Whom it was taken from; empty elsewhere.</param>
    public void Record(
        string subject,
        long subjectId,
        string who,
        HistoryCode what,
        string before = "",
        string after = "",
        Reason reason = default,
        Length? beforeLength = null,
        Length? afterLength = null,
        object? details = null,
        string from = "")
    {
        ArgumentNullException.ThrowIfNull(what);
        Execute(
            """
            INSERT INTO history (at, actor_id, from_actor_id, subject, subject_id, what, before, after, before_nm, after_nm, details, cause, reason)
            VALUES (@Now, @actor, @fromActor, @subject, @subjectId, @Code, @before, @after, @beforeLength, @afterLength, @json, @Cause, @Typed)
            """,
            new
            {
                Now,
                actor = ActorOf(who),
                fromActor = from.Length > 0 ? ActorOf(from) : (long?)null,
                subject,
                subjectId,
                what.Code,
                before,
                after,
                beforeLength,
                afterLength,
                json = details is null ? "{}" : JsonSerializer.Serialize(details, DetailNames),
                reason.Cause,
                reason.Typed,
            });
    }

    /// <summary>Counts something that this transaction does; it shows once the transaction is stored.</summary>
    internal void Count(ShopCount what) => _counted.Add(what);

    private long ActorOf(string who)
    {
        if (!_actors.TryGetValue(who, out var id))
            _actors[who] = id = Actors.IdOf(this, who);
        return id;
    }
}
