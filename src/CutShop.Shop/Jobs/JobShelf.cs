using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Jobs;

/// <summary>Finds stored jobs, from their parts as they were stored: nothing is worked out again.</summary>
public sealed class JobShelf(ShopDatabase database)
{
    private const string Columns = "SELECT jobs.id, number, customer, due, one_lot, taken_in_at, released_at, cancelled_at FROM jobs";

    private const string Pieces =
        """
        SELECT run, code, cut_nm AS cut, cut_tickets.state, coils.mark AS coil, coils.lot, plan_id AS plan, plan_cuts.position, from_nm AS mark_from, to_nm AS mark_to,
          dropped_at, CAST(CASE WHEN installations.state = 'installed' THEN 1 ELSE 0 END AS bigint) AS installed
        FROM pieces JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
        LEFT JOIN installations ON installations.piece_id = pieces.id
        LEFT JOIN plan_coils ON plan_coils.id = cut_tickets.plan_coil_id
        LEFT JOIN plan_cuts ON plan_cuts.plan_coil_id = plan_coils.id AND plan_cuts.piece_id = pieces.id
        LEFT JOIN coils ON coils.id = plan_coils.coil_id
        """;

    /// <summary>A job by its number, or null.</summary>
    /// <exception cref="DamagedPartException">A part of it cannot be read.</exception>
    public StoredJob? Find(string number) =>
        database.Read(session => session.FirstOrDefault<JobRow>(Columns + " WHERE number = @number", new { number }) is { } row
            ? Load(session, row)
            : null);

    /// <summary>The job of the piece with this code, or null.</summary>
    /// <inheritdoc cref="Find(string)"/>
    public StoredJob? Find(PieceCode code) =>
        database.Read(session => session.FirstOrDefault<JobRow>(Columns + " JOIN pieces ON job_id = jobs.id WHERE code = @code", new { code }) is { } row
            ? Load(session, row)
            : null);

    /// <summary>What the cut ticket of a piece says, also after a change took the piece out; null where there is no such piece.</summary>
    /// <exception cref="DamagedPartException">It cannot be read.</exception>
    public PieceTicket? Ticket(PieceCode code) => database.Read(session =>
        session.FirstOrDefault<long?>("SELECT id FROM pieces WHERE code = @code", new { code }) is { } id
            ? new PieceTicket(
                Head(session, "id = (SELECT job_id FROM pieces WHERE id = @id)", new { id })!,
                session.FirstOrDefault<PieceRow>(Pieces + " WHERE pieces.id = @id", new { id })!.ToPiece(),
                StoredParts.Piece(session, id))
            : null);

    /// <summary>What a job is called by, or null where there is no such job.</summary>
    public JobHead? Head(string number) => database.Read(session => Head(session, "number = @number", new { number }));

    /// <summary>True where the job is released to the shop; what is printed of another says so.</summary>
    public bool IsReleased(string number) =>
        database.Read(session => session.Value<bool>("SELECT EXISTS (SELECT 1 FROM jobs WHERE number = @number AND released_at IS NOT NULL)", new { number }));

    /// <summary>A job as it was ordered, for a draft of it; null where there is no such job, or today's rules do not accept its file.</summary>
    public Job? AsOrdered(string number) => database.Read(session =>
        session.FirstOrDefault<string>("SELECT job_file FROM jobs WHERE number = @number", new { number }) is { } file ? JobFileReader.Find(file) : null);

    /// <summary>What happened to the job as a whole, in words, the newest first: who received, released, changed or cancelled it. None where there is no such job.</summary>
    public IReadOnlyList<HistoryLine> History(string number) => database.Read(session => session.All<HistoryEntry>(
        $"""
        SELECT {HistoryEntry.Columns} FROM history
        WHERE subject = 'job' AND subject_id = (SELECT id FROM jobs WHERE number = @number) ORDER BY history.id DESC
        """,
        new { number }).Select(entry => entry.InWords()).ToList());

    private static string CancelReason(ShopSession session, long jobId) => session.FirstOrDefault<string>(
        "SELECT reason FROM history WHERE subject = 'job' AND subject_id = @jobId AND what = @code ORDER BY id DESC LIMIT 1",
        new { jobId, code = HistoryCodes.JobCancelled.Code }) ?? "";

    private static JobHead? Head(ShopSession session, string condition, object values) =>
        session.FirstOrDefault<JobHead>($"SELECT number, customer, due, one_lot FROM jobs WHERE {condition}", values);

    private static StoredJob Load(ShopSession session, JobRow row)
    {
        var posts = StoredParts.PostsOf(session, row.Id);
        var takeoff = StoredParts.Frame(session, row.Id).ToTakeoff(new(row.Number, row.Customer, row.Due, row.OneLot), StoredParts.PiecesOf(session, row.Id), posts);
        var all = session.All<PieceRow>(
            $"{Pieces} WHERE job_id = @Id ORDER BY pieces.position",
            new { row.Id });
        return new(takeoff, [.. all.Where(piece => piece.DroppedAt is null).Select(piece => piece.ToPiece())], row.TakenInAt)
        {
            IsForSalt = SendingSettingsShelf.Read(session).IsForSalt,
            ReleasedAt = row.ReleasedAt,
            CancelledAt = row.CancelledAt,
            CancelReason = row.CancelledAt is null ? "" : CancelReason(session, row.Id),
            SitePosts = posts.Any(work => work.IsForSite) ? SitePost.Of(posts, BoredOnSite.Of(session, row.Id)) : [],
            Dropped = [.. all.Where(piece => piece.DroppedAt is not null).Select(piece => piece.ToPiece())],
        };
    }

    private sealed record JobRow(
        long Id, string Number, string Customer, DateOnly? Due, bool OneLot, DateTimeOffset TakenInAt, DateTimeOffset? ReleasedAt, DateTimeOffset? CancelledAt);

    private sealed record PieceRow(
        string Run, PieceCode Code, Length Cut, string State, string? Coil, string? Lot, long? Plan, long? Position, Length? MarkFrom, Length? MarkTo, DateTimeOffset? DroppedAt, bool Installed)
    {
        public StoredPiece ToPiece() => new(
            Run,
            Code,
            Cut,
            State,
            Coil is null ? null : new PiecePlace(Coil, Lot!, (int)Position! + 1, MarkFrom!.Value, MarkTo!.Value) { Plan = Plan!.Value })
        {
            IsInstalled = Installed,
        };
    }
}
