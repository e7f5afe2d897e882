namespace CutShop.Shop;

/// <summary>How far a job has come, in pieces and posts. What a change has dropped does not count.</summary>
internal static class JobCounts
{
    /// <summary>The columns pieces, cut, posts and drilled of a query over jobs.</summary>
    /// <param name="job">The SQL of the job's id.</param>
    public static string Of(string job) =>
        $"""
        (SELECT count(*) FROM pieces WHERE job_id = {job} AND dropped_at IS NULL) AS pieces,
        (SELECT count(*) FROM pieces JOIN cut_tickets ON piece_id = pieces.id
          WHERE job_id = {job} AND dropped_at IS NULL AND state IN ('cut', 'packed')) AS cut,
        (SELECT count(*) FROM posts JOIN drill_tickets ON post_id = posts.id
          WHERE job_id = {job} AND dropped_at IS NULL) AS posts,
        (SELECT count(*) FROM posts JOIN drill_tickets ON post_id = posts.id
          WHERE job_id = {job} AND dropped_at IS NULL AND state = 'drilled') AS drilled
        """;
}
