using CutShop.Shop.Benches;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>Marks pieces as installed, and takes the mark off again. The label's code is all that it asks for.</summary>
public sealed class InstalledMarks(ShopDatabase database)
{
    /// <summary>
    /// Marks a piece. Where someone changed it after the tap, or it is not as the installer saw it, nothing is overwritten. A piece that is not
    /// cut, or is reported as too short, is marked only by a tap that is sure of it. Safe to send twice.
    /// </summary>
    /// <param name="code">The label's code.</param>
    /// <param name="tap">What was tapped.</param>
    /// <param name="who">Who tapped, for the history.</param>
    /// <param name="requestKey">The tap's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<InstalledAnswer> MarkAsync(PieceCode code, InstalledTap tap, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(tap);
        return database.WriteAsync(
            session => RequestLog.Once(
                session,
                $"installed {code.Plain} {requestKey}",
                () => Mark(session, code, tap, who),
                answer => answer.Outcome == SiteOutcome.Done ? InstalledWords.Of(answer.State) : null,
                text => new(SiteOutcome.Done, InstalledWords.Read(text)!.Value)),
            cancel);
    }

    private static InstalledAnswer Mark(ShopSession session, PieceCode code, InstalledTap tap, string who)
    {
        var label = LabelRow.Find(session, code);
        if (LabelRow.OutcomeOf(label) is not SiteOutcome.Done and var refused)
            return new(refused, InstalledState.NotInstalled);
        var (state, changedAt) = StateOf(session, label!.PieceId);
        if (state == tap.Wanted)
            return new(SiteOutcome.Done, state, changedAt);
        var at = session.NoLaterThanNow(tap.At);
        if (state != tap.Seen || at < changedAt)
            return new(SiteOutcome.Conflict, state, changedAt);
        if (tap is { Wanted: InstalledState.Installed, IsSure: false } && Doubt(session, label.PieceId) is { } doubt)
            return new(doubt, state, changedAt);
        session.Execute(
            """
            INSERT INTO installations (piece_id, state, tapped_at) VALUES (@PieceId, @wanted, @at)
            ON CONFLICT (piece_id) DO UPDATE SET state = excluded.state, tapped_at = excluded.tapped_at
            """,
            new { label.PieceId, wanted = InstalledWords.Of(tap.Wanted), at });
        session.Record("piece", label.PieceId, who, HistoryCodes.PieceMarked, InstalledWords.Of(state), InstalledWords.Of(tap.Wanted));
        if (tap.Wanted == InstalledState.Installed && IsLast(session, label.PieceId) is { } job)
            ReSettings.CountFrom(session, job, ReSettings.Installed, who);
        return new(SiteOutcome.Done, tap.Wanted, at);
    }

    /// <summary>The job of a piece whose pieces are all up with it, or null.</summary>
    private static long? IsLast(ShopSession session, long pieceId) => session.FirstOrDefault<long?>(
        $"""
        SELECT job_id FROM pieces WHERE id = @pieceId AND NOT EXISTS (
          SELECT 1 FROM pieces AS other LEFT JOIN installations ON piece_id = other.id
          WHERE other.job_id = pieces.job_id AND other.dropped_at IS NULL AND coalesce(state, '') <> '{InstalledWords.Of(InstalledState.Installed)}')
        """,
        new { pieceId });

    /// <summary>What speaks against a piece being up, or null.</summary>
    private static SiteOutcome? Doubt(ShopSession session, long pieceId) =>
        !TicketStates.IsMade(session.Value<string>("SELECT state FROM cut_tickets WHERE piece_id = @pieceId", new { pieceId })!) ? SiteOutcome.NotCut
        : SiteReports.AreOpen(session, pieceId, SiteReportKind.TooShort) ? SiteOutcome.ReportedShort
        : null;

    private static (InstalledState State, DateTimeOffset? ChangedAt) StateOf(ShopSession session, long pieceId) =>
        session.FirstOrDefault<Row>("SELECT state, tapped_at FROM installations WHERE piece_id = @pieceId", new { pieceId }) is { } row
            ? (InstalledWords.Read(row.State)!.Value, row.TappedAt)
            : (InstalledState.NotInstalled, null);

    private sealed record Row(string State, DateTimeOffset TappedAt);
}
