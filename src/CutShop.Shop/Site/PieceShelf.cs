using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>Finds what a label leads to. It looks at the one piece, or the one line, and not at the whole job.</summary>
public sealed class PieceShelf(ShopDatabase database)
{
    private const string Columns =
        $"""
        SELECT pieces.id, jobs.id AS job_id, number AS job, run, code, cut_nm AS cut, cut_tickets.state AS ticket,
          {InstalledWords.Column} AS installed,
          CAST(CASE WHEN EXISTS (SELECT 1 FROM pieces AS again WHERE again.replaces_id = pieces.id) THEN 1 ELSE 0 END AS bigint) AS cut_again,
          cancelled_at, cut_at, {SiteReports.OpenKinds} AS reported
        FROM pieces JOIN jobs ON jobs.id = job_id JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
        LEFT JOIN installations ON installations.piece_id = pieces.id
        """;

    /// <summary>The piece of a label, or null where no label has this code.</summary>
    public SitePiece? Find(PieceCode code) => database.Read(session => Find(session, code, WithTakeoff));

    /// <summary>The line of a label's piece, or null where no label has this code.</summary>
    public SiteLine? FindLine(PieceCode code) => database.Read(session => Find(session, code, LineOf, found => new(found, [], [], new HashSet<string>(), new HashSet<BoreMark>())));

    private static SitePiece? Find(ShopSession session, PieceCode code, Func<ShopSession, SitePiece, Row, SitePiece> good) => Find(session, code, good, found => found);

    private static T? Find<T>(ShopSession session, PieceCode code, Func<ShopSession, SitePiece, Row, T> good, Func<SitePiece, T> other)
        where T : class
    {
        if (LabelRow.Find(session, code) is not { } label)
            return null;
        var row = session.FirstOrDefault<Row>(Columns + " WHERE pieces.id = @PieceId", new { label.PieceId })!;
        var found = new SitePiece(code, label.State, row.Job, row.Run, row.Cut, row.Ticket, row.State, row.CutAgain == 1, row.CancelledAt is not null, row.CutAt is not null)
        {
            Reported = SiteReports.KindsOf(row.Reported),
        };
        return label.State == LabelState.Good ? good(session, found, row) : other(found);
    }

    private static SiteLine LineOf(ShopSession session, SitePiece piece, Row row)
    {
        var one = StoredParts.Piece(session, row.Id)!.Piece;
        var works = StoredParts.PiecesOf(session, row.JobId, one.Line);
        var posts = StoredParts.PostsOf(session, row.JobId, one.Line);
        var rows = session.All<Row>(
            $"{Columns} JOIN piece_parts ON piece_parts.piece_id = pieces.id WHERE pieces.job_id = @JobId AND pieces.dropped_at IS NULL AND piece_parts.line = @Line ORDER BY pieces.position",
            new { row.JobId, one.Line });
        return new(
            piece with { Takeoff = StoredParts.Frame(session, row.JobId).ToTakeoff(row.Head, works, posts), Piece = one },
            [.. works.Zip(rows, (work, here) => new LinePiece(work.Piece, here.Code, here.State, TicketStates.IsMade(here.Ticket), SiteReports.KindsOf(here.Reported)))],
            posts,
            DrilledPosts(session, row.JobId),
            BoredOnSite.Of(session, row.JobId));
    }

    /// <summary>The marks of a job's posts that the shop has drilled.</summary>
    internal static IReadOnlySet<string> DrilledPosts(ShopSession session, long jobId) => session.All<string>(
        $"SELECT mark FROM posts JOIN drill_tickets ON post_id = posts.id WHERE job_id = @jobId AND dropped_at IS NULL AND state = '{TicketStates.Drilled}'",
        new { jobId }).ToHashSet();

    /// <summary>The piece from its own part, with the job's frame and the pieces that hang beside it or meet it at a corner, as they are drawn with it.</summary>
    private static SitePiece WithTakeoff(ShopSession session, SitePiece found, Row row)
    {
        var piece = StoredParts.Piece(session, row.Id)!.Piece;
        var around = StoredParts.PiecesOf(session, row.JobId, piece.Line, piece.First, piece.Last);
        return found with
        {
            Takeoff = StoredParts.Frame(session, row.JobId).ToTakeoff(row.Head, around, []),
            Piece = piece,
            Measured = MeasuredSpans.Of(session, row.Id),
            HasPostsForSite = HasPostsForSite(session, row.JobId, piece.Line),
        };
    }

    /// <summary>True where a line has posts with bores that the shop does not make: a likeness, and no drillings.</summary>
    private static bool HasPostsForSite(ShopSession session, long jobId, string line) =>
        session.Value<bool>(
            "SELECT EXISTS (SELECT 1 FROM post_parts JOIN posts ON posts.id = post_id WHERE job_id = @jobId AND line = @line AND dropped_at IS NULL AND drillings = 0 AND likeness <> '')",
            new { jobId, line });

    private sealed record Row(
        long Id, long JobId, string Job, string Run, PieceCode Code, Length Cut, string Ticket, string Installed, long CutAgain,
        DateTimeOffset? CancelledAt, DateTimeOffset? CutAt, string Reported)
    {
        /// <summary>A label names no customer and no day.</summary>
        public JobHead Head => new(Job, Customer: "", Due: null, OneLot: false);

        public InstalledState State => InstalledWords.Read(Installed)!.Value;
    }
}
