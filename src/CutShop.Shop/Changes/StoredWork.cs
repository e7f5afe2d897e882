using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>A stored job with the rows and ticket states of its pieces and posts, as a change needs them.</summary>
internal sealed record StoredWork(
    long JobId, bool IsCancelled, string JobFile, JobTakeoff Takeoff, IReadOnlyList<PieceWork> Pieces, IReadOnlyList<PostWork> Posts)
{
    /// <summary>The job, or null where no job has this number.</summary>
    public static StoredWork? Find(ShopSession session, string number, ShopTables tables)
    {
        if (session.FirstOrDefault<JobRow>("SELECT id, job_file, cancelled_at FROM jobs WHERE number = @number", new { number }) is not { } row)
            return null;
        var job = StoredJobFile.Read(row.JobFile, $"job {number}");
        var takeoff = JobTakeoff.Of(job, tables);
        var pieces = session.All<WorkRow>(
            """
            SELECT pieces.id, run AS name, cut_tickets.id AS ticket_id, state
            FROM pieces JOIN cut_tickets ON piece_id = pieces.id WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position
            """,
            new { row.Id }).ToDictionary(piece => piece.Name);
        var posts = session.All<WorkRow>(
            """
            SELECT posts.id, mark AS name, coalesce(drill_tickets.id, 0) AS ticket_id, coalesce(state, '') AS state
            FROM posts LEFT JOIN drill_tickets ON post_id = posts.id WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position
            """,
            new { row.Id }).ToDictionary(post => post.Name);
        return new(
            row.Id,
            row.CancelledAt is not null,
            row.JobFile,
            takeoff,
            [.. takeoff.Pieces.Select(piece => new PieceWork(piece, pieces[piece.Run].Id, pieces[piece.Run].TicketId, pieces[piece.Run].State))],
            [.. job.Posts.Select(post => new PostWork(post, posts[post.Mark].Id, posts[post.Mark].TicketId, posts[post.Mark].State))]);
    }

    private sealed record JobRow(long Id, string JobFile, DateTimeOffset? CancelledAt);

    private sealed record WorkRow(long Id, string Name, long TicketId, string State);
}

/// <summary>A stored piece with its ticket.</summary>
internal sealed record PieceWork(Piece Piece, long Id, long TicketId, string State)
{
    public string Run => Piece.Run;
}

/// <summary>A stored post with its ticket; the ticket's id is 0 where there is nothing to drill.</summary>
internal sealed record PostWork(Post Post, long Id, long TicketId, string State);
