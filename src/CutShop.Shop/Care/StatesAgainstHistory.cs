using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>Whether each state is where the history leads: from its first state, move by move, without a gap.</summary>
internal static class StatesAgainstHistory
{
    public static IEnumerable<CheckFinding> Of(ShopSession session) =>
    [
        .. CutTickets(session),
        .. DrillTickets(session),
        .. Plans(session),
        .. Jobs(session),
        .. Coils(session),
        .. DraftsAndQuotes(session),
    ];

    private static IEnumerable<CheckFinding> CutTickets(ShopSession session) => Tickets(
        session,
        "cut ticket",
        "SELECT cut_tickets.id, 'piece ' || code || ' (' || run || ' of ' || number || ')' AS name, cut_tickets.state, claimed_by FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id");

    private static IEnumerable<CheckFinding> DrillTickets(ShopSession session) => Tickets(
        session,
        "drill ticket",
        "SELECT drill_tickets.id, 'post ' || mark || ' of ' || number AS name, drill_tickets.state, claimed_by FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id");

    private static IEnumerable<CheckFinding> Tickets(ShopSession session, string subject, string tickets)
    {
        var values = new { subject, waiting = TicketStates.Waiting };
        var states = string.Join(", ", TicketStates.All.Select(state => $"'{state}'"));
        var moves =
            $"""
            WITH moves AS (
              SELECT id, subject_id, before, after, lag(after, 1, @waiting) OVER (PARTITION BY subject_id ORDER BY id) AS led,
                row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
              FROM history WHERE subject = @subject AND what <> 'taken over' AND before IN ({states}) AND after IN ({states}))

            """;
        foreach (var (name, state, told) in session.All<(string, string, string)>(
            $"{moves} SELECT name, state, coalesce(after, @waiting) AS told FROM ({tickets}) AS t LEFT JOIN moves ON subject_id = t.id AND back = 1 WHERE state <> coalesce(after, @waiting) ORDER BY name",
            values))
            yield return new(name, $"is {state}, and its history ends at {told}");
        foreach (var (name, before, led) in session.All<(string, string, string)>(
            $"{moves} SELECT name, before, led FROM ({tickets}) AS t JOIN moves ON subject_id = t.id WHERE before <> led ORDER BY name", values))
            yield return new(name, $"its history goes on from {before}, and had led to {led}: a line is missing");
        foreach (var (name, claimedBy, told) in session.All<(string, string, string)>(
            $"""
            SELECT name, claimed_by, told FROM (
              SELECT name, claimed_by, coalesce((SELECT who FROM history WHERE subject = @subject AND subject_id = t.id AND what IN ('taken to the bench', 'taken over') ORDER BY history.id DESC LIMIT 1), 'nobody') AS told
              FROM ({tickets}) AS t WHERE claimed_by IS NOT NULL) AS claims
            WHERE claimed_by <> told ORDER BY name
            """,
            values))
            yield return new(name, $"is at the bench of {claimedBy}, and by its history at that of {told}");
    }

    private static IEnumerable<CheckFinding> Plans(ShopSession session) => session.All<(long Id, string State, string Told)>(
        """
        SELECT id, state, told FROM (
          SELECT id, state, coalesce((SELECT after FROM history WHERE subject = 'cut plan' AND subject_id = cut_plans.id ORDER BY history.id DESC LIMIT 1), 'nothing') AS told FROM cut_plans) AS plans
        WHERE state <> told ORDER BY id
        """).Select(plan => new CheckFinding($"cut plan {plan.Id}", $"is {plan.State}, and its history ends at {plan.Told}"));

    private static IEnumerable<CheckFinding> Jobs(ShopSession session) => session.All<(string Number, string State, string Told)>(
        """
        SELECT number, state, told FROM (
          SELECT number,
            CASE WHEN cancelled_at IS NOT NULL THEN 'cancelled' WHEN released_at IS NOT NULL THEN 'released' ELSE 'received' END AS state,
            CASE WHEN EXISTS (SELECT 1 FROM history WHERE subject = 'job' AND subject_id = jobs.id AND what = 'cancelled') THEN 'cancelled'
                 WHEN EXISTS (SELECT 1 FROM history WHERE subject = 'job' AND subject_id = jobs.id AND what IN ('released', 'taken in')) THEN 'released'
                 WHEN EXISTS (SELECT 1 FROM history WHERE subject = 'job' AND subject_id = jobs.id AND what = 'received') THEN 'received'
                 ELSE 'not taken in' END AS told
          FROM jobs) AS states
        WHERE state <> told ORDER BY number
        """).Select(job => new CheckFinding($"job {job.Number}", $"is {job.State}, and by its history {job.Told}"));

    /// <summary>A coil's lines tell what was left of it, and the last one that it was retired.</summary>
    private static IEnumerable<CheckFinding> Coils(ShopSession session) => session.All<(string Mark, Length Left, string State, string Told, string Last)>(
        """
        SELECT mark, left_nm, state,
          coalesce((SELECT after FROM history WHERE subject = 'coil' AND subject_id = coils.id AND what <> 'retired' ORDER BY history.id DESC LIMIT 1), 'nothing') AS told,
          coalesce((SELECT what FROM history WHERE subject = 'coil' AND subject_id = coils.id ORDER BY history.id DESC LIMIT 1), '') AS last
        FROM coils ORDER BY mark
        """).SelectMany(coil => CoilFindings(coil.Mark, coil.Left.ToString(), coil.State == CoilStock.Retired, coil.Told, coil.Last == CoilStock.Retired));

    private static IEnumerable<CheckFinding> CoilFindings(string mark, string left, bool isRetired, string told, bool isToldRetired)
    {
        if (left != told)
            yield return new($"coil {mark}", $"{left} is left, and its history ends at {told}");
        if (isRetired != isToldRetired)
            yield return new($"coil {mark}", isRetired ? "is retired, and its history does not say so" : "is not retired, and its history says so");
    }

    private static IEnumerable<CheckFinding> DraftsAndQuotes(ShopSession session) => session.All<(string Name, string State, string Told)>(
        """
        SELECT name, state, told FROM (
          SELECT 'draft ' || id AS name, CASE WHEN state = 'taken in' THEN job_number ELSE state END AS state,
            coalesce((SELECT after FROM history WHERE subject = 'draft' AND subject_id = drafts.id ORDER BY history.id DESC LIMIT 1), 'nothing') AS told FROM drafts
          UNION ALL
          SELECT 'quote ' || id, state,
            CASE WHEN EXISTS (SELECT 1 FROM history WHERE subject = 'quote' AND subject_id = quotes.id AND after = 'accepted') THEN 'accepted' ELSE 'open' END FROM quotes) AS states
        WHERE state <> told ORDER BY name
        """).Select(thing => new CheckFinding(thing.Name, $"is {thing.State}, and its history ends at {thing.Told}"));
}
