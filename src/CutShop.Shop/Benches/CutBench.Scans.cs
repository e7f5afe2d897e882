using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Benches;

/// <summary>What a scan at the cut bench is for the piece there.</summary>
public enum CutScan
{
    /// <summary>Nothing is so marked, or several are, or it is a post.</summary>
    NotKnown,

    /// <summary>The label of the coil that the plan gives the piece.</summary>
    RightCoil,

    /// <summary>The label of another coil.</summary>
    OtherCoil,

    /// <summary>The piece's own label, at the step where it is put on.</summary>
    RightLabel,

    /// <summary>The piece's own label, at another step.</summary>
    LabelNotDue,

    /// <summary>The label of another piece.</summary>
    OtherPiece,
}

/// <content>Scans of labels: a right one confirms the coil or does the last step, a wrong one changes nothing.</content>
public sealed partial class CutBench
{
    /// <summary>What a scan is for a piece, as it is now. Changes nothing.</summary>
    /// <param name="work">The piece.</param>
    /// <param name="text">What was scanned or typed.</param>
    public (CutScan Is, Scanned? What) Look(CutWork work, string text) => Database.Read(session => Look(session, work, text));

    /// <summary>
    /// Takes a scan at the bench. The coil's label confirms the coil; at the step of labelling, the piece's own label does that step and
    /// with it the piece, for which the outcome is its code. Any other scan is refused and changes nothing.
    /// </summary>
    /// <param name="code">The piece at the bench.</param>
    /// <param name="text">What was scanned or typed.</param>
    /// <param name="who">Who has it.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> ScanAsync(PieceCode code, string text, string who, string requestKey, CancellationToken cancel = default) => WhenClaimedAsync(
        code,
        who,
        requestKey,
        (session, work) =>
        {
            switch (Look(session, work, text).Is)
            {
                case CutScan.RightCoil:
                    session.Execute("UPDATE cut_tickets SET coil_seen_at = @Now, touched_at = @Now WHERE id = @Id", new { session.Now, work.Id });
                    session.Record("cut ticket", work.Id, who, HistoryCodes.CoilScanned, details: new { coil = work.Coil });
                    return null;
                case CutScan.RightLabel:
                    Step(session, work, CutStep.LabelAndTie, who, HistoryCodes.CutStepScanned);
                    return null;
                default:
                    return BenchReplies.Of("WrongScan");
            }
        },
        cancel);

    private static (CutScan Is, Scanned? What) Look(ShopSession session, CutWork work, string text) => ScanResolver.Read(session, text).Found switch
    {
        { Coil: { } coil } found => (coil.Mark == work.Coil ? CutScan.RightCoil : CutScan.OtherCoil, found),
        { Code: { } piece } found when piece != work.Code => (CutScan.OtherPiece, found),
        { Code: not null } found => (work.Next == CutStep.LabelAndTie ? CutScan.RightLabel : CutScan.LabelNotDue, found),
        var found => (CutScan.NotKnown, found),
    };
}
