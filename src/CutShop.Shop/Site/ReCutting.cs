using CutShop.Shop.Benches;
using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Site;

/// <summary>Has a piece cut again that went wrong on site: a new piece with a ticket and a code of its own takes the old one's place.</summary>
internal static class ReCutting
{
    /// <summary>Makes the new piece.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="pieceId">The old piece.</param>
    /// <param name="report">The word of the kind of report that asks for it.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="newId">The new piece's row; 0 where none was made.</param>
    /// <returns>Why it cannot be, or null.</returns>
    public static Sentence? Again(ShopSession session, long pieceId, string report, string who, out long newId)
    {
        newId = 0;
        var because = Reason.Because(HistoryCause.OnSite(report));
        var old = session.FirstOrDefault<OldPiece>(
            $"""
            SELECT job_id, number AS job, position, run, dropped_at, cut_tickets.id AS ticket_id, cut_tickets.state, cut_coil_id, coalesce(measured_nm, cut_nm) AS length,
              CAST(CASE WHEN {ReleasedJobs.Condition} THEN 1 ELSE 0 END AS bigint) AS is_released
            FROM pieces JOIN jobs ON jobs.id = job_id JOIN cut_tickets ON piece_id = pieces.id WHERE pieces.id = @pieceId
            """,
            new { pieceId })!;
        if (old.DroppedAt is not null)
            return SiteReplies.Of("PieceNotWanted", old.Run);
        if (old.IsReleased == 0)
            return SiteReplies.Of("JobNotReleased", old.Job);
        if (!TicketStates.IsMade(old.State))
            return SiteReplies.Of("NotCutYet", old.Run);

        ReCuts.Add(session, old.TicketId, old.Length, HistoryCause.OnSiteWords(report), who);
        Leave(session, pieceId, old, because, who);
        var work = WorkFor(session, pieceId, old.JobId);
        newId = session.Insert(
            $"""
            INSERT INTO pieces (job_id, position, run, code, {RopeKind.Columns}, cut_nm, replaces_id)
            SELECT job_id, @Position, run, @code, {RopeKind.Columns}, @Cut, id FROM pieces WHERE id = @pieceId
            """,
            new { old.Position, code = LabelShelf.Draw(session), work.Piece.Cut, pieceId });
        if (work.Piece.IsAsMeasured)
            PutAsMeasured(session, newId, old.JobId, work);
        else
            StoredParts.Copy(session, pieceId, newId);
        JobIntake.InsertTickets(session, old.JobId);
        session.Record("piece", newId, who, HistoryCodes.PieceCutAgain, after: TicketStates.Waiting, reason: because);
        return null;
    }

    /// <summary>The work of the new piece: the old one's, or where spans were measured on site, what they take.</summary>
    private static PieceWork WorkFor(ShopSession session, long pieceId, long jobId)
    {
        var work = StoredParts.Piece(session, pieceId)!;
        return MeasuredSpans.Of(session, pieceId) is { Count: > 0 } clear
            ? work with { Piece = MeasuredSpans.Piece(session, jobId, work.Piece, clear) }
            : work;
    }

    /// <summary>Stores the part of a piece that is cut for measured spans, and what the job's rope adds up to with it.</summary>
    private static void PutAsMeasured(ShopSession session, long newId, long jobId, PieceWork work)
    {
        StoredParts.Put(session, newId, work);
        var frame = StoredParts.Frame(session, jobId);
        StoredParts.Put(session, jobId, frame with { Totals = JobTotals.Of(StoredParts.PiecesOf(session, jobId), frame.Totals.Bores) });
    }

    /// <summary>The old piece leaves its place; its rope is lost to the shop.</summary>
    private static void Leave(ShopSession session, long pieceId, OldPiece old, Reason reason, string who)
    {
        if (old.CutCoilId is { } coil)
        {
            RopeLedger.Add(session, coil, RopeLedger.Piece, -old.Length, old.TicketId);
            RopeLedger.Add(session, coil, RopeLedger.Scrap, old.Length, old.TicketId);
        }
        TicketClosing.OfPiece(session, old.TicketId, old.State, who, reason);
        session.Execute(
            "UPDATE pieces SET dropped_at = @Now, position = 1 + (SELECT max(position) FROM pieces WHERE job_id = @JobId) WHERE id = @pieceId",
            new { session.Now, old.JobId, pieceId });
    }

    private sealed record OldPiece(
        long JobId, string Job, long Position, string Run, DateTimeOffset? DroppedAt, long TicketId, string State, long? CutCoilId, Length Length, long IsReleased);
}
