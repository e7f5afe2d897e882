using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>How something done at a bench went.</summary>
/// <param name="Problem">Why nothing was changed, or null.</param>
public sealed record BenchAnswer(string? Problem)
{
    /// <summary>True where it is stored.</summary>
    public bool IsDone => Problem is null;

    internal static BenchAnswer Done { get; } = new((string?)null);
}

/// <summary>What the cutter does with rope: a cut piece takes its length off its coil.</summary>
public sealed class CutBench(ShopDatabase database)
{
    /// <summary>
    /// Records that a piece was cut where the accepted plan puts it. The coil is shorter by the piece, its kerf and its
    /// squaring, and by the first trim where it is the coil's first cut of the plan. After the coil's last cut what is left
    /// goes back to the rack as an offcut with the coil's lot, or is scrap.
    /// </summary>
    /// <param name="code">The piece.</param>
    /// <param name="who">Who cut it.</param>
    /// <param name="requestKey">A key of this request's own: sent twice it counts once.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> RecordCutAsync(PieceCode code, string who, string requestKey, CancellationToken cancel = default) =>
        database.WriteAsync(
            session =>
            {
                if (RequestLog.Find(session, requestKey) is not null)
                    return BenchAnswer.Done;
                var answer = RecordCut(session, code, who);
                if (answer.IsDone)
                    RequestLog.Keep(session, requestKey, "cut");
                return answer;
            },
            cancel);

    private static BenchAnswer RecordCut(ShopSession session, PieceCode code, string who)
    {
        if (session.FirstOrDefault<TicketRow>(
            """
            SELECT cut_tickets.id, pieces.id AS piece_id, cut_nm AS cut, cut_tickets.state, cut_tickets.plan_coil_id, coil_id,
              kerf_nm AS kerf, squaring_nm AS squaring, first_trim_nm AS first_trim, keep_nm AS keep
            FROM pieces JOIN cut_tickets ON piece_id = pieces.id
            LEFT JOIN plan_coils ON plan_coils.id = cut_tickets.plan_coil_id LEFT JOIN cut_plans ON cut_plans.id = plan_id
            WHERE code = @code
            """,
            new { code }) is not { } ticket)
            return new($"No piece has the code {code}.");
        if (ticket.State != "waiting")
            return new($"The piece {code} is {ticket.State} already.");
        if (ticket.PlanCoilId is not { } planCoil || ticket.CoilId is not { } coilId)
            return new($"The piece {code} has no coil yet: accept a cut plan first.");

        var coil = CoilStock.ById(session, coilId)!;
        var isFirst = session.Value<long>("SELECT count(*) FROM cut_tickets WHERE plan_coil_id = @planCoil AND state IN ('cut', 'surplus')", new { planCoil }) == 0;
        var used = ticket.Cut + ticket.Kerf!.Value + ticket.Squaring!.Value + (isFirst ? ticket.FirstTrim!.Value : Length.Zero);
        if (coil.State != CoilStock.InStock || coil.Left < used)
            return new($"Coil {coil.Mark} is {coil.State} with {coil.Left} left; the piece takes {used}. Make a new plan.");

        session.Execute("UPDATE cut_tickets SET state = 'cut', cut_at = @Now WHERE id = @Id", new { session.Now, ticket.Id });
        session.Record("cut ticket", ticket.Id, who, $"cut from {coil.Mark}, lot {coil.Lot}", "waiting", "cut");
        CoilStock.Take(session, coil, coil.Left - used, who, "cut from");
        if (session.Value<long>("SELECT count(*) FROM cut_tickets WHERE plan_coil_id = @planCoil AND state = 'waiting'", new { planCoil }) == 0)
            PutRestAway(session, coil with { Left = coil.Left - used }, ticket.Keep!.Value, who);
        return BenchAnswer.Done;
    }

    private static void PutRestAway(ShopSession session, StockCoil coil, Length keep, string who)
    {
        if (coil.Left == Length.Zero)
            return;
        if (coil.Left >= keep)
            CoilStock.Take(session, coil, Length.Zero, who, $"rest hung up as {CoilStock.HangOffcut(session, coil, coil.Left, who)}");
        else
            CoilStock.Take(session, coil, Length.Zero, who, "scrap");
    }

    private sealed record TicketRow(
        long Id,
        long PieceId,
        Length Cut,
        string State,
        long? PlanCoilId,
        long? CoilId,
        Length? Kerf,
        Length? Squaring,
        Length? FirstTrim,
        Length? Keep);
}
