using CutShop.CutPlan;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Stock;

/// <summary>Makes cut plans as drafts and accepts them. A draft changes nothing; accepting it gives each piece its coil.</summary>
public sealed class CutPlanDesk(ShopDatabase database)
{
    /// <summary>
    /// Plans all waiting pieces of a rope that are due by a day, and those that an accepted plan already covers, from the
    /// coils in stock and, where these are short, from coils to buy. What was cut stays cut.
    /// </summary>
    /// <param name="kind">The rope of the pieces.</param>
    /// <param name="dueBy">The last day of the window; null plans every waiting piece.</param>
    /// <param name="budget">How long to search.</param>
    /// <param name="who">Who asks.</param>
    /// <param name="progress">Told each better plan.</param>
    /// <param name="cutFrom">
    /// The rope of the coils, where pieces that ask for no construction and no colour are to be cut from coils that have one; null for the pieces' own.
    /// </param>
    /// <param name="cancel">Ends the search early, with the best plan so far.</param>
    public Task<PlanAnswer> DraftAsync(
        RopeKind kind,
        DateOnly? dueBy,
        PlanBudget budget,
        string who,
        IProgress<PlanProgress>? progress = null,
        RopeKind? cutFrom = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return cutFrom is null || kind.MayBeCutFrom(cutFrom)
            ? PlanAsync(kind, cutFrom ?? kind, dueBy, budget, who, accept: false, progress, cancel)
            : Task.FromResult(Refused("NotFromThatRope", kind, cutFrom));
    }

    /// <summary>
    /// Makes the accepted plan of a rope anew for the pieces that it covers and that still wait, from the coils as they are now, and accepts
    /// it: after a coil ran out or was not found. Sent twice it is done once, since the plan it is asked of is then replaced.
    /// </summary>
    /// <param name="planId">An accepted plan.</param>
    /// <param name="budget">How long to search.</param>
    /// <param name="who">Who asks.</param>
    /// <param name="cancel">Ends the search early, with the best plan so far.</param>
    public async Task<PlanAnswer> MendAsync(long planId, PlanBudget budget, string who, CancellationToken cancel = default) =>
        database.Read(session => Draft(session, planId)) is { State: PlanStates.Accepted } plan
            ? await PlanAsync(plan.Kind, plan.Kind, dueBy: null, budget, who, accept: true, progress: null, cancel).ConfigureAwait(false)
            : Refused("PlanReplaced", planId);

    /// <summary>The accepted plan of a rope, or null.</summary>
    public long? AcceptedPlan(RopeKind kind) => database.Read(session => AcceptedPlan(session, kind));

    private async Task<PlanAnswer> PlanAsync(
        RopeKind kind, RopeKind cutFrom, DateOnly? dueBy, PlanBudget budget, string who, bool accept, IProgress<PlanProgress>? progress, CancellationToken cancel)
    {
        var (request, pieceIds, afterPlan, other) = database.Read(session => Gather(session, kind, cutFrom, dueBy, onlyPlanned: accept));
        if (request.Pieces.Count == 0)
            return dueBy is { } day ? Refused("NoPieceWaitsUntil", kind, IsoDate.Text(day)) : Refused("NoPieceWaits", kind);
        var result = await Task.Run(() => CutPlanner.Plan(request, budget, progress, cancel), CancellationToken.None).ConfigureAwait(false);
        if (result.Plan is not { } plan)
            return new(PlanId: 0, [.. OnlyOtherOnHand(cutFrom, other), .. result.Problems.Select(problem => StockReplies.Of("PlanInput", problem.Path, problem.Value, problem.Text))]);
        // The search may have been cut short; what it found is still stored.
        return await database.WriteAsync(
            session =>
            {
                var planId = Store(session, cutFrom, request.Allowances, plan, pieceIds, afterPlan, who);
                return accept ? Accept(session, planId, who) : new(planId, []);
            },
            CancellationToken.None).ConfigureAwait(false);
    }

    /// <summary>
    /// Accepts a draft: every piece in it has its coil from now on, and the plan before it is replaced. Refused, with what
    /// changed, where the shop is no longer as it was when the draft was made. Accepting twice is accepting once.
    /// </summary>
    public Task<PlanAnswer> AcceptAsync(long planId, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => Accept(session, planId, who), cancel);

    /// <summary>What is missing where there is no rope of a kind, but the same rope new instead of preshrunk, or preshrunk instead of new.</summary>
    private static IEnumerable<Sentence> OnlyOtherOnHand(RopeKind kind, Length other)
    {
        if (other.IsPositive)
            yield return StockReplies.Of(kind.IsPreshrunk ? "OnlyNewOnHand" : "OnlyPreshrunkOnHand", kind, other);
    }

    private static (CutRequest Request, Dictionary<string, long> PieceIds, long? AfterPlan, Length OtherOnHand) Gather(
        ShopSession session, RopeKind kind, RopeKind cutFrom, DateOnly? dueBy, bool onlyPlanned)
    {
        var afterPlan = AcceptedPlan(session, cutFrom);
        var pieces = session.All<WaitingRow>(
            $"""
            SELECT pieces.id, job_id, code, cut_nm AS cut, jobs.number AS job, jobs.one_lot, jobs.due,
              coalesce((SELECT min(lot) FROM pieces AS done JOIN cut_tickets AS ticket ON ticket.piece_id = done.id AND ticket.state IN ({TicketStates.CutOrPacked})
               JOIN plan_coils ON plan_coils.id = ticket.plan_coil_id JOIN coils ON coils.id = coil_id
               WHERE done.job_id = jobs.id AND {SqlTypes.SameRope("done", "pieces")}), '') AS lot_so_far
            FROM pieces JOIN cut_tickets ON piece_id = pieces.id JOIN jobs ON jobs.id = job_id
            WHERE cut_tickets.state = '{TicketStates.Waiting}' AND {ReleasedJobs.Condition}
              AND CASE WHEN @onlyPlanned = 1
                THEN pieces.id IN (SELECT piece_id FROM plan_cuts JOIN plan_coils ON plan_coils.id = plan_cuts.plan_coil_id WHERE plan_id = @afterPlan)
                ELSE ({SqlTypes.IsRope("pieces")} AND (CAST(@dueBy AS text) IS NULL OR due IS NULL OR due <= @dueBy))
                  OR plan_coil_id IN (SELECT id FROM plan_coils WHERE plan_id = @afterPlan) END
            ORDER BY jobs.due IS NULL, jobs.due, jobs.id, pieces.position
            """,
            new { kind.MaterialName, kind.Diameter, kind.Construction, kind.Colour, kind.IsPreshrunk, dueBy, afterPlan, onlyPlanned });
        var settings = CuttingSettingsShelf.ReadCutting(session);
        // Rope of a piece that is at the bench is spoken for.
        var coils = CoilShelf.OfKind(session, cutFrom)
            .Select(coil => new Coil(coil.Mark, coil.Lot, CoilShelf.Free(session, coil.Id), IsOffcut: !coil.IsUntouched))
            .Where(coil => coil.Left.IsPositive)
            .ToList();
        var lengths = cutFrom.IsPreshrunk ? Soaked(session, settings.StandardLengths, pieces) : settings.StandardLengths;
        var other = cutFrom.IsNatural && coils.Count == 0
            ? CoilShelf.OfKind(session, cutFrom with { IsPreshrunk = !cutFrom.IsPreshrunk }).Aggregate(Length.Zero, (sum, coil) => sum + coil.Left)
            : Length.Zero;
        return (
            new CutRequest([.. pieces.Select(piece => piece.ToPiece())], coils, lengths, settings.Allowances),
            pieces.ToDictionary(piece => piece.Code.Plain, piece => piece.Id),
            afterPlan,
            other);
    }

    /// <summary>
    /// What is left of coils of standard lengths, which are bought new, once they are soaked and dried: by the greatest share that the jobs of the
    /// pieces say their rope loses.
    /// </summary>
    private static IReadOnlyList<Length> Soaked(ShopSession session, IReadOnlyList<Length> standardLengths, IReadOnlyList<WaitingRow> pieces)
    {
        var loses = pieces.Select(piece => piece.JobId).Distinct().Select(job => StoredParts.Frame(session, job).Allowances.Wetting?.Loses ?? Share.None)
            .DefaultIfEmpty(Share.None).MaxBy(share => share.Millionths);
        return [.. standardLengths.Select(loses.After)];
    }

    private static long Store(
        ShopSession session, RopeKind kind, CutAllowances allowances, RopePlan plan, Dictionary<string, long> pieceIds, long? afterPlan, string who)
    {
        var planId = session.Insert(
            $"""
            INSERT INTO cut_plans ({RopeKind.Columns}, state, made_at, made_by, after_plan_id, kerf_nm, squaring_nm, first_trim_nm, keep_nm, proof)
            VALUES ({RopeKind.Values}, '{PlanStates.Draft}', @Now, @who, @afterPlan, @Kerf, @Squaring, @FirstTrim, @Keep, @proof)
            """,
            new
            {
                kind.MaterialName,
                kind.Diameter,
                kind.Construction,
                kind.Colour,
                kind.IsPreshrunk,
                session.Now,
                who,
                afterPlan,
                allowances.Kerf,
                allowances.Squaring,
                allowances.FirstTrim,
                allowances.Keep,
                proof = plan.SolverAbsent ? StockReplies.Of("WithoutSolver", plan.Proof).ToString() : plan.Proof.ToString(),
            });
        foreach (var (position, coil) in plan.Coils.Index())
        {
            var planCoilId = session.Insert(
                """
                INSERT INTO plan_coils (plan_id, position, coil_id, left_before_nm, rest_nm)
                VALUES (@planId, @position, (SELECT id FROM coils WHERE mark = @mark), @Start, @Left)
                """,
                new { planId, position, mark = coil.Kind == CoilKind.ToBuy ? null : coil.Coil, coil.Start, coil.Left });
            session.Execute(
                "INSERT INTO plan_cuts (plan_coil_id, position, piece_id, from_nm, to_nm) VALUES (@planCoilId, @place, @pieceId, @from, @to)",
                coil.Pieces.Select((piece, place) => new { planCoilId, place, pieceId = pieceIds[piece.Code], from = piece.From, to = piece.To }));
        }
        session.Record("cut plan", planId, who, HistoryCodes.PlanDrafted, after: PlanStates.Draft);
        return planId;
    }

    private static PlanAnswer Accept(ShopSession session, long planId, string who)
    {
        if (Draft(session, planId) is not { } draft)
            return Refused("NoPlan", planId);
        if (draft.State == PlanStates.Accepted)
            return new(planId, []);
        if (draft.State == PlanStates.Replaced)
            return Refused("PlanReplaced", planId);

        var changes = WhatChanged(session, planId, draft);
        if (changes.Count > 0)
            return new(planId, changes);
        if (draft.AfterPlanId is { } before)
        {
            session.Execute($"UPDATE cut_plans SET state = '{PlanStates.Replaced}' WHERE id = @before", new { before });
            session.Execute(
                $"UPDATE cut_tickets SET plan_coil_id = NULL WHERE state = '{TicketStates.Waiting}' AND plan_coil_id IN (SELECT id FROM plan_coils WHERE plan_id = @before)",
                new { before });
            session.Record("cut plan", before, who, HistoryCodes.PlanReplaced, PlanStates.Accepted, PlanStates.Replaced, details: new { plan = planId });
        }
        session.Execute($"UPDATE cut_plans SET state = '{PlanStates.Accepted}' WHERE id = @planId", new { planId });
        // A piece on a coil that is yet to be bought keeps waiting for a place.
        session.Execute(
            """
            UPDATE cut_tickets SET plan_coil_id = plan_cuts.plan_coil_id
            FROM plan_cuts JOIN plan_coils ON plan_coils.id = plan_cuts.plan_coil_id
            WHERE plan_cuts.piece_id = cut_tickets.piece_id AND plan_id = @planId AND coil_id IS NOT NULL
            """,
            new { planId });
        session.Record("cut plan", planId, who, HistoryCodes.PlanAccepted, PlanStates.Draft, PlanStates.Accepted);
        return new(planId, []);
    }

    /// <summary>In words, what is no longer as it was when the draft was made.</summary>
    internal static List<Sentence> WhatChanged(ShopSession session, long planId) => WhatChanged(session, planId, Draft(session, planId)!);

    private static DraftRow? Draft(ShopSession session, long planId) => session.FirstOrDefault<DraftRow>(
        $"SELECT {SqlTypes.RopeOf("cut_plans")} AS kind, state, after_plan_id FROM cut_plans WHERE id = @planId", new { planId });

    private static List<Sentence> WhatChanged(ShopSession session, long planId, DraftRow draft)
    {
        var changes = new List<Sentence>();
        if (AcceptedPlan(session, draft.Kind) is var now && now != draft.AfterPlanId)
            changes.Add(StockReplies.Of("OtherPlanAccepted", now));
        changes.AddRange(session.All<(string Mark, Length Before, Length Left, string State)>(
            $"""
            SELECT mark, left_before_nm, free_nm, state FROM plan_coils JOIN coils ON coils.id = coil_id JOIN coils_free ON coils_free.id = coil_id
            WHERE plan_id = @planId AND (free_nm <> left_before_nm OR state <> '{CoilStates.InStock}') ORDER BY mark
            """,
            new { planId }).Select(coil => coil.State == CoilStates.InStock
                ? StockReplies.Of("CoilChanged", coil.Mark, coil.Before, coil.Left)
                : StockReplies.Of("CoilIs", coil.Mark, coil.State)));
        changes.AddRange(session.All<(string Job, string Run, string State)>(
            $"""
            SELECT jobs.number, run, cut_tickets.state FROM plan_cuts JOIN plan_coils ON plan_coils.id = plan_cuts.plan_coil_id
            JOIN pieces ON pieces.id = plan_cuts.piece_id JOIN jobs ON jobs.id = job_id JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
            WHERE plan_id = @planId AND cut_tickets.state <> '{TicketStates.Waiting}' ORDER BY jobs.number, pieces.position
            """,
            new { planId }).Select(piece => StockReplies.Of("PieceIs", piece.Run, piece.Job, piece.State)));
        return changes;
    }

    private static long? AcceptedPlan(ShopSession session, RopeKind kind) => session.FirstOrDefault<long?>(
        $"SELECT id FROM cut_plans WHERE state = '{PlanStates.Accepted}' AND {SqlTypes.IsRope("cut_plans")}", kind);

    private static PlanAnswer Refused(string key, params IReadOnlyList<object?> values) => new(PlanId: 0, [StockReplies.Of(key, values)]);

    private sealed record WaitingRow(long Id, long JobId, PieceCode Code, Length Cut, string Job, bool OneLot, DateOnly? Due, string LotSoFar)
    {
        public WaitingPiece ToPiece() => OneLot
            ? new(Code.Plain, Cut, Job, Due, LotSoFar.Length == 0 ? null : LotSoFar)
            : new(Code.Plain, Cut, OneLotJob: null, Due);
    }

    private sealed record DraftRow(RopeKind Kind, string State, long? AfterPlanId);
}
