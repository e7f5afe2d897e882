using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>A plan that no longer fits what is on the rack.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="State">draft or accepted.</param>
/// <param name="Coil">The coil that is short; empty for a draft.</param>
/// <param name="Lacking">How much rope it lacks for the pieces that are still to be cut from it.</param>
/// <param name="What">What changed, in words; empty for an accepted plan.</param>
public sealed record StalePlan(long PlanId, string State, string Coil, Length Lacking, string What);

/// <summary>Names plans that what happened at the bench has made stale.</summary>
public sealed class StalePlans(ShopDatabase database)
{
    private const int MostDrafts = 20;

    /// <summary>Accepted plans with a coil that is short, and drafts that could not be accepted any more.</summary>
    public IReadOnlyList<StalePlan> Stale() => database.Read(session => (IReadOnlyList<StalePlan>)[.. Accepted(session), .. Drafts(session)]);

    private static IReadOnlyList<StalePlan> Accepted(ShopSession session) => session.All<StalePlan>(
        $"""
        SELECT plan_id, state, coil, lacking, '' AS what
        FROM (
          SELECT cut_plans.id AS plan_id, cut_plans.state, mark AS coil, plan_coils.position,
            CAST(sum(cut_nm + kerf_nm + squaring_nm) + CASE WHEN trimmed = 1 THEN 0 ELSE first_trim_nm END
              - CASE WHEN coils.state = '{CoilStates.InStock}' THEN left_nm ELSE 0 END AS bigint) AS lacking
          FROM cut_plans JOIN plan_coils ON plan_coils.plan_id = cut_plans.id JOIN coils ON coils.id = plan_coils.coil_id
          JOIN cut_tickets ON cut_tickets.plan_coil_id = plan_coils.id JOIN pieces ON pieces.id = piece_id
          WHERE cut_plans.state = '{PlanStates.Accepted}'
            AND (cut_tickets.state = '{TicketStates.Waiting}' OR (cut_tickets.state = '{TicketStates.AtTheBench}' AND measured_nm IS NULL))
          GROUP BY plan_coils.id, cut_plans.id, coils.id) AS planned
        WHERE lacking > 0 ORDER BY plan_id, position
        """);

    private static IEnumerable<StalePlan> Drafts(ShopSession session) =>
        from id in session.All<long>($"SELECT id FROM cut_plans WHERE state = '{PlanStates.Draft}' ORDER BY id DESC LIMIT @MostDrafts", new { MostDrafts })
        let changes = CutPlanDesk.WhatChanged(session, id)
        where changes.Count > 0
        select new StalePlan(id, PlanStates.Draft, "", Length.Zero, changes[0].ToString());
}
