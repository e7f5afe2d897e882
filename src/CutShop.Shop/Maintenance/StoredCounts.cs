using CutShop.Shop.Store;
using CutShop.Shop.Tickets;

namespace CutShop.Shop.Maintenance;

/// <summary>Whether what jobs and tickets carry to be found quickly is what it is counted or copied from.</summary>
internal static class StoredCounts
{
    public static IEnumerable<CheckFinding> Of(ShopSession session) => [.. WorkLeft(session), .. DueDays(session)];

    private static IEnumerable<CheckFinding> WorkLeft(ShopSession session) => session.All<(string Number, long Kept, long Counted)>(
        $"""
        SELECT number, work_left, counted FROM (
          SELECT number, work_left,
            (SELECT count(*) FROM pieces JOIN cut_tickets ON piece_id = pieces.id WHERE job_id = jobs.id AND state IN ({TicketStates.ToDo})) +
            (SELECT count(*) FROM posts JOIN drill_tickets ON post_id = posts.id WHERE job_id = jobs.id AND state IN ({TicketStates.ToDrill})) AS counted
          FROM jobs) AS counts
        WHERE work_left <> counted ORDER BY number
        """).Select(job => CheckFinding.Of(StoreReplies.Say("Job", job.Number), "WorkLeft", job.Kept, job.Counted));

    private static IEnumerable<CheckFinding> DueDays(ShopSession session) => session.All<(string Number, string Kind, string Name, string Kept, string Due)>(
        """
        SELECT number, kind, name, queue_due, due FROM (
          SELECT number, 'Piece' AS kind, run AS name, queue_due, coalesce(due, '9999-12-31') AS due
          FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id
          UNION ALL
          SELECT number, 'Post', mark, queue_due, coalesce(due, '9999-12-31')
          FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id) AS days
        WHERE queue_due <> due ORDER BY number, kind, name
        """).Select(ticket => CheckFinding.Of(StoreReplies.Say("Job", ticket.Number), "QueueDay", StoreReplies.Say(ticket.Kind, ticket.Name), ticket.Kept, ticket.Due));
}
