namespace CutShop.Testing.Stores;

/// <summary>Fills a shop with planned tickets by plain SQL, far quicker than taking jobs in and planning them.</summary>
public static class ManyTickets
{
    /// <summary>Into an empty shop, tickets of 10 in each, shared out over coils that have rope for all of theirs, by an accepted plan.</summary>
    public static Task<int> FillAsync(ShopDatabase database, int tickets, int coils, CancellationToken cancel) => database.WriteAsync(
        session =>
        {
            var inch = Length.Inch.Nanometres;
            var whole = (tickets / coils + 1) * 11 * inch;
            session.Execute("INSERT INTO jobs (number, customer, one_lot, job_file, taken_in_at, released_at) VALUES ('LQ-1', '', 0, '{}', @Now, @Now)", new { session.Now });
            session.Execute(
                """
                INSERT INTO cut_plans (material, diameter_nm, construction, state, made_at, made_by, kerf_nm, squaring_nm, first_trim_nm, keep_nm, proof)
                VALUES ('polypropylene', 38100000, 'three-strand', 'accepted', @Now, 'Ada', 0, 0, 0, 1, '')
                """,
                new { session.Now });
            for (var i = 1; i <= coils; i++)
            {
                session.Execute(
                    """
                    INSERT INTO coils (mark, material, diameter_nm, construction, lot, place, whole_nm, left_nm, state, came_at)
                    VALUES ('K' || @i, 'polypropylene', 38100000, 'three-strand', 'L1', '', @whole, @whole, 'in stock', @Now)
                    """,
                    new { i, whole, session.Now });
                session.Execute("INSERT INTO plan_coils (plan_id, position, coil_id, left_before_nm, rest_nm) VALUES (1, @i, @i, @whole, 0)", new { i, whole });
            }
            for (var i = 1; i <= tickets; i++)
            {
                session.Execute(
                    "INSERT INTO pieces (job_id, position, run, code, material, diameter_nm, cut_nm) VALUES (1, @i, 'A-' || @i, @code, 'polypropylene', 38100000, @cut)",
                    new { i, code = PieceCode.Draw(), cut = 10 * inch });
                session.Execute(
                    "INSERT INTO plan_cuts (plan_coil_id, position, piece_id, from_nm, to_nm) VALUES (@coil, @place, @i, 0, 1)",
                    new { i, coil = (i - 1) % coils + 1, place = i / coils });
            }
            session.Execute("INSERT INTO cut_tickets (piece_id, state) SELECT id, 'waiting' FROM pieces ORDER BY id");
            session.Execute("UPDATE cut_tickets SET plan_coil_id = plan_cuts.plan_coil_id FROM plan_cuts WHERE plan_cuts.piece_id = cut_tickets.piece_id");
            // A server counts its rows by itself a minute later.
            return database.IsFile ? 0 : session.Execute("ANALYZE jobs, cut_plans, coils, plan_coils, pieces, plan_cuts, cut_tickets");
        },
        cancel);
}
