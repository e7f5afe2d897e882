using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>Ticks bores in posts that are bored on site, and takes the tick back. The code of a label in the post's line is all that it asks for.</summary>
public sealed class BoreTicks(ShopDatabase database)
{
    /// <summary>
    /// Ticks a bore. Where someone changed it after the tap, or it is not as the installer saw it, nothing is overwritten. Safe to send twice.
    /// </summary>
    /// <param name="code">The code of a label in the post's line.</param>
    /// <param name="tap">What was tapped.</param>
    /// <param name="who">Who tapped, for the history.</param>
    /// <param name="requestKey">The tap's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BoreAnswer> TickAsync(PieceCode code, BoreTap tap, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(tap);
        return database.WriteAsync(
            session => RequestLog.Once(
                session,
                $"bored {code.Plain} {requestKey}",
                () => Tick(session, code, tap, who),
                answer => answer.Outcome == SiteOutcome.Done ? BoreTap.Word(answer.IsBored) : null,
                text => new(SiteOutcome.Done, BoreTap.Read(text)!.Value)),
            cancel);
    }

    private static BoreAnswer Tick(ShopSession session, PieceCode code, BoreTap tap, string who)
    {
        var label = LabelRow.Find(session, code);
        if (LabelRow.OutcomeOf(label) is not SiteOutcome.Done and var refused)
            return new(refused, IsBored: false);
        if (PostOf(session, label!.PieceId, tap.Bore) is not { } postId)
            return new(SiteOutcome.NoSuchBore, IsBored: false);
        var (isBored, changedAt) = BoredOnSite.Of(session, postId, tap.Bore);
        if (isBored == tap.Wanted)
            return new(SiteOutcome.Done, isBored, changedAt);
        var at = session.NoLaterThanNow(tap.At);
        if (isBored != tap.Seen || at < changedAt)
            return new(SiteOutcome.Conflict, isBored, changedAt);
        BoredOnSite.Put(session, postId, tap.Bore, tap.Wanted, at);
        session.Record(
            "post", postId, who, HistoryCodes.BoreTicked, BoreTap.Word(isBored), BoreTap.Word(tap.Wanted), details: new { row = tap.Bore.Row, bore = tap.Bore.Number });
        return new(SiteOutcome.Done, tap.Wanted, at);
    }

    /// <summary>The post of the piece's line that has this bore to be made on site, or null.</summary>
    private static long? PostOf(ShopSession session, long pieceId, BoreMark bore) =>
        session.FirstOrDefault<long?>(
            """
            SELECT posts.id FROM posts JOIN post_parts ON post_id = posts.id
            WHERE posts.mark = @Post AND dropped_at IS NULL AND posts.job_id = (SELECT job_id FROM pieces WHERE id = @pieceId)
              AND post_parts.line = (SELECT line FROM piece_parts WHERE piece_id = @pieceId)
            """,
            new { bore.Post, pieceId }) is { } id && StoredParts.Post(session, id).Work is { IsForSite: true } work && bore.In(work) is not null
            ? id
            : null;
}
