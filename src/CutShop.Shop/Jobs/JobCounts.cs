using CutShop.Shop.Tickets;

namespace CutShop.Shop.Jobs;

/// <summary>A job's state, and how far it has come, in pieces and posts. What a change has dropped does not count.</summary>
internal static class JobCounts
{
    /// <summary>SQL: a job's state as a word, of its columns released_at and cancelled_at.</summary>
    public const string State = "CASE WHEN cancelled_at IS NOT NULL THEN 'cancelled' WHEN released_at IS NULL THEN 'received' ELSE 'released' END";

    /// <summary>
    /// The columns pieces, pieces_left, posts and posts_left of a query over jobs; what is left is neither cut nor drilled. Tickets are
    /// looked at only where some can be left, since most jobs of a shop are done.
    /// </summary>
    /// <param name="job">The name that the query has for its jobs, with their id, work_left and cancelled_at.</param>
    public static string Of(string job) =>
        $"""
        (SELECT count(*) FROM pieces WHERE job_id = {job}.id AND dropped_at IS NULL) AS pieces,
        CASE WHEN {IsDone(job)} THEN 0 ELSE
          (SELECT count(*) FROM pieces JOIN cut_tickets ON piece_id = pieces.id
            WHERE job_id = {job}.id AND dropped_at IS NULL AND state NOT IN ({TicketStates.CutOrPacked})) END AS pieces_left,
        (SELECT count(*) FROM posts JOIN drill_tickets ON post_id = posts.id
          WHERE job_id = {job}.id AND dropped_at IS NULL) AS posts,
        CASE WHEN {IsDone(job)} THEN 0 ELSE
          (SELECT count(*) FROM posts JOIN drill_tickets ON post_id = posts.id
            WHERE job_id = {job}.id AND dropped_at IS NULL AND state <> '{TicketStates.Drilled}') END AS posts_left
        """;

    private static string IsDone(string job) => $"{job}.work_left = 0 AND {job}.cancelled_at IS NULL";
}
