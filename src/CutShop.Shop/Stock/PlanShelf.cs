using CutShop.CutPlan;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Stock;

/// <summary>Finds cut plans, and what waits to be planned.</summary>
public sealed class PlanShelf(ShopDatabase database)
{
    /// <summary>The ropes that pieces wait for, the earliest due first.</summary>
    public IReadOnlyList<RopeWaiting> Waiting() => database.Read(session => session.All<RopeWaiting>(
        $"""
        SELECT {SqlTypes.RopeOf("pieces")} AS kind, count(*) AS pieces,
          count(cut_tickets.plan_coil_id) AS planned, CAST(sum(cut_nm) AS bigint) AS rope, min(jobs.due) AS first_due
        FROM pieces JOIN cut_tickets ON piece_id = pieces.id JOIN jobs ON jobs.id = job_id
        WHERE cut_tickets.state = '{TicketStates.Waiting}' AND {ReleasedJobs.Condition}
        GROUP BY {SqlTypes.Columns("pieces")}
        ORDER BY min(jobs.due) IS NULL, min(jobs.due), {SqlTypes.Columns("pieces")}
        """));

    /// <summary>The plans, the newest first.</summary>
    /// <param name="most">How many at most.</param>
    public IReadOnlyList<PlanListed> List(int most = 100) => database.Read(session => session.All<PlanListed>(
        $"""
        SELECT id, {SqlTypes.RopeOf("cut_plans")} AS kind, state, made_at,
          (SELECT count(*) FROM plan_cuts JOIN plan_coils ON plan_coils.id = plan_coil_id WHERE plan_id = cut_plans.id) AS pieces, proof
        FROM cut_plans ORDER BY id DESC LIMIT @most
        """,
        new { most }));

    /// <summary>A plan by its number, or null.</summary>
    public StoredPlan? Find(long id) => database.Read(session => Find(session, id));

    /// <summary>
    /// The coils to buy by the newest plan of each rope that waits, the earliest needed first. Pieces that have since been
    /// cut or planned otherwise no longer ask for a coil.
    /// </summary>
    public IReadOnlyList<CoilToBuy> ToBuy() => database.Read(session => session.All<CoilToBuy>(
        $"""
        SELECT {SqlTypes.RopeOf("cut_plans")} AS kind, left_before_nm AS coil, count(*) AS pieces,
          CAST(sum(cut_nm) AS bigint) AS rope_short, min(jobs.due) AS needed_by, plan_id
        FROM cut_plans JOIN plan_coils ON plan_id = cut_plans.id AND coil_id IS NULL
        JOIN plan_cuts ON plan_cuts.plan_coil_id = plan_coils.id
        JOIN pieces ON pieces.id = plan_cuts.piece_id JOIN jobs ON jobs.id = job_id
        JOIN cut_tickets ON cut_tickets.piece_id = pieces.id AND cut_tickets.state = '{TicketStates.Waiting}' AND cut_tickets.plan_coil_id IS NULL
        WHERE cut_plans.id IN (SELECT max(id) FROM cut_plans WHERE state <> '{PlanStates.Replaced}' GROUP BY {RopeKind.Columns})
        GROUP BY plan_coils.id, cut_plans.id
        ORDER BY min(jobs.due) IS NULL, min(jobs.due), plan_id, plan_coils.position
        """));

    internal static StoredPlan? Find(ShopSession session, long id)
    {
        if (session.FirstOrDefault<PlanRow>(
            $"""
            SELECT id, {SqlTypes.RopeOf("cut_plans")} AS kind, state, made_at, made_by, proof,
              kerf_nm AS kerf, squaring_nm AS squaring, first_trim_nm AS first_trim, keep_nm AS keep
            FROM cut_plans WHERE id = @id
            """,
            new { id }) is not { } plan)
            return null;
        var cuts = session.All<CutRow>(
            """
            SELECT plan_cuts.plan_coil_id, code, jobs.number AS job, run, jobs.due, cut_tickets.state,
              CAST(CASE WHEN cut_tickets.plan_coil_id = plan_cuts.plan_coil_id THEN 1 ELSE 0 END AS bigint) AS has_its_place, cut_nm AS cut, from_nm AS mark_from, to_nm AS mark_to
            FROM plan_cuts JOIN plan_coils ON plan_coils.id = plan_cuts.plan_coil_id
            JOIN pieces ON pieces.id = plan_cuts.piece_id JOIN jobs ON jobs.id = job_id JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
            WHERE plan_id = @id ORDER BY plan_coils.position, plan_cuts.position
            """,
            new { id }).ToLookup(cut => cut.PlanCoilId);
        var coils = session.All<CoilRow>(
            """
            SELECT plan_coils.id, mark, lot, parent_id, whole_nm, left_before_nm AS start, rest_nm AS rest
            FROM plan_coils LEFT JOIN coils ON coils.id = coil_id WHERE plan_id = @id ORDER BY position
            """,
            new { id });
        var toBuy = 0;
        return new(
            plan.Id,
            plan.Kind,
            plan.State,
            plan.MadeAt,
            plan.MadeBy,
            plan.Proof,
            plan.Allowances,
            [.. coils.Select(coil => coil.ToCuts(coil.Mark ?? StockReplies.Of("ToBuy", ++toBuy).ToString(), cuts[coil.Id], plan.Keep))],
            cuts.SelectMany(same => same).ToDictionary(
                cut => cut.Code.Plain, cut => new PlannedPiece(cut.Code, cut.Job, cut.Run, cut.Due, cut.State)
                {
                    IsTakenOut = plan.State == PlanStates.Accepted && cut is { State: TicketStates.Waiting, HasItsPlace: 0 },
                }));
    }

    private sealed record PlanRow(
        long Id,
        RopeKind Kind,
        string State,
        DateTimeOffset MadeAt,
        string MadeBy,
        string Proof,
        Length Kerf,
        Length Squaring,
        Length FirstTrim,
        Length Keep)
    {
        public CutAllowances Allowances => new(Kerf, Squaring, FirstTrim, Keep);
    }

    private sealed record CoilRow(long Id, string? Mark, string? Lot, long? ParentId, Length? WholeNm, Length Start, Length Rest)
    {
        public CoilCuts ToCuts(string name, IEnumerable<CutRow> cuts, Length keep) => new(
            name,
            Lot ?? "",
            Mark is null ? CoilKind.ToBuy : ParentId is null && WholeNm == Start ? CoilKind.Full : CoilKind.Offcut,
            Start,
            [.. cuts.Select(cut => new CutPiece(cut.Code.Plain, cut.Cut, cut.MarkFrom, cut.MarkTo))],
            Rest,
            IsKept: Rest.IsPositive && Rest >= keep);
    }

    private sealed record CutRow(
        long PlanCoilId, PieceCode Code, string Job, string Run, DateOnly? Due, string State, long HasItsPlace, Length Cut, Length MarkFrom, Length MarkTo);
}
