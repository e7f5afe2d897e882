using CutShop.Shop.Benches;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;

namespace CutShop.Shop.Jobs;

/// <summary>How releasing or cancelling a job, or the way back from either, went.</summary>
public enum ReleaseOutcome
{
    /// <summary>It is done.</summary>
    Done,

    /// <summary>It had been done before; nothing changed.</summary>
    DoneBefore,

    /// <summary>There is no such job.</summary>
    NoSuchJob,

    /// <summary>The job was cancelled, so it cannot be released.</summary>
    Cancelled,

    /// <summary>Something of it is at a bench or made, so its release stays.</summary>
    Begun,

    /// <summary>A reason is wanted, 1 to 200 characters.</summary>
    NoReason,
}

/// <summary>What a job has in the shop, to look at before it is cancelled.</summary>
/// <param name="Waiting">Pieces not cut.</param>
/// <param name="Cut">Pieces cut.</param>
/// <param name="ToDrill">Posts not drilled.</param>
/// <param name="Drilled">Posts drilled.</param>
public sealed record WorkDone(long Waiting, long Cut, long ToDrill, long Drilled);

/// <summary>Releases jobs to the shop and cancels them, and takes either back.</summary>
public sealed class JobRelease(ShopDatabase database)
{
    /// <summary>Releases a received job, so that its tickets count at the benches and in plans. Safe to send twice.</summary>
    public Task<ReleaseOutcome> ReleaseAsync(string number, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => Release(session, number, who), cancel);

    /// <summary>
    /// Takes a release back while nothing of the job is at a bench or made: the benches no longer see it, and its places in an accepted plan
    /// stay for when it is released again. Safe to send twice.
    /// </summary>
    public Task<ReleaseOutcome> TakeBackAsync(string number, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => TakeBack(session, number, who), cancel);

    /// <summary>
    /// Takes a cancelled job up again, received or released as it was. What waited waits again, without a place on a coil; what was made
    /// counts again where it is still there; a piece that was hung up as an offcut or scrapped meanwhile is to be cut anew. Safe to send twice.
    /// </summary>
    public Task<ReleaseOutcome> TakeUpAgainAsync(string number, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => TakeUpAgain(session, number, who), cancel);

    /// <summary>True where a job is released and nothing of it is at a bench or made, so that its release can be taken back.</summary>
    public bool CanTakeBack(string number) =>
        database.Read(session => Find(session, number) is { ReleasedAt: not null, CancelledAt: null } job && !IsBegun(session, job.Id));

    /// <summary>
    /// Cancels a job: what waits is cancelled, what was cut or drilled becomes surplus. Safe to send twice.
    /// </summary>
    public Task<ReleaseOutcome> CancelAsync(string number, string reason, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return database.WriteAsync(session => Cancel(session, number, reason.Trim(), who), cancel);
    }

    /// <summary>What a job has in the shop.</summary>
    public WorkDone WorkOf(string number) => database.Read(session => session.Value<WorkDone>(
        $"""
        SELECT count(*) FILTER (WHERE kind = 'cut' AND state IN ({TicketStates.ToDo})) AS waiting,
          count(*) FILTER (WHERE kind = 'cut' AND state IN ({TicketStates.CutOrPacked})) AS cut,
          count(*) FILTER (WHERE kind = 'drill' AND state IN ({TicketStates.ToDrill})) AS to_drill,
          count(*) FILTER (WHERE kind = 'drill' AND state = '{TicketStates.Drilled}') AS drilled
        FROM (
          SELECT 'cut' AS kind, state FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id WHERE number = @number
          UNION ALL
          SELECT 'drill', state FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id WHERE number = @number) AS work
        """,
        new { number }));

    private static ReleaseOutcome Release(ShopSession session, string number, string who)
    {
        if (Find(session, number) is not { } job)
            return ReleaseOutcome.NoSuchJob;
        if (job.CancelledAt is not null)
            return ReleaseOutcome.Cancelled;
        if (job.ReleasedAt is not null)
            return ReleaseOutcome.DoneBefore;
        session.Execute("UPDATE jobs SET released_at = @Now WHERE id = @Id", new { session.Now, job.Id });
        session.Record("job", job.Id, who, HistoryCodes.JobReleased, "received", "released");
        return ReleaseOutcome.Done;
    }

    private static ReleaseOutcome TakeBack(ShopSession session, string number, string who)
    {
        if (Find(session, number) is not { } job)
            return ReleaseOutcome.NoSuchJob;
        if (job.CancelledAt is not null)
            return ReleaseOutcome.Cancelled;
        if (job.ReleasedAt is null)
            return ReleaseOutcome.DoneBefore;
        if (IsBegun(session, job.Id))
            return ReleaseOutcome.Begun;
        session.Execute("UPDATE jobs SET released_at = NULL WHERE id = @Id", new { job.Id });
        session.Record("job", job.Id, who, HistoryCodes.JobReleaseTakenBack, "released", "received");
        return ReleaseOutcome.Done;
    }

    /// <summary>Also where a change took out what was begun.</summary>
    private static bool IsBegun(ShopSession session, long jobId) => session.Value<bool>(
        $"""
        SELECT EXISTS (SELECT 1 FROM cut_tickets JOIN pieces ON pieces.id = piece_id
            WHERE job_id = @jobId AND (state NOT IN ('{TicketStates.Waiting}', '{TicketStates.Cancelled}') OR steps > 0))
          OR EXISTS (SELECT 1 FROM drill_tickets JOIN posts ON posts.id = post_id
            WHERE job_id = @jobId AND (state NOT IN ('{TicketStates.Waiting}', '{TicketStates.Cancelled}') OR steps > 0))
        """,
        new { jobId });

    private static ReleaseOutcome TakeUpAgain(ShopSession session, string number, string who)
    {
        if (Find(session, number) is not { } job)
            return ReleaseOutcome.NoSuchJob;
        if (job.CancelledAt is null)
            return ReleaseOutcome.DoneBefore;
        var (waiting, made) = TicketReopening.OfJob(session, job.Id, who);
        session.Execute("UPDATE jobs SET cancelled_at = NULL WHERE id = @Id", new { job.Id });
        session.Record(
            "job", job.Id, who, HistoryCodes.JobTakenUpAgain, "cancelled", job.ReleasedAt is null ? "received" : "released", details: new { waiting, made });
        return ReleaseOutcome.Done;
    }

    private static ReleaseOutcome Cancel(ShopSession session, string number, string reason, string who)
    {
        if (Find(session, number) is not { } job)
            return ReleaseOutcome.NoSuchJob;
        if (job.CancelledAt is not null)
            return ReleaseOutcome.DoneBefore;
        if (BenchAnswer.NeedsReason(reason) is not null)
            return ReleaseOutcome.NoReason;
        TicketClosing.OfAllThatWait(session, job.Id, who, reason);
        var cutTickets = session.All<(long Id, string State)>(
            "SELECT cut_tickets.id, state FROM cut_tickets JOIN pieces ON pieces.id = piece_id WHERE job_id = @Id", new { job.Id });
        var drillTickets = session.All<(long Id, string State)>(
            "SELECT drill_tickets.id, state FROM drill_tickets JOIN posts ON posts.id = post_id WHERE job_id = @Id", new { job.Id });
        var counts = cutTickets.Sum(ticket => TicketClosing.OfPiece(session, ticket.Id, ticket.State, who, reason) == TicketStates.Surplus ? 1 : 0)
            + drillTickets.Sum(ticket => TicketClosing.OfPost(session, ticket.Id, ticket.State, who, reason) == TicketStates.Surplus ? 1 : 0);
        session.Execute("UPDATE jobs SET cancelled_at = @Now WHERE id = @Id", new { session.Now, job.Id });
        session.Record(
            "job",
            job.Id,
            who,
            HistoryCodes.JobCancelled,
            job.ReleasedAt is null ? "received" : "released",
            "cancelled",
            reason,
            details: new { surplus = counts });
        return ReleaseOutcome.Done;
    }

    private static JobRow? Find(ShopSession session, string number) =>
        session.FirstOrDefault<JobRow>("SELECT id, released_at, cancelled_at FROM jobs WHERE number = @number", new { number });

    private sealed record JobRow(long Id, DateTimeOffset? ReleasedAt, DateTimeOffset? CancelledAt);
}
