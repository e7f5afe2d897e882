using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>Finds what a label leads to. It looks at the one piece, or the one line, and not at the whole job.</summary>
public sealed class PieceShelf(ShopDatabase database, JobShelf jobs)
{
    private const string Columns =
        $"""
        SELECT pieces.id, jobs.id AS job_id, jobs.version, number AS job, pieces.position, run, code, cut_nm AS cut, cut_tickets.state AS ticket,
          {InstalledWords.Column} AS installed,
          CAST(CASE WHEN EXISTS (SELECT 1 FROM pieces AS again WHERE again.replaces_id = pieces.id) THEN 1 ELSE 0 END AS bigint) AS cut_again,
          cancelled_at, cut_at
        FROM pieces JOIN jobs ON jobs.id = job_id JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
        LEFT JOIN installations ON installations.piece_id = pieces.id
        """;

    /// <summary>The piece of a label, or null where no label has this code.</summary>
    public SitePiece? Find(PieceCode code) => database.Read(session => Find(session, code));

    /// <summary>The line of a label's piece, or null where no label has this code.</summary>
    public SiteLine? FindLine(PieceCode code) => database.Read(session =>
        Find(session, code) is { } piece ? new SiteLine(piece, LineOf(session, piece)) : null);

    private SitePiece? Find(ShopSession session, PieceCode code)
    {
        if (LabelRow.Find(session, code) is not { } label)
            return null;
        var row = session.FirstOrDefault<Row>(Columns + " WHERE pieces.id = @PieceId", new { label.PieceId })!;
        var found = new SitePiece(code, label.State, row.Job, row.Run, row.Cut, row.Ticket, row.State, row.CutAgain == 1, row.CancelledAt is not null, row.CutAt is not null);
        return label.State == LabelState.Good ? WithTakeoff(session, found, row) : found;
    }

    private static IReadOnlyList<LinePiece> LineOf(ShopSession session, SitePiece piece)
    {
        if (piece is not { Takeoff: { } takeoff, Piece: { } one })
            return [];
        var ofLine = takeoff.Pieces.Index().Where(pair => pair.Item.Line == one.Line).ToList();
        var rows = session.All<Row>(
            Columns + " WHERE number = @Job AND pieces.dropped_at IS NULL AND pieces.position BETWEEN @first AND @last ORDER BY pieces.position",
            new { piece.Job, first = ofLine[0].Index, last = ofLine[^1].Index });
        TicketedLengths.Check(piece.Job, rows.Select(row => (row.Run, row.Cut)), ofLine.Select(pair => pair.Item));
        return [.. ofLine.Zip(rows, (pair, row) => new LinePiece(pair.Item, row.Code, row.State))];
    }

    private SitePiece WithTakeoff(ShopSession session, SitePiece found, Row row)
    {
        var takeoff = jobs.Takeoffs.Of(session, row.JobId, row.Version);
        var piece = takeoff.Pieces[(int)row.Position];
        TicketedLengths.Check(row.Job, [(row.Run, row.Cut)], [piece]);
        return found with { Takeoff = takeoff, Piece = piece };
    }

    private sealed record Row(
        long Id, long JobId, long Version, string Job, long Position, string Run, PieceCode Code, Length Cut, string Ticket, string Installed, long CutAgain,
        DateTimeOffset? CancelledAt, DateTimeOffset? CutAt)
    {
        public InstalledState State => InstalledWords.Read(Installed)!.Value;
    }
}
