using System.Globalization;
using Microsoft.Data.Sqlite;

namespace CutShop.Benchmarks.Benches;

/// <summary>
/// The bench's two transactions as one would write them by hand: one connection kept open, every statement prepared once, no
/// mapping. The same rows are read and written.
/// </summary>
internal sealed class RawBench : IDisposable
{
    private const string Next =
        """
        SELECT cut_tickets.id, code, queue_due, plan_coils.coil_id, cut_nm, kerf_nm, squaring_nm, first_trim_nm, trimmed
        FROM cut_tickets
        CROSS JOIN plan_coils ON plan_coils.id = cut_tickets.plan_coil_id
        CROSS JOIN cut_plans ON cut_plans.id = plan_coils.plan_id
        CROSS JOIN coils ON coils.id = plan_coils.coil_id
        CROSS JOIN coils_free ON coils_free.id = coils.id
        CROSS JOIN pieces ON pieces.id = cut_tickets.piece_id
        CROSS JOIN jobs ON jobs.id = pieces.job_id
        WHERE cut_tickets.state = 'waiting' AND cut_tickets.plan_coil_id IS NOT NULL AND coils.state = 'in stock'
          AND free_nm >= cut_nm + kerf_nm + squaring_nm + iif(plan_coils.trimmed, 0, first_trim_nm)
        ORDER BY queue_due, cut_tickets.plan_coil_id, queue_place LIMIT 1
        """;

    private readonly SqliteConnection _connection;
    private readonly Dictionary<string, SqliteCommand> _commands = [];
    private SqliteTransaction? _transaction;

    public RawBench(string path)
    {
        _connection = new($"Data Source={path};Foreign Keys=True");
        _connection.Open();
        Run("PRAGMA synchronous = FULL");
    }

    public void ClaimAndComplete(int pieces, string round)
    {
        for (var i = 0; i < pieces; i++)
        {
            var ticket = Claim($"next {round} {i}");
            Complete(ticket, $"done {round} {i}");
        }
    }

    public void Dispose()
    {
        foreach (var command in _commands.Values)
            command.Dispose();
        _connection.Dispose();
    }

    private static string Now => DateTime.UtcNow.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    private long Claim(string key)
    {
        using var transaction = Begin();
        var now = Now;
        Row("SELECT answer FROM requests WHERE key = $a", key);
        Row("SELECT name, value FROM settings WHERE name LIKE 'bench %'");
        Row("SELECT id, claimed_by FROM cut_tickets WHERE state = 'at the bench' AND touched_at < $a AND steps < 2", now);
        Row("SELECT id FROM cut_tickets WHERE state = 'at the bench' AND claimed_by = $a ORDER BY claimed_at LIMIT 1", "Cai");
        var next = Row(Next)!;
        Row("SELECT cut_coil_id FROM cut_tickets WHERE cut_by = $a ORDER BY cut_at DESC LIMIT 1", "Cai");
        Row("SELECT EXISTS (SELECT 1 FROM cut_tickets WHERE state = 'at the bench' AND cut_coil_id = $a)", next[3]);
        Run(
            """
            UPDATE cut_tickets SET state = 'at the bench', claimed_by = $a, claimed_at = $b, touched_at = $b, steps = 0, cut_coil_id = $c, reserved_nm = $d
            WHERE id = $e AND state = 'waiting'
            """,
            "Cai", now, next[3], next[4], next[0]);
        Record(now, "cut ticket", next[0], "taken-to-bench", "waiting", "at the bench");
        Run("INSERT INTO requests (key, at, answer) VALUES ($a, $b, $c)", key, now, next[1]);
        transaction.Commit();
        return (long)next[0];
    }

    private void Complete(long id, string key)
    {
        using var transaction = Begin();
        var now = Now;
        Row("SELECT answer FROM requests WHERE key = $a", key);
        var ticket = Row(
            """
            SELECT cut_tickets.state, cut_nm, cut_coil_id, left_nm, plan_coil_id, keep_nm, coils.state FROM cut_tickets
            JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id JOIN plan_coils ON plan_coils.id = plan_coil_id
            JOIN cut_plans ON cut_plans.id = plan_id JOIN coils ON coils.id = plan_coils.coil_id WHERE cut_tickets.id = $a
            """,
            id)!;
        var use = Row(
            "INSERT INTO rope_uses (at, coil_id, ticket_id, kind, nm) VALUES ($a, $b, $c, 'piece', $d) RETURNING id", now, ticket[2], id, ticket[1])!;
        Run("UPDATE plan_coils SET trimmed = 1 WHERE id = $a", ticket[4]);
        Run("UPDATE coils SET left_nm = $a, state = 'in stock' WHERE id = $b", (long)ticket[3] - (long)ticket[1], ticket[2]);
        Record(now, "coil", ticket[2], "cut-from", "", "");
        Run(
            "UPDATE cut_tickets SET measured_nm = $a, longest_nm = $a, first_use_id = $b, reserved_nm = 0, cut_by = 'Cai', cut_at = $c, steps = 4, touched_at = $c WHERE id = $d",
            ticket[1], use[0], now, id);
        Record(now, "cut ticket", id, "cut-measured", "", "");
        Row("SELECT count(*) FROM cut_tickets WHERE plan_coil_id = $a AND (state = 'waiting' OR (state = 'at the bench' AND measured_nm IS NULL))", ticket[4]);
        Run("UPDATE cut_tickets SET state = 'cut', claimed_by = NULL, claimed_at = NULL, touched_at = NULL WHERE id = $a AND state = 'at the bench'", id);
        Record(now, "cut ticket", id, "cut-finished", "at the bench", "cut");
        Run("INSERT INTO requests (key, at, answer) VALUES ($a, $b, $c)", key, now, "");
        transaction.Commit();
    }

    private void Record(string now, string subject, object id, string what, string before, string after) => Run(
        "INSERT INTO history (at, actor_id, subject, subject_id, what, before, after, details, cause, reason) VALUES ($a, 1, $b, $c, $d, $e, $f, '{}', '', '')",
        now, subject, id, what, before, after);

    private SqliteTransaction Begin() => _transaction = _connection.BeginTransaction(deferred: false);

    private void Run(string sql, params object[] values) => Prepared(sql, values).ExecuteNonQuery();

    private object[]? Row(string sql, params object[] values)
    {
        using var reader = Prepared(sql, values).ExecuteReader();
        if (!reader.Read())
            return null;
        var row = new object[reader.FieldCount];
        reader.GetValues(row);
        return row;
    }

    private SqliteCommand Prepared(string sql, object[] values)
    {
        if (!_commands.TryGetValue(sql, out var command))
        {
            command = _connection.CreateCommand();
#pragma warning disable CA2100 // The texts are this file's own.
            command.CommandText = sql;
#pragma warning restore CA2100
            for (var i = 0; i < values.Length; i++)
                command.Parameters.Add(new SqliteParameter($"${(char)('a' + i)}", values[i]));
            _commands.Add(sql, command);
        }
        command.Transaction = _transaction;
        for (var i = 0; i < values.Length; i++)
            command.Parameters[i].Value = values[i];
        return command;
    }
}
