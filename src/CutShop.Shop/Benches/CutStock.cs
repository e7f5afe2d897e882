using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>What cutting, putting aside and undoing do to the coils. Every inch is accounted for in the rope ledger.</summary>
internal static class CutStock
{
    /// <summary>Why a coil cannot give a piece, or null.</summary>
    public static Sentence? CannotGive(NextCut cut, Length length)
    {
        var used = length + cut.Beside;
        return cut.CoilState == CoilStates.InStock && cut.Left >= used
            ? null
            : BenchReplies.Of("CoilTooShort", cut.CoilMark, BenchReplies.State(cut.CoilState), cut.Left, used);
    }

    /// <summary>Takes a cut piece with its kerf, squaring and trim off its coil; what was trimmed off the piece itself is scrap.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="cut">The ticket.</param>
    /// <param name="measured">The piece's length.</param>
    /// <param name="longest">Its length before it was trimmed.</param>
    /// <param name="isTaken">True for a good piece; false for one put aside.</param>
    /// <param name="who">Who cut it.</param>
    /// <param name="firstUse">The ledger's first line of this cut.</param>
    /// <returns>Why the coil cannot give it, or null.</returns>
    public static Sentence? TakeOff(
        ShopSession session, NextCut cut, Length measured, Length longest, bool isTaken, string who, out long firstUse)
    {
        firstUse = 0;
        if (CannotGive(cut, longest) is { } why)
            return why;
        var kerf = RopeLedger.Add(session, cut.CoilId, RopeLedger.Kerf, cut.Kerf + cut.Squaring, cut.Id);
        var trim = RopeLedger.Add(session, cut.CoilId, RopeLedger.Trim, cut.TrimNow, cut.Id);
        var trimmedOff = RopeLedger.Add(session, cut.CoilId, RopeLedger.Scrap, longest - measured, cut.Id);
        var piece = isTaken
            ? RopeLedger.Add(session, cut.CoilId, RopeLedger.Piece, measured, cut.Id)
            : PutAside(session, CoilShelf.ById(session, cut.CoilId)!, cut.Id, measured, cut.Keep, who);
        firstUse = (kerf ?? trim ?? trimmedOff ?? piece)!.Value;
        if (cut.Trimmed == 0)
            session.Execute("UPDATE plan_coils SET trimmed = 1 WHERE id = @PlanCoilId", new { cut.PlanCoilId });
        CoilShelf.Take(session, cut.CoilId, cut.Left, cut.Left - longest - cut.Beside, who, isTaken ? HistoryCodes.CutFrom : HistoryCodes.CutFromPutAside);
        return null;
    }

    /// <summary>After the coil's last cut of the plan, hangs up what is left as an offcut, or counts it as scrap.</summary>
    public static void PutRestAway(ShopSession session, NextCut cut, string who)
    {
        if (session.Value<bool>(
            $"""
            SELECT EXISTS (SELECT 1 FROM cut_tickets WHERE plan_coil_id = @PlanCoilId AND state = '{TicketStates.Waiting}')
              OR EXISTS (SELECT 1 FROM cut_tickets WHERE plan_coil_id = @PlanCoilId AND state = '{TicketStates.AtTheBench}' AND measured_nm IS NULL)
            """,
            new { cut.PlanCoilId }))
            return;
        var coil = CoilShelf.ById(session, cut.CoilId)!;
        if (coil.Left == Length.Zero || CoilShelf.Free(session, coil.Id) < coil.Left || WaitsElsewhere(session, coil.Id))
            return;
        if (coil.Left < cut.Keep)
        {
            RopeLedger.Add(session, coil.Id, RopeLedger.Scrap, coil.Left, cut.Id);
            CoilShelf.Take(session, coil, Length.Zero, who, HistoryCodes.RestScrapped);
            return;
        }
        var mark = CoilShelf.HangOffcut(session, coil, coil.Left, who);
        RopeLedger.Add(session, coil.Id, RopeLedger.Offcut, coil.Left, cut.Id, IdOf(session, mark));
        CoilShelf.Take(session, coil, Length.Zero, who, HistoryCodes.RestHungUp, details: new { offcut = mark });
    }

    /// <summary>Turns a piece that was good into an offcut or scrap.</summary>
    public static void Reject(ShopSession session, CutWork work, string who)
    {
        var coil = NoPieceNow(session, work);
        PutAside(session, coil, work.Id, work.Measured!.Value, KeepOf(session, work.Id), who);
    }

    /// <summary>Turns a piece into an offcut, however short.</summary>
    /// <returns>The offcut's mark.</returns>
    public static string HangUp(ShopSession session, CutWork work, string who)
    {
        var coil = NoPieceNow(session, work);
        var mark = CoilShelf.HangOffcut(session, coil, work.Measured!.Value, who);
        RopeLedger.Add(session, coil.Id, RopeLedger.Offcut, work.Measured.Value, work.Id, IdOf(session, mark));
        return mark;
    }

    /// <summary>Turns a piece into scrap.</summary>
    public static void Scrap(ShopSession session, CutWork work) =>
        RopeLedger.Add(session, NoPieceNow(session, work).Id, RopeLedger.Scrap, work.Measured!.Value, work.Id);

    /// <summary>
    /// Why a cut cannot be as if it had not been made: its coil was cut or counted since, or an offcut of it is used; null where it can.
    /// </summary>
    public static Sentence? WasUsedLater(ShopSession session, CutWork work)
    {
        var (coilId, firstUse) = FirstUse(session, work);
        if (session.Value<bool>(
            "SELECT EXISTS (SELECT 1 FROM rope_uses WHERE coil_id = @coilId AND id > @firstUse AND ticket_id IS DISTINCT FROM @Id GROUP BY ticket_id HAVING sum(nm) <> 0)",
            new { coilId, firstUse, work.Id }))
            return BenchReplies.Of("CoilUsedLater", CoilShelf.ById(session, coilId)!.Mark);
        return Offcuts(session, RopeLedger.Of(session, work.Id, firstUse)).FirstOrDefault(offcut => !IsUntouched(session, offcut)) is { } used
            ? BenchReplies.Of("OffcutUsed", used.Mark)
            : null;
    }

    /// <summary>Gives a cut's rope back to its coil. An offcut of it that is used or planned meanwhile stays one.</summary>
    /// <returns>Why that cannot be, or null.</returns>
    public static Sentence? GiveBack(ShopSession session, CutWork work, string who)
    {
        var (coilId, firstUse) = FirstUse(session, work);
        var coil = CoilShelf.ById(session, coilId)!;
        if (coil.State == CoilStates.Retired)
            return BenchReplies.Of("CoilTakesNothingBack", coil.Mark, BenchReplies.State(coil.State));

        var all = RopeLedger.Of(session, work.Id, firstUse);
        var stay = Offcuts(session, all).Where(offcut => !IsUntouched(session, offcut)).Select(offcut => offcut.Id).ToHashSet();
        var uses = all.Where(use => !stay.Contains(use.ToCoilId)).ToList();
        foreach (var use in uses)
        {
            RopeLedger.Add(session, coilId, use.Kind, Length.FromNanometres(-use.Nm), work.Id, use.ToCoilId == 0 ? null : use.ToCoilId);
            if (use.ToCoilId != 0)
                TakeOffcutDown(session, CoilShelf.ById(session, use.ToCoilId)!, coil, who);
            if (use.Kind == RopeLedger.Trim)
                session.Execute("UPDATE plan_coils SET trimmed = 0 WHERE id = (SELECT plan_coil_id FROM cut_tickets WHERE id = @Id)", new { work.Id });
        }
        CoilShelf.Take(session, coil, coil.Left + Length.FromNanometres(uses.Sum(use => use.Nm)), who, HistoryCodes.CutUndone);
        return null;
    }

    private static (long CoilId, long FirstUse) FirstUse(ShopSession session, CutWork work) =>
        session.Value<(long, long)>("SELECT cut_coil_id, first_use_id FROM cut_tickets WHERE id = @Id", new { work.Id });

    private static IEnumerable<StockCoil> Offcuts(ShopSession session, IEnumerable<RopeUse> uses) =>
        uses.Where(use => use.ToCoilId != 0).Select(use => CoilShelf.ById(session, use.ToCoilId)!);

    /// <summary>True for an offcut that hangs as it was cut, with nothing planned from it.</summary>
    private static bool IsUntouched(ShopSession session, StockCoil offcut) =>
        offcut.State == CoilStates.InStock && offcut.Left == offcut.Whole && CoilShelf.Free(session, offcut.Id) >= offcut.Left && !WaitsElsewhere(session, offcut.Id);

    /// <summary>Takes a piece's rope out of the ledger's pieces.</summary>
    /// <returns>The coil that it was cut from.</returns>
    private static StockCoil NoPieceNow(ShopSession session, CutWork work)
    {
        var coilId = session.Value<long>("SELECT cut_coil_id FROM cut_tickets WHERE id = @Id", new { work.Id });
        RopeLedger.Add(session, coilId, RopeLedger.Piece, -work.Measured!.Value, work.Id);
        return CoilShelf.ById(session, coilId)!;
    }

    private static long? PutAside(ShopSession session, StockCoil coil, long ticketId, Length length, Length keep, string who) => length < keep
        ? RopeLedger.Add(session, coil.Id, RopeLedger.Scrap, length, ticketId)
        : RopeLedger.Add(session, coil.Id, RopeLedger.Offcut, length, ticketId, IdOf(session, CoilShelf.HangOffcut(session, coil, length, who)));

    /// <summary>An offcut that is part of its coil again.</summary>
    private static void TakeOffcutDown(ShopSession session, StockCoil offcut, StockCoil coil, string who)
    {
        RopeLedger.Add(session, offcut.Id, RopeLedger.Correction, offcut.Left);
        CoilShelf.Take(session, offcut, Length.Zero, who, HistoryCodes.OffcutTakenDown, details: new { coil = coil.Mark });
    }

    /// <summary>True where pieces that wait are to be cut from the coil.</summary>
    private static bool WaitsElsewhere(ShopSession session, long coilId) => session.Value<bool>(
        $"""
        SELECT EXISTS (SELECT 1 FROM plan_coils JOIN cut_tickets ON plan_coil_id = plan_coils.id
                       WHERE plan_coils.coil_id = @coilId AND cut_tickets.state = '{TicketStates.Waiting}')
        """,
        new { coilId });

    private static Length KeepOf(ShopSession session, long ticketId) => session.Value<Length>(
        "SELECT keep_nm FROM cut_tickets JOIN plan_coils ON plan_coils.id = plan_coil_id JOIN cut_plans ON cut_plans.id = plan_id WHERE cut_tickets.id = @ticketId",
        new { ticketId });

    private static long IdOf(ShopSession session, string mark) => session.Value<long>("SELECT id FROM coils WHERE mark = @mark", new { mark });
}
