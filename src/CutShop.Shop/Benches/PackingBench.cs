using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>Puts cut pieces into their job's parcel, one scan a piece.</summary>
public sealed class PackingBench(ShopDatabase database)
{
    /// <summary>A job's parcel, or null where there is no such job.</summary>
    public JobParcel? Find(string job) => database.Read(session =>
    {
        if (session.All<(long Id, DateOnly? Due, DateTimeOffset? CancelledAt)>(
            "SELECT id, due, cancelled_at FROM jobs WHERE number = @job", new { job }) is not [var row, ..])
            return null;
        return new JobParcel(
            job,
            row.Due,
            row.CancelledAt is not null,
            session.All<ParcelPiece>(
                """
                SELECT run, code, cut_nm AS cut, cut_tickets.state, measured_nm AS measured, lot
                FROM pieces JOIN cut_tickets ON piece_id = pieces.id LEFT JOIN coils ON coils.id = cut_coil_id AND measured_nm IS NOT NULL
                WHERE job_id = @Id AND dropped_at IS NULL ORDER BY pieces.position
                """,
                new { row.Id }),
            session.All<ParcelPost>(
                "SELECT mark, state FROM posts JOIN drill_tickets ON post_id = posts.id WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position", new { row.Id }));
    });

    /// <summary>Jobs with pieces that are not packed yet, the earliest due first.</summary>
    public IReadOnlyList<ParcelListed> Open(int most = 100) => database.Read(session => session.All<ParcelListed>(
        $"""
        SELECT number AS job, due, count(*) AS pieces,
          count(*) FILTER (WHERE state = '{TicketStates.Cut}') AS cut,
          count(*) FILTER (WHERE state = '{TicketStates.Packed}') AS packed
        FROM jobs JOIN pieces ON job_id = jobs.id JOIN cut_tickets ON piece_id = pieces.id
        WHERE jobs.id IN (
          SELECT job_id FROM cut_tickets AS open JOIN pieces AS open_piece ON open_piece.id = open.piece_id
          WHERE open.state IN ({TicketStates.ToDo}, '{TicketStates.Cut}'))
          AND pieces.dropped_at IS NULL AND {ReleasedJobs.Condition}
        GROUP BY jobs.id ORDER BY due IS NULL, due, number LIMIT @most
        """,
        new { most }));

    /// <summary>Packs a piece of a job.</summary>
    public Task<BenchAnswer> PackAsync(string job, PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) => work.Job == job ? Pack(session, work, who) : BenchReplies.Of("PieceOfAnotherJob", code, work.Job),
        cancel);

    /// <summary>Takes a piece out of its parcel again.</summary>
    public Task<BenchAnswer> UnpackAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code, requestKey, (session, work) => TicketStates.Unpack.Try(session, work.Id, who, ", packed_at = NULL"), cancel);

    private static Sentence? Pack(ShopSession session, CutWork work, string who)
    {
        if (TicketStates.Pack.Try(session, work.Id, who, ", packed_at = @now") is null)
            return null;
        return work.State == TicketStates.Packed
            ? BenchReplies.Of("InParcelAlready", work.Run)
            : BenchReplies.Of("PackOnceCut", work.Run, BenchReplies.State(work.State));
    }

    private Task<BenchAnswer> ForAsync(PieceCode code, string requestKey, Func<ShopSession, CutWork, Sentence?> work, CancellationToken cancel) =>
        database.WriteAsync(
            session => BenchAnswer.Once(
                session,
                requestKey,
                () => CutWork.Find(session, code) is { } found
                    ? BenchAnswer.Of(work(session, found), found.Job)
                    : BenchAnswer.Refused(BenchReplies.Of("NoSuchPiece", code))),
            cancel);
}
