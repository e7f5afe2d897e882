using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>Puts cut pieces into their job's parcel, one scan a piece, and the posts and screws that an installer needs with them.</summary>
public sealed class PackingBench(ShopDatabase database)
{
    private const string IsClosed = "EXISTS (SELECT 1 FROM closed_parcels WHERE closed_parcels.job_id = jobs.id)";

    /// <summary>A job's parcel, or null where there is no such job.</summary>
    public JobParcel? Find(string job) => database.Read(session => Find(session, job)?.Parcel);

    /// <summary>Jobs whose parcels are not closed or lack a piece, the earliest due first.</summary>
    public IReadOnlyList<ParcelListed> Open(int most = 100) => database.Read(session => session.All<ParcelListed>(
        $"""
        SELECT number AS job, due, count(*) AS pieces,
          count(*) FILTER (WHERE state = '{TicketStates.Cut}') AS cut,
          count(*) FILTER (WHERE state = '{TicketStates.Packed}') AS packed
        FROM jobs JOIN pieces ON job_id = jobs.id JOIN cut_tickets ON piece_id = pieces.id
        WHERE (NOT {IsClosed} OR jobs.id IN (
          SELECT job_id FROM cut_tickets AS open JOIN pieces AS open_piece ON open_piece.id = open.piece_id
          WHERE open.state IN ({TicketStates.ToDo}, '{TicketStates.Cut}')))
          AND pieces.dropped_at IS NULL AND {ReleasedJobs.Condition}
        GROUP BY jobs.id ORDER BY due IS NULL, due, number LIMIT @most
        """,
        new { most }));

    /// <summary>Packs a piece of a job.</summary>
    public Task<BenchAnswer> PackAsync(string job, PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) => work.Job == job ? Pack(session, code, work, who) : BenchReplies.Of("PieceOfAnotherJob", code, work.Job),
        cancel);

    /// <summary>Takes a piece out of its parcel again.</summary>
    public Task<BenchAnswer> UnpackAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) => TicketStates.Unpack.Try(session, work.Id, who, ", packed_at = NULL, parcel = NULL") ?? Opened(session, work.Job, who),
        cancel);

    /// <summary>Puts a drilled post into its job's parcel, or takes it out.</summary>
    public Task<BenchAnswer> PutPostAsync(string job, string mark, bool isIn, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        requestKey,
        (session, _, parcel) =>
        {
            if (parcel.Posts.FirstOrDefault(one => one.Mark == mark) is not { } post)
                return BenchReplies.Of("NoSuchPost", job, mark);
            if (isIn && !post.IsDrilled)
                return BenchReplies.Of("PutInOnceDrilled", mark, BenchReplies.State(post.State));
            if (isIn == post.IsIn)
                return BenchReplies.Of(isIn ? "InParcelAlready" : "NotInParcel", mark);
            session.Execute("UPDATE posts SET in_parcel_at = @at WHERE id = @Id", new { at = isIn ? session.Now : (DateTimeOffset?)null, post.Id });
            session.Record("drill ticket", post.Ticket, who, isIn ? HistoryCodes.PostPutIn : HistoryCodes.PostTakenOut);
            return Opened(session, job, who);
        },
        cancel);

    /// <summary>Puts a job's screws or hardware of one kind into its parcel, or takes them out.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="kind">The <see cref="ParcelScrews.Kind"/> or <see cref="ParcelHardware.Kind"/>.</param>
    /// <param name="isIn">True to put them in.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="requestKey">Sent twice it counts once.</param>
    /// <param name="cancel">Stops.</param>
    public Task<BenchAnswer> PutScrewsAsync(string job, string kind, bool isIn, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        requestKey,
        (session, id, parcel) =>
        {
            var (screws, hardware) = (parcel.Screws.FirstOrDefault(one => one.Kind == kind), parcel.Hardware.FirstOrDefault(one => one.Kind == kind));
            if ((screws?.Screw.InWords ?? hardware?.What.InWords) is not { } name)
                return BenchReplies.Of("NoSuchScrews", job);
            if (isIn == (screws?.IsIn ?? hardware!.IsIn))
                return BenchReplies.Of(isIn ? "InParcelAlready" : "NotInParcel", name);
            var needed = screws?.Needed ?? hardware!.Needed;
            session.Execute(
                isIn
                    ? """
                      INSERT INTO parcel_screws (job_id, screw, needed, in_at) VALUES (@id, @kind, @needed, @Now)
                      ON CONFLICT (job_id, screw) DO UPDATE SET needed = excluded.needed, in_at = excluded.in_at
                      """
                    : "DELETE FROM parcel_screws WHERE job_id = @id AND screw = @kind",
                new { id, kind, needed, session.Now });
            if (screws is not null)
                session.Record("job", id, who, isIn ? HistoryCodes.ScrewsPutIn : HistoryCodes.ScrewsTakenOut, details: new { screws = screws.All });
            else
                session.Record("job", id, who, isIn ? HistoryCodes.HardwarePutIn : HistoryCodes.HardwareTakenOut, details: new { hardware = needed });
            return Opened(session, job, who);
        },
        cancel);

    /// <summary>Begins a job's next parcel: what is put in from now on goes into it. The one before must not be empty.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="parcel">The number of the parcel that is left as it is, the last.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="requestKey">Sent twice it counts once.</param>
    /// <param name="cancel">Stops.</param>
    public Task<BenchAnswer> BeginParcelAsync(string job, int parcel, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        requestKey,
        (session, id, its) => its.Parcels != parcel || !its.In(parcel).Any()
            ? BenchReplies.Of("ParcelIsEmpty", its.Parcels)
            : Begun(session, id, parcel, parcel + 1, who, HistoryCodes.ParcelBegun, parcel + 1),
        cancel);

    /// <summary>Goes back to the parcel before the last, which was begun by mistake and is empty.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="parcel">The number of the last parcel.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="requestKey">Sent twice it counts once.</param>
    /// <param name="cancel">Stops.</param>
    public Task<BenchAnswer> TakeParcelBackAsync(string job, int parcel, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        requestKey,
        (session, id, its) => its.Parcels != parcel || parcel == 1 || its.In(parcel).Any()
            ? BenchReplies.Of("ParcelNotEmpty", parcel)
            : Begun(session, id, parcel, parcel - 1, who, HistoryCodes.ParcelTakenBack, parcel),
        cancel);

    /// <summary>Closes a job's parcel: it leaves the shop as it is. Every piece of rope must be in it.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="asItIs">True to close it without posts and screws that are not in it; otherwise they are asked for.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="requestKey">Sent twice it counts once.</param>
    /// <param name="cancel">Stops.</param>
    public Task<BenchAnswer> CloseAsync(string job, bool asItIs, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        requestKey,
        (session, id, parcel) =>
        {
            if (parcel.IsCancelled)
                return BenchReplies.Of("ParcelOfCancelled", job);
            if (!parcel.HasAllRope)
                return BenchReplies.Of("ParcelLacksPieces", parcel.Missing.Count());
            if (!asItIs && !parcel.IsComplete)
                return BenchReplies.Of("ParcelLacks", parcel.PostsOut.Count(), Without(parcel));
            if (session.Execute("INSERT INTO closed_parcels (job_id, closed_at) VALUES (@id, @Now) ON CONFLICT (job_id) DO NOTHING", new { id, session.Now }) == 1)
            {
                session.Record("job", id, who, HistoryCodes.ParcelClosed, details: new { posts = parcel.PostsOut.Count(), screws = Without(parcel) });
                ReSettings.CountFrom(session, id, ReSettings.Packed, who);
            }
            return null;
        },
        cancel);

    /// <summary>Kinds of screws and hardware that are not in it.</summary>
    private static int Without(JobParcel parcel) => parcel.ScrewsOut.Count() + parcel.HardwareOut.Count();

    private static Sentence? Begun(ShopSession session, long id, int seen, int parcels, string who, HistoryCode what, int parcel)
    {
        session.Execute("UPDATE jobs SET parcels = @parcels WHERE id = @id AND parcels = @seen", new { parcels, id, seen });
        session.Record("job", id, who, what, details: new { parcel });
        return null;
    }

    private static Sentence? Pack(ShopSession session, PieceCode code, CutWork work, string who)
    {
        if (work.State == TicketStates.Cut && OverLimit(session, work, code) is { } why)
            return why;
        if (TicketStates.Pack.Try(session, work.Id, who, ", packed_at = @now, parcel = (SELECT parcels FROM jobs WHERE number = @Job)", new { work.Job }) is null)
            return Opened(session, work.Job, who);
        return work.State == TicketStates.Packed
            ? BenchReplies.Of("InParcelAlready", work.Run)
            : BenchReplies.Of("PackOnceCut", work.Run, BenchReplies.State(work.State));
    }

    /// <summary>Why a cut piece does not go into its job's last parcel, or null.</summary>
    private static Sentence? OverLimit(ShopSession session, CutWork work, PieceCode code)
    {
        if (SendingSettingsShelf.Read(session).ParcelLb is not { } most)
            return null;
        var parcel = Find(session, work.Job)!.Value.Parcel;
        return parcel.Pieces.FirstOrDefault(piece => piece.Code == code) is { } heavy && parcel.IsTooHeavyWith(heavy)
            ? BenchReplies.Of("ParcelTooHeavy", work.Run, Pounds(heavy.WeightLb), parcel.Parcels, Pounds(parcel.WeightOf(parcel.Parcels) + heavy.WeightLb), most)
            : null;
    }

    private static string Pounds(double? pounds) => pounds!.Value.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>What goes in or out of a closed parcel opens it again.</summary>
    private static Sentence? Opened(ShopSession session, string job, string who)
    {
        var id = session.Value<long>("SELECT id FROM jobs WHERE number = @job", new { job });
        if (session.Execute("DELETE FROM closed_parcels WHERE job_id = @id", new { id }) == 1)
            session.Record("job", id, who, HistoryCodes.ParcelOpened);
        return null;
    }

    private static (long Id, JobParcel Parcel)? Find(ShopSession session, string job)
    {
        if (session.FirstOrDefault<JobRow>(
            """
            SELECT jobs.id, customer, due, cancelled_at, closed_at, parcels FROM jobs LEFT JOIN closed_parcels ON closed_parcels.job_id = jobs.id WHERE number = @job
            """,
            new { job }) is not { } row)
            return null;
        var works = StoredParts.PiecesOf(session, row.Id);
        var screws = works.SelectMany(work => work.Fixings).Where(fixing => !fixing.IsHardware).ToList();
        var isIn = session.All<(string Kind, long Needed)>("SELECT screw, needed FROM parcel_screws WHERE job_id = @Id", new { row.Id }).ToHashSet();
        return (row.Id, new JobParcel(
            job,
            row.Customer,
            row.Due,
            row.CancelledAt is not null,
            row.ClosedAt,
            [.. session.All<ParcelPiece>(
                """
                SELECT run, code, cut_nm AS cut, cut_tickets.state, measured_nm AS measured, lot, parcel
                FROM pieces JOIN cut_tickets ON piece_id = pieces.id LEFT JOIN coils ON coils.id = cut_coil_id AND measured_nm IS NOT NULL
                WHERE job_id = @Id AND dropped_at IS NULL ORDER BY pieces.position
                """,
                new { row.Id }).Zip(works, (piece, work) => piece with { WeightLb = work.Piece.WeightLb * ((piece.Measured ?? piece.Cut).Inches / piece.Cut.Inches) })],
            session.All<ParcelPost>(
                """
                SELECT posts.id, drill_tickets.id AS ticket, mark, state, drilled_at, in_parcel_at
                FROM posts JOIN drill_tickets ON post_id = posts.id WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position
                """,
                new { row.Id }),
            ScrewsOf(session, screws, isIn),
            [.. Hardware.Of(works.Select(work => work.Piece)).Select(kind => new ParcelHardware(kind.What, kind.Count, isIn.Contains((ParcelHardware.KindOf(kind.What), kind.Count))))],
            screws.Where(fixing => fixing.Screw is null).Sum(fixing => fixing.Count))
        {
            Parcels = (int)row.Parcels,
            MostLb = SendingSettingsShelf.Read(session).ParcelLb,
        });
    }

    private static List<ParcelScrews> ScrewsOf(ShopSession session, IEnumerable<Fixing> fixings, HashSet<(string Kind, long Needed)> isIn)
    {
        var percent = BenchSettingsShelf.Read(session).SpareScrews;
        return
        [
            .. fixings.Where(fixing => fixing.Screw is not null).GroupBy(fixing => fixing.Screw!, fixing => fixing.Count)
                .Select(kind => (Screw: kind.Key, Needed: kind.Sum()))
                .OrderBy(kind => ParcelScrews.KindOf(kind.Screw), StringComparer.Ordinal)
                .Select(kind => new ParcelScrews(
                    kind.Screw, kind.Needed, ParcelScrews.SpareOf(kind.Needed, percent), isIn.Contains((ParcelScrews.KindOf(kind.Screw), kind.Needed)))),
        ];
    }

    private Task<BenchAnswer> ForAsync(string job, string requestKey, Func<ShopSession, long, JobParcel, Sentence?> work, CancellationToken cancel) =>
        database.WriteAsync(
            session => BenchAnswer.Once(
                session,
                requestKey,
                () => Find(session, job) is var (id, parcel)
                    ? BenchAnswer.Of(work(session, id, parcel), job)
                    : BenchAnswer.Refused(BenchReplies.Of("NoSuchJob", job))),
            cancel);

    private Task<BenchAnswer> ForAsync(PieceCode code, string requestKey, Func<ShopSession, CutWork, Sentence?> work, CancellationToken cancel) =>
        database.WriteAsync(
            session => BenchAnswer.Once(
                session,
                requestKey,
                () => CutWork.Find(session, code) is { } found
                    ? BenchAnswer.Of(work(session, found), found.Job)
                    : BenchAnswer.Refused(BenchReplies.Of("NoSuchPiece", code))),
            cancel);

    private sealed record JobRow(long Id, string Customer, DateOnly? Due, DateTimeOffset? CancelledAt, DateTimeOffset? ClosedAt, long Parcels);
}
