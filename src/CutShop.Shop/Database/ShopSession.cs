using System.Data.Common;
using Dapper;

namespace CutShop.Shop;

/// <summary>One transaction on the shop's database. Every statement goes through here, so none can miss the transaction.</summary>
public sealed class ShopSession
{
    private readonly DbConnection _connection;
    private readonly DbTransaction _transaction;
    private readonly Action? _beforeEach;
    private readonly List<ShopCount> _counted = [];

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
    /// <param name="what">What was done, in a few words.</param>
    /// <param name="before">The state before; empty where there was none.</param>
    /// <param name="after">The state after.</param>
    /// <param name="reason">Why, where a reason was asked for.</param>
    public void Record(string subject, long subjectId, string who, string what, string before, string after, string reason = "") =>
        Execute(
            """
            INSERT INTO history (at, who, subject, subject_id, what, before, after, reason)
            VALUES (@now, @who, @subject, @subjectId, @what, @before, @after, @reason)
            """,
            new { now = Now, who, subject, subjectId, what, before, after, reason });

    /// <summary>Counts something that this transaction does; it shows once the transaction is stored.</summary>
    internal void Count(ShopCount what) => _counted.Add(what);
}
