using System.Text.Json;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Jobs;

/// <summary>How taking a job in went.</summary>
public enum IntakeOutcome
{
    /// <summary>The job, its pieces, bores and tickets are stored.</summary>
    TakenIn,

    /// <summary>The very same job had been taken in before; nothing changed.</summary>
    HadItAlready,

    /// <summary>Another job has this number; nothing changed.</summary>
    NumberTaken,

    /// <summary>The request's key was used before for something else; nothing changed.</summary>
    KeyTaken,
}

/// <summary>The answer to a request that takes a job in.</summary>
/// <param name="Outcome">How it went.</param>
/// <param name="Number">The job's number.</param>
/// <param name="Pieces">Its pieces of rope.</param>
/// <param name="Bores">Its bores.</param>
public sealed record IntakeAnswer(IntakeOutcome Outcome, string Number, int Pieces, int Bores);

/// <summary>Takes jobs in.</summary>
public sealed class JobIntake(ShopDatabase database, ShopTables tables)
{
    private const int ReportEvery = 500;

    private readonly ShopTablesShelf _tables = new(database, tables);

    /// <summary>
    /// Stores a job with its pieces, bores and tickets and releases it to the shop, all or nothing. Safe to send twice: the
    /// same job again answers <see cref="IntakeOutcome.HadItAlready"/>.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="who">Who takes it in.</param>
    /// <param name="progress">Told how many pieces are stored.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<IntakeOutcome> TakeInAsync(Job job, string who, IProgress<int>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        var takeoff = JobTakeoff.Of(job, _tables.Current());
        return database.WriteAsync(session => TakeIn(session, takeoff, who, progress), cancel);
    }

    /// <summary>Takes a job in as <see cref="TakeInAsync"/> does, and tells its counts.</summary>
    public Task<IntakeAnswer> TakeInAnsweredAsync(Job job, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        var takeoff = JobTakeoff.Of(job, _tables.Current());
        return database.WriteAsync(session => Answered(session, takeoff, who), cancel);
    }

    /// <summary>
    /// Takes a job in under a key of the request's own: the same key with the same content gives the first answer again, as
    /// it was. A refusal is not kept: the same request may come again once it is put right.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="who">Who takes it in.</param>
    /// <param name="requestKey">The request's key.</param>
    /// <param name="fingerprint">A hash of the request's content.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<IntakeAnswer> TakeInOnceAsync(Job job, string who, string requestKey, string fingerprint, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        var takeoff = JobTakeoff.Of(job, _tables.Current());
        return database.WriteAsync(session => Once(session, requestKey, fingerprint, () => Answered(session, takeoff, who)), cancel);
    }

    private static IntakeAnswer Once(ShopSession session, string requestKey, string fingerprint, Func<IntakeAnswer> takeIn) => RequestLog.Once(
        session,
        requestKey,
        takeIn,
        answer => answer.Outcome == IntakeOutcome.NumberTaken ? null : JsonSerializer.Serialize(new KeptAnswer(fingerprint, answer)),
        text =>
        {
            var kept = JsonSerializer.Deserialize<KeptAnswer>(text)!;
            return kept.Fingerprint == fingerprint ? kept.Answer : kept.Answer with { Outcome = IntakeOutcome.KeyTaken };
        });

    /// <summary>The counts are of what is stored: of a job that was there, by the rules of the day it came.</summary>
    private static IntakeAnswer Answered(ShopSession session, JobTakeoff takeoff, string who)
    {
        var number = takeoff.Job.Number;
        var outcome = TakeIn(session, takeoff, who, progress: null);
        if (outcome != IntakeOutcome.HadItAlready)
            return new(outcome, number, takeoff.Pieces.Count, takeoff.Bores.Count);
        var totals = StoredParts.Frame(session, session.Value<long>("SELECT id FROM jobs WHERE number = @number", new { number })).Totals;
        return new(outcome, number, totals.Pieces, totals.Bores);
    }

    private static IntakeOutcome TakeIn(ShopSession session, JobTakeoff takeoff, string who, IProgress<int>? progress) =>
        Store(session, takeoff, who, releasedAt: session.Now, progress);

    /// <summary>Stores a job that is yet to be released to the shop.</summary>
    internal static IntakeOutcome Receive(ShopSession session, JobTakeoff takeoff, string who) =>
        Store(session, takeoff, who, releasedAt: null, progress: null);

    /// <summary>The one way in.</summary>
    private static IntakeOutcome Store(ShopSession session, JobTakeoff takeoff, string who, DateTimeOffset? releasedAt, IProgress<int>? progress)
    {
        var job = takeoff.Job;
        if (session.FirstOrDefault<string>("SELECT job_file FROM jobs WHERE number = @Number", new { job.Number }) is { } stored)
            return JobFileReader.IsOf(stored, job) ? IntakeOutcome.HadItAlready : IntakeOutcome.NumberTaken;

        var jobId = session.Insert(
            """
            INSERT INTO jobs (number, customer, due, one_lot, job_file, taken_in_at, released_at)
            VALUES (@Number, @Customer, @Due, @OneLot, @file, @Now, @releasedAt)
            """,
            new { job.Number, job.Customer, job.Due, job.OneLot, file = JobFileWriter.Write(job), session.Now, releasedAt });
        StoredParts.Put(session, jobId, JobFrame.Of(takeoff));
        foreach (var (position, work) in PieceWork.Of(takeoff).Index())
        {
            InsertPiece(session, jobId, position, work);
            if ((position + 1) % ReportEvery == 0)
                progress?.Report(position + 1);
        }
        progress?.Report(takeoff.Pieces.Count);
        foreach (var (position, work) in PostWork.Of(takeoff).Index())
            InsertPost(session, jobId, position, work);
        InsertTickets(session, jobId);
        session.Record(
            "job",
            jobId,
            who,
            releasedAt is null ? HistoryCodes.JobReceived : HistoryCodes.JobTakenIn,
            after: releasedAt is null ? "received" : "released",
            details: new { pieces = takeoff.Pieces.Count, bores = takeoff.Bores.Count });
        session.Count(ShopCount.JobTakenIn);
        return IntakeOutcome.TakenIn;
    }

    /// <summary>Stores a piece with its part; it has no ticket yet.</summary>
    internal static void InsertPiece(ShopSession session, long jobId, int position, PieceWork work)
    {
        var (piece, kind) = (work.Piece, RopeKind.Of(work.Piece));
        var id = session.Insert(
            $"""
            INSERT INTO pieces (job_id, position, run, code, {RopeKind.Columns}, cut_nm)
            VALUES (@jobId, @position, @Run, @code, {RopeKind.Values}, @Cut)
            """,
            new
            {
                jobId,
                position,
                piece.Run,
                code = PieceCode.Draw(),
                kind.MaterialName,
                kind.Diameter,
                kind.Construction,
                kind.Colour,
                kind.IsPreshrunk,
                piece.Cut,
            });
        StoredParts.Put(session, id, work);
    }

    /// <summary>Stores a post with its part; it has no ticket yet.</summary>
    /// <returns>The post's id.</returns>
    internal static long InsertPost(ShopSession session, long jobId, int position, PostWork work)
    {
        var id = session.Insert(
            "INSERT INTO posts (job_id, position, mark) VALUES (@jobId, @position, @Mark)", new { jobId, position, work.Post.Mark });
        StoredParts.Put(session, id, work);
        return id;
    }

    /// <summary>
    /// Gives tickets to all that is stored of a job and has none: to each piece, and to each post that the shop drills. A statement for each kind, because the
    /// job's own row counts them: changed a thousand times in one transaction, it would be a thousand rows to a server.
    /// </summary>
    internal static void InsertTickets(ShopSession session, long jobId)
    {
        session.Execute(
            $"""
            INSERT INTO cut_tickets (piece_id, state)
            SELECT id, '{TicketStates.Waiting}' FROM pieces
            WHERE job_id = @jobId AND NOT EXISTS (SELECT 1 FROM cut_tickets WHERE piece_id = pieces.id) ORDER BY position
            """,
            new { jobId });
        session.Execute(
            $"""
            INSERT INTO drill_tickets (post_id, state)
            SELECT id, '{TicketStates.Waiting}' FROM posts
            WHERE job_id = @jobId AND EXISTS (SELECT 1 FROM post_parts WHERE post_parts.post_id = posts.id AND drillings > 0)
              AND NOT EXISTS (SELECT 1 FROM drill_tickets WHERE post_id = posts.id) ORDER BY position
            """,
            new { jobId });
    }

    private sealed record KeptAnswer(string Fingerprint, IntakeAnswer Answer);
}
