using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>Ends labels: the piece has a new code from then on, and the old one leads only to a page that says it is no longer valid.</summary>
public sealed class LabelShelf(ShopDatabase database)
{
    /// <summary>Gives a piece a new code, so that the old label opens nothing. Safe to send twice; the outcome is the new code.</summary>
    /// <param name="code">The code that the piece has.</param>
    /// <param name="reason">Why, 1 to 200 characters.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="requestKey">The request's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> ReplaceAsync(PieceCode code, string reason, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return database.WriteAsync(session => BenchAnswer.Once(session, $"label {requestKey}", () => Replace(session, code, reason, who)), cancel);
    }

    private static BenchAnswer Replace(ShopSession session, PieceCode code, string reason, string who)
    {
        if (BenchAnswer.NeedsReason(reason) is { } why)
            return BenchAnswer.Refused(why);
        var label = LabelRow.Find(session, code);
        if (label is not { State: LabelState.Good })
            return BenchAnswer.Refused(SiteReplies.Of("NoWantedPiece", code));
        var next = Draw(session);
        session.Execute(
            "INSERT INTO ended_labels (code, piece_id, ended_at, reason) VALUES (@code, @PieceId, @Now, @reason)",
            new { code, label.PieceId, session.Now, reason = reason.Trim() });
        session.Execute("UPDATE pieces SET code = @next WHERE id = @PieceId", new { next, label.PieceId });
        session.Record("piece", label.PieceId, who, HistoryCodes.LabelReplaced, code.ToString(), next.ToString(), reason.Trim());
        return BenchAnswer.Given(next.Plain);
    }

    /// <summary>A code that no label has or had.</summary>
    internal static PieceCode Draw(ShopSession session)
    {
        while (true)
        {
            var code = PieceCode.Draw();
            if (LabelRow.Find(session, code) is null)
                return code;
        }
    }
}
