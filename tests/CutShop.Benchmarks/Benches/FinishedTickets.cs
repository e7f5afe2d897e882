namespace CutShop.Benchmarks.Benches;

/// <summary>Years of work already done: packed tickets with their history, their requests and their lines of rope.</summary>
internal static class FinishedTickets
{
    private const int Batch = 100_000;

    public static void Add(ShopDatabase database, int tickets)
    {
        for (var first = 0; first < tickets; first += Batch)
        {
            var from = 10_000_000 + first;
            database.WriteAsync(session =>
            {
                var values = new { from, to = from + Batch - 1, session.Now };
                const string Numbers = "WITH RECURSIVE n (i) AS (SELECT @from UNION ALL SELECT i + 1 FROM n WHERE i < @to) ";
                session.Execute(Numbers +
                    "INSERT INTO pieces (id, job_id, position, run, code, material, diameter_nm, cut_nm) SELECT i, 1, i, 'B-' || i, printf('%012d', i), 'polypropylene', 38100000, 254000000 FROM n", values);
                session.Execute(Numbers +
                    """
                    INSERT INTO cut_tickets (id, piece_id, state, plan_coil_id, steps, cut_coil_id, measured_nm, longest_nm, cut_by, cut_at, packed_at)
                    SELECT i, i, 'packed', i % 200 + 1, 4, i % 200 + 1, 254000000, 254000000, 'Cai', '2020-01-01T00:00:00.000Z', '2020-01-01T00:00:00.000Z' FROM n
                    """, values);
                session.Execute(Numbers + "INSERT INTO rope_uses (at, coil_id, ticket_id, kind, nm) SELECT '2020-01-01T00:00:00.000Z', i % 200 + 1, i, 'piece', 254000000 FROM n", values);
                session.Execute(Numbers +
                    """
                    INSERT INTO history (at, actor_id, subject, subject_id, what, before, after, details, cause, reason)
                    SELECT '2020-01-01T00:00:00.000Z', (SELECT min(id) FROM actors), 'cut ticket', i, 'cut-finished', 'at the bench', 'cut', '{}', '', '' FROM n
                    """, values);
                return session.Execute(Numbers + "INSERT INTO requests (key, at, answer) SELECT 'old ' || i, '2020-01-01T00:00:00.000Z', '' FROM n", values);
            }).GetAwaiter().GetResult();
        }
    }
}
