using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Benches;

/// <summary>A piece that was cut and is no longer wanted.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Job">The number of the job that it was cut for.</param>
/// <param name="Run">Its run.</param>
/// <param name="Kind">Its rope.</param>
/// <param name="Lot">Its lot.</param>
/// <param name="Length">How long it is.</param>
public sealed record SurplusPiece(PieceCode Code, string Job, string Run, RopeKind Kind, string Lot, Length Length);

/// <summary>
/// The pieces that a change or a cancelled job left over. Each becomes an offcut of its lot again, or is scrapped; then its ticket
/// is cancelled.
/// </summary>
public sealed class SurplusShelf(ShopDatabase database)
{
    /// <summary>Surplus whose rope is still in a piece. A piece that was cut again on site has none: its rope is scrap.</summary>
    private static readonly string Pieces =
        $"""
        SELECT code, number AS job, run, {SqlTypes.RopeOf("coils")} AS kind, lot, measured_nm AS length
        FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id JOIN coils ON coils.id = cut_coil_id
        WHERE cut_tickets.state = '{TicketStates.Surplus}' AND measured_nm IS NOT NULL
          AND (SELECT sum(nm) FROM rope_uses WHERE ticket_id = cut_tickets.id AND kind = 'piece') > 0
        """;

    /// <summary>What a ticket no longer has once its piece is gone; who cut it and when is kept.</summary>
    private const string NoPiece = ", steps = 0, plan_coil_id = NULL, cut_coil_id = NULL, longest_nm = NULL, measured_nm = NULL, first_use_id = NULL";

    /// <summary>All of them, by rope and then the longest first.</summary>
    public IReadOnlyList<SurplusPiece> All() => database.Read(session =>
        session.All<SurplusPiece>(Pieces + $" ORDER BY {SqlTypes.Columns("coils")}, lot, measured_nm DESC, code"));

    /// <summary>Hangs one up as an offcut, however short. The answer has the offcut's mark. Safe to send twice with the same key.</summary>
    /// <param name="code">The piece.</param>
    /// <param name="who">Who hangs it up.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> HangUpAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) =>
        EndAsync(code, TicketStates.HangUpSurplus, (session, work) => CutStock.HangUp(session, work, who), who, requestKey, cancel);

    /// <summary>Throws one away: it is scrap in the ledger, and the answer has no mark. Safe to send twice with the same key.</summary>
    /// <param name="code">The piece.</param>
    /// <param name="who">Who throws it away.</param>
    /// <param name="requestKey">A key of this request's own.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<StockAnswer> ScrapAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) =>
        EndAsync(
            code,
            TicketStates.ScrapSurplus,
            (session, work) =>
            {
                CutStock.Scrap(session, work);
                return "";
            },
            who,
            requestKey,
            cancel);

    private Task<StockAnswer> EndAsync(
        PieceCode code, TicketMove move, Func<ShopSession, CutWork, string> become, string who, string requestKey, CancellationToken cancel) => database.WriteAsync(
        session => CoilShelf.Once(session, requestKey, () =>
        {
            if (session.FirstOrDefault<SurplusPiece>(Pieces + " AND code = @code", new { code }) is null)
                return CoilShelf.Refused("SurplusPiece", code);
            var work = CutWork.Find(session, code)!;
            var mark = become(session, work);
            move.Do(session, work.Id, who, NoPiece);
            return CoilShelf.Done(mark);
        }),
        cancel);
}
