using System.Globalization;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>
/// The cut bench. One piece is given to one cutter; each step is a tap, or the scan of a label; the measured length decides whether
/// the piece is taken. Whatever was ticked or typed can be taken back while the piece is at the bench.
/// </summary>
public sealed partial class CutBench(ShopDatabase database) : TicketBench<CutWork, PieceCode>(database)
{
    private const string Fresh = ", steps = 0, cut_coil_id = NULL, reserved_nm = 0, longest_nm = NULL, measured_nm = NULL, first_use_id = NULL, cut_by = NULL, cut_at = NULL, coil_seen_at = NULL";

    private static readonly string AllSteps = string.Create(CultureInfo.InvariantCulture, $", steps = {(int)CutStep.LabelAndTie}");

    /// <summary>A piece stays in the queue's order only while its plan is the accepted one.</summary>
    private const string Place =
        $"""
        , plan_coil_id = (SELECT plan_coils.id FROM plan_coils JOIN cut_plans ON cut_plans.id = plan_id
                          WHERE plan_coils.id = plan_coil_id AND cut_plans.state = '{PlanStates.Accepted}')
        """;

    /// <summary>The ticket waits again with nothing done.</summary>
    private const string Again = Fresh + Place + Claims.Free;

    /// <summary>What handing back sets: nothing is cut yet.</summary>
    private const string NotBegun = ", steps = 0, cut_coil_id = NULL, reserved_nm = 0, coil_seen_at = NULL" + Place;

    private protected override Claims Claims { get; } =
        new(TicketStates.CutTickets, TicketStates.HandBackCut, $"steps < {(int)CutStep.Cut}", NotBegun);

    /// <summary>What the cuts of a piece left beside it: offcuts to mark and hang up, and scrap.</summary>
    public LeftOver LeftOver(PieceCode code) => Database.Read(session => Shop.Benches.LeftOver.Of(session, code));

    /// <summary>How many pieces wait, and how many of them an accepted plan gives a coil.</summary>
    public (long Planned, long All) Waiting() => Database.Read(session => session.Value<(long, long)>(
        $"SELECT count(*) FILTER (WHERE plan_coil_id IS NOT NULL), count(*) FROM cut_tickets WHERE state = '{TicketStates.Waiting}'"));

    /// <summary>Ticks a step. Steps are ticked in their order, by whoever has the ticket; the last one finishes it.</summary>
    public Task<BenchAnswer> TickAsync(PieceCode code, CutStep step, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if ((work.IsFinished || work.IsOf(who)) && work.Steps >= (int)step)
                return BenchReplies.Of("StepDoneAlready");
            if (NotClaimedBy(work, who) is { } his)
                return his;
            if (step == CutStep.Measure)
                return BenchReplies.Of("EnterMeasured");
            if (work.Next != step)
                return BenchReplies.Of("StepNotDue", (int)step, work.Steps, (int)CutStep.LabelAndTie);
            Step(session, work, step, who, HistoryCodes.CutStepTapped);
            return null;
        },
        cancel);

    /// <summary>
    /// Undoes the step that was done last, by whoever has the ticket. A measure gives its rope back to the coil; one that was too long is
    /// taken back by itself, before the cut.
    /// </summary>
    /// <param name="code">The piece.</param>
    /// <param name="step">The step that is to be undone, which must be the last one done.</param>
    /// <param name="who">Who has it.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> UndoStepAsync(PieceCode code, CutStep step, string who, string requestKey, CancellationToken cancel = default) => WhenClaimedAsync(
        code,
        who,
        requestKey,
        (session, work) =>
        {
            if (work.LastDone != step)
                return BenchReplies.Of(work.LastDone > step ? "UndoLaterStepFirst" : "StepUndoneAlready");
            if (work.Measured is not null)
                return TakeMeasureBack(session, work, who);
            if (work.Longest is { } longest)
            {
                session.Execute("UPDATE cut_tickets SET longest_nm = NULL, touched_at = @Now WHERE id = @Id", new { session.Now, work.Id });
                session.Record("cut ticket", work.Id, who, HistoryCodes.MeasureTakenBack, details: new { measuredNm = longest.Nanometres });
                return null;
            }
            Untick(session, work, step, who);
            return null;
        },
        cancel);

    /// <summary>
    /// Takes back the measured length of a piece, also of one that is finished and not packed: its rope is on the coil again, and whoever
    /// says so has it at the bench, to be measured again. What was cut from the coil later stays as it is.
    /// </summary>
    /// <param name="code">The piece.</param>
    /// <param name="who">Who measures it again.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> MeasureAgainAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) => work.State switch
        {
            TicketStates.Packed => BenchReplies.Of("UnpackFirst", work.Run, work.Job),
            TicketStates.AtTheBench when NotClaimedBy(work, who) is { } his => his,
            TicketStates.AtTheBench or TicketStates.Cut when work.Measured is not null =>
                (work.State == TicketStates.Cut ? Claims.HasAnother(session, work.Id, who) : null) ?? TakeMeasureBack(session, work, who),
            _ => BenchReplies.Of("NothingMeasured", work.Code, BenchReplies.State(work.State)),
        },
        cancel);

    /// <summary>
    /// Enters the length measured after cutting. Within the tolerance the piece is taken and its rope leaves the coil. A long
    /// piece is to be trimmed and measured again. A length that is short, or far from the one asked, is refused until
    /// <paramref name="isSure"/>; then a short piece goes to the rack as an offcut of the same lot, or is scrap, and the ticket waits again. A
    /// length that the coil cannot have given is refused always.
    /// </summary>
    public Task<BenchAnswer> MeasureAsync(
        PieceCode code, Length measured, bool isSure, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if ((work.IsFinished || work.IsOf(who)) && work.Measured is { } already)
                return BenchReplies.Of("MeasuredAlready", already);
            if (NotClaimedBy(work, who) is { } his)
                return his;
            if (work.Next != CutStep.Measure)
                return BenchReplies.Of("NotReadyToMeasure", work.Steps, (int)CutStep.LabelAndTie);
            if (!measured.IsPositive)
                return BenchReplies.Of("LengthAboveZero");
            var settings = BenchSettingsShelf.Read(session);
            var longest = Length.Max(measured, work.Longest ?? Length.Zero);
            switch (TapeReadings.Of(work, settings, measured))
            {
                case TapeReading.MoreThanCoil:
                    return CutStock.CannotGive(CutQueue.Of(session, work.Id)!, measured);
                case TapeReading.TooShort:
                    return isSure ? PutAside(session, work, measured, longest, who) : BenchReplies.Of("TooShort", measured, work.Cut, settings.Under);
                case TapeReading.FarTooLong when !isSure:
                    return BenchReplies.Of("FarTooLong", measured, work.Cut);
                case TapeReading.TooLong or TapeReading.FarTooLong:
                    session.Execute("UPDATE cut_tickets SET longest_nm = @longest, touched_at = @Now WHERE id = @Id", new { longest, session.Now, work.Id });
                    session.Record("cut ticket", work.Id, who, HistoryCodes.CutTooLong, beforeLength: work.Longest, afterLength: longest);
                    return null;
                default:
                    return TakeIn(session, CutQueue.Of(session, work.Id)!, work, measured, longest, who);
            }
        },
        cancel);

    /// <summary>
    /// Refuses a piece that was taken, and its ticket waits again. Sound rope goes to the rack as an offcut, or is scrap where it is short;
    /// rope that is not sound is scrap, however long.
    /// </summary>
    /// <param name="code">The piece.</param>
    /// <param name="reason">Why.</param>
    /// <param name="isSound">True where only the piece is wrong, not its rope: it may be cut from again.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> RejectAsync(
        PieceCode code, string reason, bool isSound, string who, string requestKey, CancellationToken cancel = default) => WithReasonAsync(
        code,
        reason,
        requestKey,
        (session, work) =>
        {
            if (work.State is not (TicketStates.Cut or TicketStates.AtTheBench) || work.Measured is null)
                return BenchReplies.Of("OnlyCutIsCutAgain", work.Code, BenchReplies.State(work.State));
            if (isSound && !CutReasons.BadRope.Contains(reason.Trim()))
                CutStock.Reject(session, work, who);
            else
                CutStock.Scrap(session, work);
            ReCuts.Add(session, work.Id, work.Measured.Value, reason, who);
            var move = work.State == TicketStates.Cut ? TicketStates.RejectCut : TicketStates.PutAside;
            move.Do(session, work.Id, who, Again, reason: reason);
            return null;
        },
        cancel);

    /// <summary>
    /// Records in one go a piece that was cut from its paper ticket as long as asked: taken where it waits, all steps done, finished.
    /// </summary>
    /// <param name="code">The piece.</param>
    /// <param name="who">Who cut it.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> RecordCutAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if (work.State == TicketStates.AtTheBench && NotClaimedBy(work, who) is { } his)
                return his;
            if (work.State is not (TicketStates.Waiting or TicketStates.AtTheBench) || work.Measured is not null)
                return BenchReplies.Of("PieceIsAlready", code, BenchReplies.State(work.State));
            if (CutQueue.Of(session, work.Id) is not { } cut)
                return BenchReplies.Of("PieceHasNoCoil", code);
            var longest = Length.Max(work.Cut, work.Longest ?? work.Cut);
            if (CutStock.CannotGive(cut, longest) is { } why)
                return why;
            if (work.State == TicketStates.Waiting)
                ClaimNow(session, cut, who);
            TakeIn(session, cut, work, work.Cut, longest, who);
            TicketStates.FinishCut.Do(session, work.Id, who, Claims.Free + AllSteps);
            return null;
        },
        cancel);

    /// <summary>
    /// Whether a piece is off its coil. One that is cut and not yet measured is taken off the books as long as asked, since the
    /// tape said so.
    /// </summary>
    internal static bool IsCutOff(ShopSession session, long ticketId, string who)
    {
        var work = CutWork.Of(session, ticketId);
        if (work.Measured is not null || work.State != TicketStates.AtTheBench || work.Steps < (int)CutStep.Cut)
            return work.Measured is not null;
        return CutQueue.Of(session, ticketId) is { } cut
            && TakeIn(session, cut, work, work.Cut, Length.Max(work.Cut, work.Longest ?? work.Cut), who, HistoryCodes.CutNotMeasured) is null;
    }

    private protected override CutWork? Find(ShopSession session, PieceCode mark) => CutWork.Find(session, mark);

    private protected override CutWork Of(ShopSession session, long id) => CutWork.Of(session, id);

    private protected override IReadOnlyList<CutWork> AtTheBench(ShopSession session) => CutWork.AtTheBench(session);

    private protected override IReadOnlyList<CutWork> Latest(ShopSession session, int most) => CutWork.Latest(session, most);

    private protected override string AddressOf(CutWork work) => work.Code.Plain;

    private protected override Sentence Unknown(PieceCode mark) => BenchReplies.Of("NoSuchPiece", mark);

    private protected override Sentence AtTheBenchOf(CutWork work, string other) => BenchReplies.Of("PieceAtTheBenchOf", work.Code, other);

    private protected override Sentence TakeItFirst(CutWork work) => BenchReplies.Of("TakePieceFirst", work.Code, BenchReplies.State(work.State));

    private protected override BenchAnswer ClaimNext(ShopSession session, string who)
    {
        if (CutQueue.Next(session, who) is not { } next)
        {
            var doWait = session.Value<bool>($"SELECT EXISTS (SELECT 1 FROM cut_tickets WHERE state = '{TicketStates.Waiting}')");
            return BenchAnswer.Refused(BenchReplies.Of(doWait ? "NoPieceCanBeCut" : "NoPieceWaits"));
        }
        // Asked again now that the coil is held: another cutter may have taken of it since the piece was found.
        if (!session.Dialect.HasOneWriter && CoilShelf.Free(session, next.CoilId) < next.Cut + next.Beside)
            return BenchAnswer.Refused(BenchReplies.Of("CoilJustTakenFrom", next.CoilMark));
        return BenchAnswer.Of(TryClaim(session, next, who), next.Code.Plain);
    }

    private protected override Sentence? Claim(ShopSession session, CutWork work, string who)
    {
        if (CutQueue.Of(session, work.Id) is not { } cut)
            return BenchReplies.Of("PieceHasNoCoil", work.Code);
        if (work.State == TicketStates.Waiting && CutStock.CannotGive(cut, work.Cut) is { } why)
            return why;
        return TryClaim(session, cut, who);
    }

    private protected override Sentence? Undo(ShopSession session, CutWork work, TimeSpan shift, string reason, string who)
    {
        if (work.State is not (TicketStates.Cut or TicketStates.AtTheBench) || work.Measured is null)
            return BenchReplies.Of("NoCutToUndo", work.Code, BenchReplies.State(work.State));
        if (session.Now - work.CutAt > shift)
            return BenchReplies.Of("CutTooLongAgo", work.Code, (int)shift.TotalHours);
        if (session.Value<bool>("SELECT first_use_id IS NULL FROM cut_tickets WHERE id = @Id", new { work.Id }))
            return BenchReplies.Of("CutBeforeLedger", work.Code);
        if (CutStock.WasUsedLater(session, work) is { } later)
            return later;
        if (CutStock.GiveBack(session, work, who) is { } why)
            return why;
        var move = work.State == TicketStates.Cut ? TicketStates.UndoCut : TicketStates.UndoAtTheBench;
        move.Do(session, work.Id, who, Again, reason: reason);
        return null;
    }

    private static void ClaimNow(ShopSession session, NextCut cut, string who)
    {
        if (TryClaim(session, cut, who) is { } why)
            throw new InvalidOperationException(why.ToString());
    }

    private static Sentence? TryClaim(ShopSession session, NextCut cut, string who) => TicketStates.ClaimCut.Try(
        session,
        cut.Id,
        who,
        Claims.Take + ", steps = 0, cut_coil_id = @CoilId, reserved_nm = @reserved",
        new { cut.CoilId, reserved = cut.Cut + cut.Beside });

    private static Sentence? TakeIn(
        ShopSession session, NextCut cut, CutWork work, Length measured, Length longest, string who, HistoryCode? what = null)
    {
        if (CutStock.TakeOff(session, cut, measured, longest, isTaken: true, who, out var firstUse) is { } why)
            return why;
        const int Step = (int)CutStep.Measure;
        session.Execute(
            """
            UPDATE cut_tickets SET measured_nm = @measured, longest_nm = @longest, first_use_id = @firstUse, reserved_nm = 0, cut_by = @who, cut_at = @Now,
              steps = @Step, touched_at = @Now
            WHERE id = @Id
            """,
            new { measured, longest, firstUse, who, session.Now, Step, work.Id });
        session.Record("cut ticket", work.Id, who, what ?? HistoryCodes.CutMeasured, afterLength: measured, details: StepsOf(work, Step));
        CutStock.PutRestAway(session, cut, who);
        return null;
    }

    /// <summary>The piece is to be measured again, by whoever says so: its rope is on its coil as if it had not been measured.</summary>
    private static Sentence? TakeMeasureBack(ShopSession session, CutWork work, string who)
    {
        if (session.Value<bool>("SELECT first_use_id IS NULL FROM cut_tickets WHERE id = @Id", new { work.Id }))
            return BenchReplies.Of("CutBeforeLedger", work.Code);
        if (CutStock.GiveBack(session, work, who) is { } why)
            return why;
        if (CutQueue.Of(session, work.Id) is not { } cut)
            return BenchReplies.Of("PieceHasNoCoil", work.Code);
        var measured = work.Measured!.Value;
        const int Step = (int)CutStep.Cut;
        const string NotMeasured =
            """
            , measured_nm = NULL, longest_nm = @longest, first_use_id = NULL, cut_by = NULL, cut_at = NULL, reserved_nm = @reserved, steps = @Step
            """;
        // What was trimmed off it before is known; a measure that was good at once leaves nothing to trim.
        var (longest, reserved) = (work.Longest > measured ? work.Longest : null, work.Cut + cut.Beside);
        var details = new { measuredNm = measured.Nanometres };
        if (work.State == TicketStates.Cut)
        {
            TicketStates.MeasureAgain.Do(session, work.Id, who, Claims.Take + NotMeasured, new { longest, reserved, Step }, details: details);
            return null;
        }
        session.Execute($"UPDATE cut_tickets SET touched_at = @Now{NotMeasured} WHERE id = @Id", new { longest, reserved, Step, session.Now, work.Id });
        session.Record("cut ticket", work.Id, who, HistoryCodes.MeasureTakenBack, details: details);
        return null;
    }

    private static void Untick(ShopSession session, CutWork work, CutStep step, string who)
    {
        session.Execute("UPDATE cut_tickets SET steps = @before, touched_at = @Now WHERE id = @Id", new { before = (int)step - 1, session.Now, work.Id });
        session.Record("cut ticket", work.Id, who, HistoryCodes.CutStepUndone, details: new { step = (int)step });
    }

    private static Sentence? PutAside(ShopSession session, CutWork work, Length measured, Length longest, string who)
    {
        var cut = CutQueue.Of(session, work.Id)!;
        if (CutStock.TakeOff(session, cut, measured, longest, isTaken: false, who, out _) is { } why)
            return why;
        var shortBy = work.Cut - measured;
        ReCuts.Add(session, work.Id, measured, $"short by {shortBy}", who);
        TicketStates.PutAside.Do(
            session, work.Id, who, Again, reason: Reason.Because(HistoryCause.Short), details: new { shortNm = shortBy.Nanometres });
        return null;
    }

    private static void Step(ShopSession session, CutWork work, CutStep step, string who, HistoryCode how)
    {
        session.Execute("UPDATE cut_tickets SET steps = @step, touched_at = @Now WHERE id = @Id", new { step = (int)step, session.Now, work.Id });
        session.Record("cut ticket", work.Id, who, how, details: StepsOf(work, (int)step));
        if (step == CutStep.LabelAndTie)
            TicketStates.FinishCut.Do(session, work.Id, who, Claims.Free);
    }

    private static object StepsOf(CutWork work, int step) => new { stepBefore = work.Steps, step, steps = (int)CutStep.LabelAndTie };
}
