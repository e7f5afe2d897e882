using CutShop.Shop.Store;
using CutShop.Shop.Tickets;

namespace CutShop.Shop.Benches;

/// <summary>Adds up how the shop stands.</summary>
public sealed class ShopBoard(ShopDatabase database)
{
    private const int HoursShown = 24;
    private const int MostMishaps = 50;

    /// <summary>How far back rope, re-cuts and damages are counted.</summary>
    public static TimeSpan Window { get; } = TimeSpan.FromDays(7);

    /// <summary>A number that changes with every change in the shop.</summary>
    public long Stamp() => database.Read(Stamp);

    /// <summary>How the shop stands now.</summary>
    public BoardFigures Now() => database.Read(session =>
    {
        var since = session.Now - Window;
        return new BoardFigures(
            Jobs(session, since),
            Lots(session, since),
            Hours(session),
            Mishaps(session, since, "re_cuts", "cut_tickets", "piece_id", "pieces", "run"),
            Mishaps(session, since, "damages", "drill_tickets", "post_id", "posts", "mark"),
            Stamp(session));
    });

    private static long Stamp(ShopSession session) => session.Value<long>("SELECT coalesce(max(id), 0) FROM history");

    private static List<BoardJob> Jobs(ShopSession session, DateTimeOffset since) =>
        [.. session.All<BoardJob>(
            $"""
            WITH shown AS (
              SELECT job_id FROM cut_tickets JOIN pieces ON pieces.id = piece_id WHERE cut_tickets.state IN ({TicketStates.ToDo}, '{TicketStates.Cut}')
              UNION SELECT job_id FROM cut_tickets JOIN pieces ON pieces.id = piece_id WHERE packed_at >= @since
              UNION SELECT job_id FROM drill_tickets JOIN posts ON posts.id = post_id WHERE drill_tickets.state IN ({TicketStates.ToDrill}))
            SELECT number AS job, due, coalesce(waiting, 0) AS waiting, coalesce(at_the_bench, 0) AS at_the_bench, coalesce(cut, 0) AS cut, coalesce(packed, 0) AS packed,
              coalesce(posts_waiting, 0) AS posts_waiting, coalesce(posts_at_the_bench, 0) AS posts_at_the_bench, coalesce(drilled, 0) AS drilled
            FROM jobs
            LEFT JOIN (SELECT job_id,
                         count(*) FILTER (WHERE state = '{TicketStates.Waiting}') AS waiting,
                         count(*) FILTER (WHERE state = '{TicketStates.AtTheBench}') AS at_the_bench,
                         count(*) FILTER (WHERE state = '{TicketStates.Cut}') AS cut,
                         count(*) FILTER (WHERE state = '{TicketStates.Packed}') AS packed
                       FROM pieces JOIN cut_tickets ON piece_id = pieces.id WHERE job_id IN (SELECT job_id FROM shown) AND dropped_at IS NULL GROUP BY job_id) AS rope ON rope.job_id = jobs.id
            LEFT JOIN (SELECT job_id,
                         count(*) FILTER (WHERE state IN ('{TicketStates.Waiting}', '{TicketStates.ReOrdered}')) AS posts_waiting,
                         count(*) FILTER (WHERE state = '{TicketStates.AtTheBench}') AS posts_at_the_bench,
                         count(*) FILTER (WHERE state = '{TicketStates.Drilled}') AS drilled
                       FROM posts JOIN drill_tickets ON post_id = posts.id WHERE job_id IN (SELECT job_id FROM shown) AND dropped_at IS NULL GROUP BY job_id) AS timber ON timber.job_id = jobs.id
            WHERE jobs.id IN (SELECT job_id FROM shown) AND {ReleasedJobs.Condition}
            ORDER BY due IS NULL, due, number
            """,
            new { since }).Select(job => job with { IsLate = job.Due < session.Today && !job.IsReady })];

    private static IReadOnlyList<BoardLot> Lots(ShopSession session, DateTimeOffset since) => session.All<BoardLot>(
        $"""
        SELECT {SqlTypes.RopeOf("used")} AS rope, lot, pieces, lost, scrap
        FROM (
          SELECT {RopeKind.Columns}, lot,
            CAST(coalesce(sum(nm) FILTER (WHERE kind = 'piece'), 0) AS bigint) AS pieces,
            CAST(coalesce(sum(nm) FILTER (WHERE kind IN ('kerf', 'trim', 'scrap')), 0) AS bigint) AS lost,
            CAST(coalesce(sum(nm) FILTER (WHERE kind = 'scrap'), 0) AS bigint) AS scrap
          FROM rope_uses JOIN coils ON coils.id = rope_uses.coil_id WHERE at >= @since
          GROUP BY {RopeKind.Columns}, lot) AS used
        WHERE pieces <> 0 OR lost <> 0 ORDER BY {RopeKind.Columns}, lot
        """,
        new { since });

    private static List<BoardHour> Hours(ShopSession session)
    {
        var now = session.Now.UtcDateTime;
        var first = new DateTimeOffset(now.Year, now.Month, now.Day, now.Hour, 0, 0, TimeSpan.Zero).AddHours(1 - HoursShown);
        var counts = session.All<(string Hour, long Pieces)>(
            "SELECT substr(cut_at, 1, 13) AS hour, count(*) FROM cut_tickets WHERE cut_at >= @first GROUP BY hour", new { first })
            .ToDictionary(row => row.Hour, row => row.Pieces);
        return [.. Enumerable.Range(0, HoursShown).Select(i => first.AddHours(i)).Select(hour =>
            new BoardHour(hour, counts.GetValueOrDefault(hour.UtcDateTime.ToString("yyyy-MM-dd'T'HH", System.Globalization.CultureInfo.InvariantCulture))))];
    }

    private static IReadOnlyList<BoardMishap> Mishaps(
        ShopSession session, DateTimeOffset since, string mishaps, string tickets, string key, string things, string name) => session.All<BoardMishap>(
        $"""
        SELECT at, who, number AS job, {name} AS what, reason
        FROM {mishaps} JOIN {tickets} ON {tickets}.id = ticket_id JOIN {things} ON {things}.id = {key} JOIN jobs ON jobs.id = job_id
        WHERE at >= @since ORDER BY at DESC LIMIT @MostMishaps
        """,
        new { since, MostMishaps });
}
