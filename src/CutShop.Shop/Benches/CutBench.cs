using System.Globalization;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>
/// The cut bench. One piece is given to one cutter; each step is a tap; the measured length decides whether the piece is
/// taken. Every operation is one transaction with its line of history, and sent twice with the same key it counts once.
/// </summary>
public sealed class CutBench(ShopDatabase database)
{
    private const string Fresh = ", steps = 0, cut_coil_id = NULL, reserved_nm = 0, longest_nm = NULL, measured_nm = NULL, first_use_id = NULL, cut_by = NULL, cut_at = NULL";

    private static readonly string AllSteps = string.Create(CultureInfo.InvariantCulture, $", steps = {(int)CutStep.CoilAndTie}");

    /// <summary>A piece stays in the queue's order only while its plan is the accepted one.</summary>
    private const string Place =
        """
        , plan_coil_id = (SELECT plan_coils.id FROM plan_coils JOIN cut_plans ON cut_plans.id = plan_id
                          WHERE plan_coils.id = plan_coil_id AND cut_plans.state = 'accepted')
        """;

    /// <summary>The ticket waits again with nothing done.</summary>
    private const string Again = Fresh + Place + Claims.Free;

    internal static Claims Claims { get; } =
        new(TicketStates.CutTickets, TicketStates.HandBackCut, $"steps < {(int)CutStep.Cut}", ", steps = 0, cut_coil_id = NULL, reserved_nm = 0" + Place);

    /// <summary>The ticket of a piece, or null.</summary>
    public CutWork? Find(PieceCode code) => database.Read(session => CutWork.Find(session, code));

    /// <summary>The ticket that someone has at the bench, or null.</summary>
    public CutWork? Of(string who) => database.Read(session => Claims.Of(session, who) is { } id ? CutWork.Of(session, id) : null);

    /// <summary>What the cuts of a piece left beside it: offcuts to mark and hang up, and scrap.</summary>
    public LeftOver LeftOver(PieceCode code) => database.Read(session => Shop.LeftOver.Of(session, code));

    /// <summary>What is at the benches now.</summary>
    public IReadOnlyList<CutWork> AtTheBench() => database.Read(CutWork.AtTheBench);

    /// <summary>The pieces cut last, the newest first.</summary>
    public IReadOnlyList<CutWork> Latest(int most = 10) => database.Read(session => CutWork.Latest(session, most));

    /// <summary>How many pieces wait, and how many of them an accepted plan gives a coil.</summary>
    public (long Planned, long All) Waiting() => database.Read(session => session.Value<(long, long)>(
        "SELECT count(*) FILTER (WHERE plan_coil_id IS NOT NULL), count(*) FROM cut_tickets WHERE state = 'waiting'"));

    /// <summary>
    /// Gives the next piece: the one that this person has already, else the first of the queue. The outcome is the piece's code.
    /// </summary>
    public Task<BenchAnswer> NextAsync(string who, string requestKey, CancellationToken cancel = default) => Claims.NextAsync(
        database,
        who,
        requestKey,
        session =>
        {
            if (Claims.Of(session, who) is { } mine)
                return BenchAnswer.Given(CutWork.Of(session, mine).Code.Plain);
            if (CutQueue.Next(session, who) is not { } next)
                return BenchAnswer.Refused(session.Value<bool>("SELECT EXISTS (SELECT 1 FROM cut_tickets WHERE state = 'waiting')")
                    ? (FormattableString)$"No piece can be cut now: none waits that an accepted plan gives a coil with enough rope."
                    : $"No piece waits to be cut.");
            // Asked again now that the coil is held: another cutter may have taken of it since the piece was found.
            if (!session.Dialect.HasOneWriter && CoilStock.Free(session, next.CoilId) < next.Cut + next.Beside)
                return BenchAnswer.Refused($"Coil {next.CoilMark} was just taken from.");
            return TryClaim(session, next, who) is { } why ? BenchAnswer.Refused(why) : BenchAnswer.Given(next.Code.Plain);
        },
        cancel);

    /// <summary>Gives a certain piece that waits, as when its ticket or label is scanned.</summary>
    public Task<BenchAnswer> TakeAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            Claims.HandBackForgotten(session);
            if (Claims.HasAnother(session, work.Id, who) is { } busy)
                return busy;
            if (CutQueue.Of(session, work.Id) is not { } cut)
                return $"The piece {work.Code} has no coil yet: its job is to be released and a cut plan accepted first.";
            if (work.State == TicketStates.Waiting && CutStock.CannotGive(cut, work.Cut) is { } why)
                return why;
            return TryClaim(session, cut, who);
        },
        cancel);

    /// <summary>Ticks a step. Steps are ticked in their order, by whoever has the ticket; the last one finishes it.</summary>
    public Task<BenchAnswer> TickAsync(PieceCode code, CutStep step, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if (IsNotHis(work, who) is { } why)
                return why;
            if (step == CutStep.Measure)
                return $"Enter the measured length.";
            if (work.Next != step)
                return $"Step {(int)step} cannot be ticked now: {work.Steps} of {(int)CutStep.CoilAndTie} are done.";
            Step(session, work, step, who);
            if (step == CutStep.CoilAndTie)
                TicketStates.FinishCut.Do(session, work.Id, who, Claims.Free);
            return null;
        },
        cancel);

    /// <summary>
    /// Enters the length measured after cutting. Within the tolerance the piece is taken and its rope leaves the coil. A long
    /// piece is to be trimmed and measured again. A short one is refused; with <paramref name="putAside"/> it goes to the rack as an
    /// offcut of the same lot, or is scrap, and the ticket waits again.
    /// </summary>
    public Task<BenchAnswer> MeasureAsync(
        PieceCode code, Length measured, bool putAside, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if (IsNotHis(work, who) is { } why)
                return why;
            if (work.Next != CutStep.Measure)
                return $"It is not the time to measure: {work.Steps} of {(int)CutStep.CoilAndTie} steps are done.";
            if (!measured.IsPositive)
                return $"A piece that was cut is longer than nothing.";
            var settings = BenchSettingsShelf.Read(session);
            var longest = Length.Max(measured, work.Longest ?? Length.Zero);
            if (measured < work.Cut - settings.Under)
            {
                if (!putAside)
                    return $"Too short: {measured} measured, {work.Cut} asked, at most {settings.Under} under. Measure once more; if it is so, put it aside.";
                return PutAside(session, work, measured, longest, who);
            }
            if (measured > work.Cut + settings.Over)
            {
                session.Execute("UPDATE cut_tickets SET longest_nm = @longest, touched_at = @Now WHERE id = @Id", new { longest, session.Now, work.Id });
                session.Record("cut ticket", work.Id, who, HistoryCodes.CutTooLong, beforeLength: work.Longest, afterLength: longest);
                return null;
            }
            var cut = CutQueue.Of(session, work.Id)!;
            return TakeIn(session, cut, work, measured, longest, who);
        },
        cancel);

    /// <summary>Hands a ticket back to the queue, while the rope is not cut.</summary>
    public Task<BenchAnswer> HandBackAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(code, requestKey, (session, work) => Claims.HandBack(session, work.Id, who), cancel);

    /// <summary>Takes a ticket over from whoever has it, as far as it is.</summary>
    public Task<BenchAnswer> TakeOverAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(code, requestKey, (session, work) => Claims.TakeOver(session, work.Id, who), cancel);

    /// <summary>Undoes a cut that was recorded by mistake: its rope is on the coil again. Within the shift, with a reason.</summary>
    public Task<BenchAnswer> UndoAsync(PieceCode code, string reason, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if (BenchAnswer.NeedsReason(reason) is { } why)
                return why;
            if (work.State is not (TicketStates.Cut or TicketStates.AtTheBench) || work.Measured is null)
                return $"The piece {work.Code} is {new StateWord(work.State)}: there is no cut to undo.";
            var shift = BenchSettingsShelf.Read(session).Shift;
            if (session.Now - work.CutAt > shift)
                return $"The piece {work.Code} was cut more than {(int)shift.TotalHours} hours ago. What is wrong with it now is a piece to be cut again, not a slip.";
            if (session.Value<bool>("SELECT first_use_id IS NULL FROM cut_tickets WHERE id = @Id", new { work.Id }))
                return $"The piece {work.Code} was cut before the rope ledger began.";
            if (CutStock.GiveBack(session, work, who) is { } cannot)
                return cannot;
            var move = work.State == TicketStates.Cut ? TicketStates.UndoCut : TicketStates.UndoAtTheBench;
            move.Do(session, work.Id, who, Again, reason: reason);
            return null;
        },
        cancel);

    /// <summary>Refuses a piece that was taken: it goes to the rack as an offcut or is scrap, and its ticket waits again.</summary>
    public Task<BenchAnswer> RejectAsync(PieceCode code, string reason, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        code,
        requestKey,
        (session, work) =>
        {
            if (BenchAnswer.NeedsReason(reason) is { } why)
                return why;
            if (work.State is not (TicketStates.Cut or TicketStates.AtTheBench) || work.Measured is null)
                return $"The piece {work.Code} is {new StateWord(work.State)}: only a piece that is cut can be cut again.";
            CutStock.Reject(session, work, who);
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
            if (work.State == TicketStates.AtTheBench && IsNotHis(work, who) is { } his)
                return his;
            if (work.State is not (TicketStates.Waiting or TicketStates.AtTheBench) || work.Measured is not null)
                return $"The piece {code} is {new StateWord(work.State)} already.";
            if (CutQueue.Of(session, work.Id) is not { } cut)
                return $"The piece {code} has no coil yet: its job is to be released and a cut plan accepted first.";
            var longest = Length.Max(work.Cut, work.Longest ?? work.Cut);
            if (CutStock.CannotGive(cut, longest) is { } why)
                return why;
            if (work.State == TicketStates.Waiting)
                Claim(session, cut, who);
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

    private static void Claim(ShopSession session, NextCut cut, string who)
    {
        if (TryClaim(session, cut, who) is { } why)
            throw new InvalidOperationException(FormattableString.Invariant(why));
    }

    private static FormattableString? TryClaim(ShopSession session, NextCut cut, string who) => TicketStates.ClaimCut.Try(
        session,
        cut.Id,
        who,
        Claims.Take + ", steps = 0, cut_coil_id = @CoilId, reserved_nm = @reserved",
        new { cut.CoilId, reserved = cut.Cut + cut.Beside });

    private static FormattableString? TakeIn(
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

    private static FormattableString? PutAside(ShopSession session, CutWork work, Length measured, Length longest, string who)
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

    private static void Step(ShopSession session, CutWork work, CutStep step, string who)
    {
        session.Execute("UPDATE cut_tickets SET steps = @step, touched_at = @Now WHERE id = @Id", new { step = (int)step, session.Now, work.Id });
        session.Record("cut ticket", work.Id, who, HistoryCodes.CutStepDone, details: StepsOf(work, (int)step));
    }

    private static object StepsOf(CutWork work, int step) => new { stepBefore = work.Steps, step, steps = (int)CutStep.CoilAndTie };

    private static FormattableString? IsNotHis(CutWork work, string who) => work.State == TicketStates.AtTheBench && work.ClaimedBy == who
        ? null
        : work.ClaimedBy is { } other
            ? $"The piece {work.Code} is at the bench of {other}."
            : (FormattableString)$"The piece {work.Code} is {new StateWord(work.State)}: take it to the bench first.";

    private Task<BenchAnswer> ForAsync(
        PieceCode code, string requestKey, Func<ShopSession, CutWork, FormattableString?> work, CancellationToken cancel) => database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () => CutWork.Find(session, code) is { } found
                ? work(session, found) is { } why ? BenchAnswer.Refused(why) : BenchAnswer.Given(code.Plain)
                : BenchAnswer.Refused($"No piece has the code {code}.")),
        cancel);
}
