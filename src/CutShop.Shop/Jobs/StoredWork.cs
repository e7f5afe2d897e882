using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Jobs;

/// <summary>A stored job as a change needs it: what it promised, and how far each ticket is.</summary>
internal sealed record StoredWork(
    long JobId, JobHead Head, bool IsCancelled, string JobFile, JobFrame Frame, IReadOnlyList<StoredPieceWork> Pieces, IReadOnlyList<StoredPostWork> Posts)
{
    /// <summary>The job, or null where no job has this number.</summary>
    public static StoredWork? Find(ShopSession session, string number)
    {
        if (session.FirstOrDefault<JobRow>("SELECT id, number, customer, due, one_lot, job_file, cancelled_at FROM jobs WHERE number = @number", new { number }) is not { } row)
            return null;
        var pieces = session.All<TicketRow>(
            """
            SELECT pieces.id, cut_tickets.id AS ticket_id, state, steps
            FROM pieces JOIN cut_tickets ON piece_id = pieces.id WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position
            """,
            new { row.Id });
        var posts = session.All<TicketRow>(
            """
            SELECT posts.id, coalesce(drill_tickets.id, 0) AS ticket_id, coalesce(state, '') AS state, coalesce(steps, 0) AS steps
            FROM posts LEFT JOIN drill_tickets ON post_id = posts.id WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position
            """,
            new { row.Id });
        return new(
            row.Id,
            new(row.Number, row.Customer, row.Due, row.OneLot),
            row.CancelledAt is not null,
            row.JobFile,
            StoredParts.Frame(session, row.Id),
            [.. StoredParts.PiecesOf(session, row.Id).Zip(pieces, (work, ticket) => new StoredPieceWork(work, ticket.Id, ticket.TicketId, ticket.State, ticket.Steps))],
            [.. StoredParts.PostsOf(session, row.Id).Zip(posts, (work, ticket) => new StoredPostWork(work, ticket.Id, ticket.TicketId, ticket.State, ticket.Steps))]);
    }

    /// <summary>What these tables and today's rules make of the job's file, or null where they do not accept it.</summary>
    public JobTakeoff? TakeoffBy(ShopTables tables) => JobFileReader.Find(JobFile) is { } job ? JobTakeoff.Of(job, tables) : null;

    private sealed record JobRow(long Id, string Number, string Customer, DateOnly? Due, bool OneLot, string JobFile, DateTimeOffset? CancelledAt);

    private sealed record TicketRow(long Id, long TicketId, string State, long Steps);
}

/// <summary>A stored piece with its ticket.</summary>
internal sealed record StoredPieceWork(PieceWork Work, long Id, long TicketId, string State, long Steps)
{
    /// <summary>True where it is off its coil, also while it is still at the bench.</summary>
    public bool IsMade => TicketStates.IsMade(State) || (State == TicketStates.AtTheBench && Steps >= (int)CutStep.Cut);
}

/// <summary>A stored post with its ticket; the ticket's id is 0 where there is nothing to drill.</summary>
internal sealed record StoredPostWork(PostWork Work, long Id, long TicketId, string State, long Steps)
{
    /// <summary>True where it has a hole, also while it is still at the bench.</summary>
    public bool IsMade => TicketStates.IsMade(State) || (State == TicketStates.AtTheBench && Steps > 0);
}
