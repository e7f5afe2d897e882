using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <content>What a cutter does about the coil in hand: it ends, part of it is bad, it is not there. Nothing has been cut from it yet for the piece.</content>
public sealed partial class CutBench
{
    /// <summary>
    /// The coil ends before its books say so: they are set right, and the piece waits for a coil that can give it. Rope that another cutter
    /// has cut off it and not measured yet stays in its books.
    /// </summary>
    /// <param name="code">The piece at the bench.</param>
    /// <param name="left">What is left of the coil, less than the piece takes; zero where nothing is worth keeping.</param>
    /// <param name="who">Who has the piece at the bench.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> CoilEndsAsync(PieceCode code, Length left, string who, string requestKey, CancellationToken cancel = default) => WithCoilAsync(
        code,
        who,
        requestKey,
        (session, work, cut) =>
        {
            if (left.IsNegative)
                return BenchReplies.Of("LengthAboveZero");
            if (left >= cut.Cut + cut.Beside)
                return BenchReplies.Of("CoilStillGives", left, cut.Cut + cut.Beside);
            var others = session.Value<Length>(
                $"""
                SELECT CAST(coalesce(sum(reserved_nm), 0) AS bigint) FROM cut_tickets
                WHERE state = '{TicketStates.AtTheBench}' AND cut_coil_id = @CoilId AND id <> @Id AND steps >= {(int)CutStep.Cut}
                """,
                new { cut.CoilId, work.Id });
            CoilShelf.Correct(session, CoilShelf.ById(session, cut.CoilId)!, Length.Min(cut.Left, left + others), Reason.Because(HistoryCause.CoilEnded), who);
            HandBackBecause(session, work, HistoryCause.CoilEnded, who);
            return null;
        },
        cancel);

    /// <summary>
    /// Cuts a bad stretch out of the coil: it is scrap. The piece stays at the bench, to be marked anew, where what is left can give it;
    /// else it waits for another coil.
    /// </summary>
    /// <param name="code">The piece at the bench.</param>
    /// <param name="bad">How much is bad, at most what the coil holds.</param>
    /// <param name="who">Who has the piece at the bench.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> BadStretchAsync(PieceCode code, Length bad, string who, string requestKey, CancellationToken cancel = default) => WithCoilAsync(
        code,
        who,
        requestKey,
        (session, work, cut) =>
        {
            if (!bad.IsPositive)
                return BenchReplies.Of("LengthAboveZero");
            var others = cut.Left - CoilShelf.Free(session, cut.CoilId) - (cut.Cut + cut.Beside);
            if (bad > cut.Left - others)
                return BenchReplies.Of("BadStretchTooLong", bad, cut.CoilMark, cut.Left - others);
            RopeLedger.Add(session, cut.CoilId, RopeLedger.Scrap, bad);
            CoilShelf.Take(session, cut.CoilId, cut.Left, cut.Left - bad, who, HistoryCodes.BadStretchCutOut);
            if (cut.Left - bad - others < cut.Cut + cut.Beside)
                HandBackBecause(session, work, HistoryCause.BadStretch, who);
            else if (work.Steps > 0)
                Untick(session, work, CutStep.Mark, who);
            return null;
        },
        cancel);

    /// <summary>
    /// The coil is not where it hangs: it is off the rack until somebody finds it, and the piece waits for another coil. Refused where
    /// another cutter has it at the bench, who is named.
    /// </summary>
    /// <param name="code">The piece at the bench.</param>
    /// <param name="who">Who has the piece at the bench.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> CoilNotFoundAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) => WithCoilAsync(
        code,
        who,
        requestKey,
        (session, work, cut) =>
        {
            if (session.FirstOrDefault<string>(
                $"SELECT claimed_by FROM cut_tickets WHERE state = '{TicketStates.AtTheBench}' AND cut_coil_id = @CoilId AND id <> @Id ORDER BY claimed_at LIMIT 1",
                new { cut.CoilId, work.Id }) is { } other)
                return BenchReplies.Of("CoilAtTheBenchOf", cut.CoilMark, other);
            CoilShelf.Retire(session, CoilShelf.ById(session, cut.CoilId)!, Reason.Because(HistoryCause.CoilNotFound), who);
            HandBackBecause(session, work, HistoryCause.CoilNotFound, who);
            return null;
        },
        cancel);

    /// <summary>True where what was said last of a coil, that it ends, is bad or is not found, can be taken back.</summary>
    /// <param name="mark">The coil's mark.</param>
    public bool CanTakeCoilBack(string mark) => Database.Read(session => CoilShelf.Find(session, mark) is { } coil && SaidLast(session, coil) is not null);

    /// <summary>
    /// Takes back what was said last of a coil, that it ends, is bad or is not found: its books are as before. Refused where anything was done
    /// with the coil since. The outcome is the coil's mark.
    /// </summary>
    /// <param name="mark">The coil's mark.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> TakeCoilBackAsync(string mark, string who, string requestKey, CancellationToken cancel = default) => Database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () =>
            {
                if (CoilShelf.Find(session, mark) is not { } coil || SaidLast(session, coil) is not { } said)
                    return BenchAnswer.Refused(BenchReplies.Of("CoilNotTakenBack", mark));
                if (said.What == HistoryCodes.CoilRetired.Code)
                {
                    CoilShelf.Found(session, coil, who);
                }
                else if (said.What == HistoryCodes.BadStretchCutOut.Code)
                {
                    RopeLedger.Add(session, coil.Id, RopeLedger.Scrap, coil.Left - said.Before!.Value);
                    CoilShelf.Take(session, coil, said.Before.Value, who, HistoryCodes.BadStretchTakenBack);
                }
                else
                {
                    CoilShelf.Correct(session, coil, said.Before!.Value, Reason.Because(HistoryCause.Slip), who);
                }
                return BenchAnswer.Given(mark);
            }),
        cancel);

    /// <summary>What was done last with a coil, where it is something that a cutter says of it and takes back; else null.</summary>
    private static Said? SaidLast(ShopSession session, StockCoil coil) =>
        session.FirstOrDefault<Said>(
            "SELECT what, cause, before_nm AS before FROM history WHERE subject = 'coil' AND subject_id = @Id ORDER BY id DESC LIMIT 1",
            new { coil.Id }) is { } last
        && (last.What == HistoryCodes.BadStretchCutOut.Code || last.Cause == HistoryCause.CoilEnded.Code || last.Cause == HistoryCause.CoilNotFound.Code)
            ? last
            : null;

    /// <summary>Works on the coil of a piece that is at the bench and not cut yet. The outcome of what is done is the coil's mark.</summary>
    private Task<BenchAnswer> WithCoilAsync(
        PieceCode code, string who, string requestKey, Func<ShopSession, CutWork, NextCut, Sentence?> work, CancellationToken cancel) => WhenClaimedAsync(
        code,
        who,
        requestKey,
        (session, found) =>
        {
            if (found.Steps >= (int)CutStep.Cut)
                return BenchReplies.Of("CutAlready");
            if (CutQueue.Of(session, found.Id) is not { } cut)
                return BenchReplies.Of("PieceHasNoCoil", found.Code);
            return cut.CoilState == CoilStates.InStock
                ? work(session, found, cut)
                : BenchReplies.Of("CoilIsNot", cut.CoilMark, BenchReplies.State(cut.CoilState));
        },
        cancel);

    private static void HandBackBecause(ShopSession session, CutWork work, HistoryCause cause, string who) =>
        TicketStates.HandBackCut.Do(session, work.Id, who, Claims.Free + NotBegun, reason: Reason.Because(cause));

    private sealed record Said(string What, string Cause, Length? Before);
}
