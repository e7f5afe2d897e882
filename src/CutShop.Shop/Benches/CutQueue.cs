using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Benches;

/// <summary>
/// Which piece is cut next: the earliest due, and among those one of the coil that hangs at this cutter's bench, then of a
/// coil that hangs at nobody's, in the accepted plan's order of coils and places. A piece that no longer fits on its coil waits for a
/// new plan.
/// </summary>
internal static class CutQueue
{
    private const string Order = " ORDER BY cut_tickets.queue_due, cut_tickets.plan_coil_id, cut_tickets.queue_place";

    private const string Columns =
        """
        SELECT cut_tickets.id, code, queue_due AS due, plan_coils.coil_id, cut_nm AS cut, kerf_nm AS kerf, squaring_nm AS squaring,
          first_trim_nm AS first_trim, keep_nm AS keep, trimmed, plan_coils.id AS plan_coil_id, coils.mark AS coil_mark, coils.state AS coil_state, left_nm AS left

        """;

    /// <summary>The next piece for a cutter, or null where none is free that can be cut. Its ticket and its coil are held.</summary>
    public static NextCut? Next(ShopSession session, string who)
    {
        if (First(session) is not { } first)
            return null;
        var hung = session.FirstOrDefault<long?>("SELECT cut_coil_id FROM cut_tickets WHERE cut_by = @who ORDER BY cut_at DESC LIMIT 1", new { who });
        if (hung is not null && hung != first.CoilId && !IsAtABench(session, hung.Value)
            && First(
                session,
                " AND cut_tickets.queue_due = @Due AND cut_tickets.plan_coil_id IN (SELECT id FROM plan_coils WHERE coil_id = @hung)",
                new { first.Due, hung }) is { } ofHung)
            return ofHung;
        if (!IsAtABench(session, first.CoilId))
            return first;
        return First(
            session,
            $" AND cut_tickets.queue_due = @Due AND coils.id NOT IN (SELECT busy.cut_coil_id FROM cut_tickets AS busy WHERE busy.state = '{TicketStates.AtTheBench}')",
            new { first.Due }) ?? first;
    }

    /// <summary>The same of one piece, whether or not it fits on its coil; null where no accepted plan gives it one.</summary>
    public static NextCut? Of(ShopSession session, long ticketId) => session.FirstOrDefault<NextCut>(
        Columns +
        $"""
        FROM cut_tickets JOIN plan_coils ON plan_coils.id = cut_tickets.plan_coil_id JOIN cut_plans ON cut_plans.id = plan_coils.plan_id
        JOIN coils ON coils.id = plan_coils.coil_id JOIN pieces ON pieces.id = cut_tickets.piece_id JOIN jobs ON jobs.id = pieces.job_id
        WHERE cut_tickets.id = @ticketId AND {ReleasedJobs.Condition}
        """,
        new { ticketId });

    private static NextCut? First(ShopSession session, string more = "", object? values = null) => session.FirstOrDefault<NextCut>(
        Columns + Waiting(session.Dialect.JoinAsWritten) + more + Order + session.Dialect.LockFirstAvailable("cut_tickets", "coils"), values);

    private static string Waiting(string join) =>
        $"""
        FROM cut_tickets
        {join} plan_coils ON plan_coils.id = cut_tickets.plan_coil_id
        {join} cut_plans ON cut_plans.id = plan_coils.plan_id
        {join} coils ON coils.id = plan_coils.coil_id
        {join} coils_free ON coils_free.id = coils.id
        {join} pieces ON pieces.id = cut_tickets.piece_id
        {join} jobs ON jobs.id = pieces.job_id
        WHERE cut_tickets.state = '{TicketStates.Waiting}' AND cut_tickets.plan_coil_id IS NOT NULL AND coils.state = '{CoilStates.InStock}'
          AND free_nm >= cut_nm + kerf_nm + squaring_nm + CASE WHEN plan_coils.trimmed = 1 THEN 0 ELSE first_trim_nm END
          AND {ReleasedJobs.Condition}
        """;

    private static bool IsAtABench(ShopSession session, long coilId) =>
        session.Value<bool>($"SELECT EXISTS (SELECT 1 FROM cut_tickets WHERE state = '{TicketStates.AtTheBench}' AND cut_coil_id = @coilId)", new { coilId });
}

/// <summary>A piece that can be given to a cutter.</summary>
internal sealed record NextCut(
    long Id,
    PieceCode Code,
    string Due,
    long CoilId,
    Length Cut,
    Length Kerf,
    Length Squaring,
    Length FirstTrim,
    Length Keep,
    long Trimmed,
    long PlanCoilId,
    string CoilMark,
    string CoilState,
    Length Left)
{
    /// <summary>What cutting takes of the coil beside the piece.</summary>
    public Length Beside => Kerf + Squaring + TrimNow;

    /// <summary>The first trim, where it is yet to be made.</summary>
    public Length TrimNow => Trimmed == 1 ? Length.Zero : FirstTrim;
}
