using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>Finds stored jobs.</summary>
public sealed class JobShelf(ShopDatabase database, ShopTables tables)
{
    private const string Columns = "SELECT jobs.id, jobs.version, taken_in_at, released_at, cancelled_at FROM jobs";

    /// <summary>The takeoffs of stored jobs.</summary>
    internal KeptTakeoffs Takeoffs { get; } = new(new ShopTablesShelf(database, tables));

    /// <summary>A job by its number, or null.</summary>
    public StoredJob? Find(string number) =>
        database.Read(session => session.FirstOrDefault<JobRow>(Columns + " WHERE number = @number", new { number }) is { } row
            ? Load(session, row)
            : null);

    /// <summary>The job of the piece with this code, or null.</summary>
    public StoredJob? Find(PieceCode code) =>
        database.Read(session => session.FirstOrDefault<JobRow>(Columns + " JOIN pieces ON job_id = jobs.id WHERE code = @code", new { code }) is { } row
            ? Load(session, row)
            : null);

    private StoredJob Load(ShopSession session, JobRow row)
    {
        var takeoff = Takeoffs.Of(session, row.Id, row.Version);
        var all = session.All<PieceRow>(
            """
            SELECT run, code, cut_nm AS cut, cut_tickets.state, coils.mark AS coil, coils.lot, plan_id AS plan, plan_cuts.position, from_nm AS mark_from, to_nm AS mark_to,
              dropped_at, CAST(CASE WHEN installations.state = 'installed' THEN 1 ELSE 0 END AS bigint) AS installed
            FROM pieces JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
            LEFT JOIN installations ON installations.piece_id = pieces.id
            LEFT JOIN plan_coils ON plan_coils.id = cut_tickets.plan_coil_id
            LEFT JOIN plan_cuts ON plan_cuts.plan_coil_id = plan_coils.id AND plan_cuts.piece_id = pieces.id
            LEFT JOIN coils ON coils.id = plan_coils.coil_id
            WHERE job_id = @Id ORDER BY pieces.position
            """,
            new { row.Id });
        var pieces = all.Where(piece => piece.DroppedAt is null).ToList();
        TicketedLengths.Check(takeoff.Job.Number, pieces.Select(piece => (piece.Run, piece.Cut)), takeoff.Pieces);
        return new(takeoff, [.. pieces.Select(piece => piece.ToPiece())], row.TakenInAt)
        {
            ReleasedAt = row.ReleasedAt,
            CancelledAt = row.CancelledAt,
            Dropped = [.. all.Where(piece => piece.DroppedAt is not null).Select(piece => piece.ToPiece())],
        };
    }

    private sealed record JobRow(long Id, long Version, DateTimeOffset TakenInAt, DateTimeOffset? ReleasedAt, DateTimeOffset? CancelledAt);

    private sealed record PieceRow(
        string Run, PieceCode Code, Length Cut, string State, string? Coil, string? Lot, long? Plan, long? Position, Length? MarkFrom, Length? MarkTo, DateTimeOffset? DroppedAt, long Installed)
    {
        public StoredPiece ToPiece() => new(
            Run,
            Code,
            Cut,
            State,
            Coil is null ? null : new PiecePlace(Coil, Lot!, (int)Position! + 1, MarkFrom!.Value, MarkTo!.Value) { Plan = Plan!.Value })
        {
            IsInstalled = Installed == 1,
        };
    }
}
