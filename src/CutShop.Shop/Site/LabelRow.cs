using CutShop.Shop.Store;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>The row that a label's code leads to, and whether the label still counts.</summary>
internal sealed record LabelRow(long PieceId, LabelState State)
{
    /// <summary>The piece that has or had this code, or null.</summary>
    public static LabelRow? Find(ShopSession session, PieceCode code)
    {
        if (session.FirstOrDefault<Live>("SELECT pieces.id, dropped_at, cancelled_at FROM pieces JOIN jobs ON jobs.id = job_id WHERE code = @code", new { code }) is { } piece)
            return new(piece.Id, piece is { DroppedAt: null, CancelledAt: null } ? LabelState.Good : LabelState.NoLongerWanted);
        return session.FirstOrDefault<long?>("SELECT piece_id FROM ended_labels WHERE code = @code", new { code }) is { } ended
            ? new(ended, LabelState.Ended)
            : null;
    }

    /// <summary>Why nothing can be stored for a code, or <see cref="SiteOutcome.Done"/> where something can.</summary>
    public static SiteOutcome OutcomeOf(LabelRow? row) => row?.State switch
    {
        null => SiteOutcome.NoSuchPiece,
        LabelState.Ended => SiteOutcome.LabelEnded,
        LabelState.NoLongerWanted => SiteOutcome.NoLongerWanted,
        _ => SiteOutcome.Done,
    };

    private sealed record Live(long Id, DateTimeOffset? DroppedAt, DateTimeOffset? CancelledAt);
}
