using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Whether each state is where the history leads: from its first state, move by move, without a gap. It reads codes, states and
/// lengths, never the words in which they are shown.
/// </summary>
internal static class StatesAgainstHistory
{
    private const string CutTickets =
        """
        SELECT cut_tickets.id, code AS name, run, number, cut_tickets.state, claimed_by
        FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id
        """;

    private const string DrillTickets =
        """
        SELECT drill_tickets.id, mark AS name, '' AS run, number, drill_tickets.state, claimed_by
        FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        """;

    public static IEnumerable<CheckFinding> Of(ShopSession session) =>
    [
        .. Tickets(session, "cut ticket", CutTickets, "PieceOfJob"),
        .. Tickets(session, "drill ticket", DrillTickets, "PostOfJob"),
        .. Parcels(session),
        .. PostsInParcels(session),
        .. Plans(session),
        .. Jobs(session),
        .. Coils(session),
        .. DraftsAndQuotes(session),
    ];

    private static IEnumerable<CheckFinding> Tickets(ShopSession session, string subject, string tickets, string key)
    {
        var states = string.Join(", ", TicketStates.All.Select(state => $"'{state}'"));
        var moves =
            $"""
            WITH moves AS (
              SELECT subject_id, before, after,
                lag(after, 1, @waiting) OVER (PARTITION BY subject_id ORDER BY id) AS led,
                row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
              FROM history
              WHERE subject = @subject AND before IN ({states}) AND after IN ({states}))
            """;
        var values = new { subject, waiting = TicketStates.Waiting };
        foreach (var (name, run, number, state, led) in session.All<(string, string, string, string, string)>(
            $"""
            {moves}
            SELECT name, run, number, state, coalesce(after, @waiting) AS led
            FROM ({tickets}) AS t LEFT JOIN moves ON subject_id = t.id AND back = 1
            WHERE state <> coalesce(after, @waiting)
            ORDER BY name, number
            """,
            values))
            yield return CheckFinding.Of(StoreReplies.Say(key, name, run, number), "State", state, led);
        foreach (var (name, run, number, before, led) in session.All<(string, string, string, string, string)>(
            $"""
            {moves}
            SELECT name, run, number, before, led
            FROM ({tickets}) AS t JOIN moves ON subject_id = t.id
            WHERE before <> led
            ORDER BY name, number
            """,
            values))
            yield return CheckFinding.Of(StoreReplies.Say(key, name, run, number), "HistoryGap", before, led);
        foreach (var (name, run, number, claimedBy, taker) in session.All<(string, string, string, string, string)>(
            $"""
            WITH taken AS (
              SELECT subject_id, actor_id, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
              FROM history
              WHERE subject = @subject AND what IN (@takenToBench, @takenOver, @measureTakenBack)),
            claims AS (
              SELECT name, run, number, claimed_by, coalesce({Actors.NameOf("taken.actor_id")}, 'nobody') AS taker
              FROM ({tickets}) AS t LEFT JOIN taken ON subject_id = t.id AND back = 1
              WHERE claimed_by IS NOT NULL)
            SELECT name, run, number, claimed_by, taker
            FROM claims
            WHERE claimed_by <> taker
            ORDER BY name, number
            """,
            new
            {
                subject,
                takenToBench = HistoryCodes.TakenToBench.Code,
                takenOver = HistoryCodes.TakenOver.Code,
                measureTakenBack = HistoryCodes.MeasureTakenBack.Code,
            }))
            yield return CheckFinding.Of(StoreReplies.Say(key, name, run, number), "Claim", claimedBy, taker);
    }

    /// <summary>A parcel that no line of the history closed is one from before parcels were closed: that was when its last piece was packed.</summary>
    private static IEnumerable<CheckFinding> Parcels(ShopSession session) => session.All<(string Number, string State, string Led)>(
        """
        WITH lines AS (
          SELECT subject_id, what, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
          FROM history
          WHERE subject = 'job' AND what IN (@closed, @opened)),
        parcels AS (
          SELECT number,
            CASE WHEN closed_at IS NULL THEN 'open for packing' ELSE 'closed' END AS state,
            CASE WHEN what = @closed THEN 'closed'
              WHEN what IS NULL AND closed_at IN (SELECT packed_at FROM pieces JOIN cut_tickets ON piece_id = pieces.id WHERE pieces.job_id = jobs.id) THEN 'closed'
              ELSE 'open for packing' END AS led
          FROM jobs LEFT JOIN closed_parcels ON closed_parcels.job_id = jobs.id LEFT JOIN lines ON subject_id = jobs.id AND back = 1)
        SELECT number, state, led FROM parcels WHERE state <> led ORDER BY number
        """,
        new { closed = HistoryCodes.ParcelClosed.Code, opened = HistoryCodes.ParcelOpened.Code })
        .Select(job => CheckFinding.Of(StoreReplies.Say("Job", job.Number), "State", job.State, job.Led));

    private static IEnumerable<CheckFinding> PostsInParcels(ShopSession session) => session.All<(string Mark, string Number, string State, string Led)>(
        """
        WITH lines AS (
          SELECT subject_id, what, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
          FROM history
          WHERE subject = 'drill ticket' AND what IN (@putIn, @takenOut)),
        in_parcels AS (
          SELECT mark, number,
            CASE WHEN in_parcel_at IS NULL THEN 'not packed' ELSE 'packed' END AS state,
            CASE WHEN what = @putIn THEN 'packed' ELSE 'not packed' END AS led
          FROM posts JOIN jobs ON jobs.id = job_id JOIN drill_tickets ON post_id = posts.id LEFT JOIN lines ON subject_id = drill_tickets.id AND back = 1)
        SELECT mark, number, state, led FROM in_parcels WHERE state <> led ORDER BY mark, number
        """,
        new { putIn = HistoryCodes.PostPutIn.Code, takenOut = HistoryCodes.PostTakenOut.Code })
        .Select(post => CheckFinding.Of(StoreReplies.Say("PostOfJob", post.Mark, "", post.Number), "State", post.State, post.Led));

    private static IEnumerable<CheckFinding> Plans(ShopSession session) => session.All<(long Id, string State, string Led)>(
        """
        WITH lines AS (
          SELECT subject_id, after, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
          FROM history
          WHERE subject = 'cut plan')
        SELECT id, state, coalesce(after, 'nothing') AS led
        FROM cut_plans LEFT JOIN lines ON subject_id = id AND back = 1
        WHERE state <> coalesce(after, 'nothing')
        ORDER BY id
        """).Select(plan => CheckFinding.Of(StoreReplies.Say("CutPlan", plan.Id), "State", plan.State, plan.Led));

    /// <summary>A job's lines say when it was received, released and cancelled; the others leave its state alone.</summary>
    private static IEnumerable<CheckFinding> Jobs(ShopSession session) => session.All<(string Number, string State, string Led)>(
        """
        WITH moves AS (
          SELECT subject_id, after, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
          FROM history
          WHERE subject = 'job' AND after IN ('received', 'released', 'cancelled')),
        states AS (
          SELECT id, number,
            CASE WHEN cancelled_at IS NOT NULL THEN 'cancelled' WHEN released_at IS NOT NULL THEN 'released' ELSE 'received' END AS state
          FROM jobs)
        SELECT number, state, coalesce(after, 'not taken in') AS led
        FROM states LEFT JOIN moves ON subject_id = id AND back = 1
        WHERE state <> coalesce(after, 'not taken in')
        ORDER BY number
        """).Select(job => CheckFinding.Of(StoreReplies.Say("Job", job.Number), "State", job.State, job.Led));

    /// <summary>A coil's lines say what was left of it, and the last one whether it was retired.</summary>
    private static IEnumerable<CheckFinding> Coils(ShopSession session)
    {
        foreach (var (mark, left, led) in session.All<(string, Length, Length?)>(
            """
            WITH lengths AS (
              SELECT subject_id, after_nm, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
              FROM history
              WHERE subject = 'coil' AND after_nm IS NOT NULL)
            SELECT mark, left_nm, after_nm
            FROM coils LEFT JOIN lengths ON subject_id = id AND back = 1
            WHERE left_nm IS DISTINCT FROM after_nm
            ORDER BY mark
            """))
            yield return CheckFinding.Of(StoreReplies.Say("Coil", mark), led is null ? "CoilLeftUntold" : "CoilLeft", left, led);
        foreach (var (mark, state) in session.All<(string, string)>(
            """
            WITH lines AS (
              SELECT subject_id, what, row_number() OVER (PARTITION BY subject_id ORDER BY id DESC) AS back
              FROM history
              WHERE subject = 'coil')
            SELECT mark, state
            FROM coils LEFT JOIN lines ON subject_id = id AND back = 1
            WHERE (state = @Retired) <> (coalesce(what, '') = @retiredCode)
            ORDER BY mark
            """,
            new { CoilStates.Retired, retiredCode = HistoryCodes.CoilRetired.Code }))
            yield return CheckFinding.Of(StoreReplies.Say("Coil", mark), state == CoilStates.Retired ? "RetiredUntold" : "RetiredInHistory");
    }

    /// <summary>A draft that was taken in ends at the number of its job.</summary>
    private static IEnumerable<CheckFinding> DraftsAndQuotes(ShopSession session) => session.All<(string Kind, long Id, string State, string Led)>(
        """
        WITH lines AS (
          SELECT subject, subject_id, after, row_number() OVER (PARTITION BY subject, subject_id ORDER BY id DESC) AS back
          FROM history
          WHERE subject IN ('draft', 'quote')),
        states AS (
          SELECT 'draft' AS kind, id, CASE WHEN state = 'taken in' THEN job_number ELSE state END AS state FROM drafts
          UNION ALL
          SELECT 'quote', id, state FROM quotes)
        SELECT kind, id, state, coalesce(after, 'nothing') AS led
        FROM states LEFT JOIN lines ON subject = kind AND subject_id = id AND back = 1
        WHERE state <> coalesce(after, 'nothing')
        ORDER BY kind, id
        """).Select(thing => CheckFinding.Of(StoreReplies.Say(thing.Kind == "draft" ? "Draft" : "Quote", thing.Id), "State", thing.State, thing.Led));
}
