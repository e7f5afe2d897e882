
namespace CutShop.Shop;

/// <summary>A drill ticket as the bench sees it.</summary>
/// <param name="Id">The ticket.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Post">The post's mark.</param>
/// <param name="State">waiting, at the bench, drilled or re-ordered.</param>
/// <param name="Steps">Steps done, in the ticket's order: the drillings, then the screw holes.</param>
/// <param name="Drillings">Drillings in all.</param>
/// <param name="ScrewHoles">Screw holes in all: one for each bore whose rope a screw holds; a knot needs none.</param>
/// <param name="ClaimedBy">Who has it at the bench, or null.</param>
/// <param name="ClaimedAt">Since when, or null.</param>
/// <param name="DrilledBy">Who drilled it, or null.</param>
/// <param name="DrilledAt">When it was drilled, or null.</param>
/// <param name="Likeness">The same for posts that are bored alike.</param>
/// <param name="Alike">Posts of the same likeness that wait.</param>
/// <param name="Spoiled">Posts that were spoiled for this ticket.</param>
public sealed record DrillWork(
    long Id,
    string Job,
    string Post,
    string State,
    long Steps,
    long Drillings,
    long ScrewHoles,
    string? ClaimedBy,
    DateTimeOffset? ClaimedAt,
    string? DrilledBy,
    DateTimeOffset? DrilledAt,
    string Likeness,
    long Alike,
    long Spoiled)
{
    private const string Columns =
        """
        SELECT drill_tickets.id, jobs.number AS job, mark AS post, drill_tickets.state, steps,
          (SELECT count(*) FROM bores JOIN bore_operations ON bore_id = bores.id WHERE bores.post_id = posts.id) AS drillings,
          (SELECT count(*) FROM bores WHERE bores.post_id = posts.id AND kind <> 'knot') AS screw_holes,
          claimed_by, claimed_at, drilled_by, drilled_at, likeness,
          (SELECT count(*) FROM drill_tickets AS other WHERE other.state = 'waiting' AND other.queue_due = drill_tickets.queue_due AND other.likeness = drill_tickets.likeness) AS alike,
          (SELECT count(*) FROM damages WHERE ticket_id = drill_tickets.id) AS spoiled
        FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        """;

    /// <summary>Drillings and screw holes in all.</summary>
    public long All => Drillings + ScrewHoles;

    /// <summary>How many of <see cref="All"/> are done; a drilled post is done whatever was ticked.</summary>
    public long Done => State == TicketStates.Drilled ? All : Steps;

    /// <summary>The number of the drilling or screw hole to do now; null where all are done or nobody has the ticket.</summary>
    public int? Next => State == TicketStates.AtTheBench && Steps < All ? (int)Steps + 1 : null;

    /// <summary>True where every bore is in, so that the rope can be tried. Screw holes that are not ticked are said to be in with it.</summary>
    public bool IsFitDue => State == TicketStates.AtTheBench && Steps >= Drillings;

    internal static DrillWork? Find(ShopSession session, string job, string post) =>
        session.FirstOrDefault<DrillWork>(Columns + " WHERE jobs.number = @job AND mark = @post", new { job, post });

    internal static DrillWork Of(ShopSession session, long id) =>
        session.FirstOrDefault<DrillWork>(Columns + " WHERE drill_tickets.id = @id", new { id })!;

    internal static IReadOnlyList<DrillWork> AtTheBench(ShopSession session) =>
        session.All<DrillWork>(Columns + " WHERE drill_tickets.state = 'at the bench' ORDER BY claimed_at");

    internal static IReadOnlyList<DrillWork> ReOrdered(ShopSession session) =>
        session.All<DrillWork>(Columns + " WHERE drill_tickets.state = 're-ordered' ORDER BY drill_tickets.queue_due, drill_tickets.id");

    internal static IReadOnlyList<DrillWork> Latest(ShopSession session, int most) =>
        session.All<DrillWork>(Columns + " WHERE drilled_at IS NOT NULL AND drill_tickets.state = 'drilled' ORDER BY drilled_at DESC LIMIT @most", new { most });

    internal static IReadOnlyList<(string Job, string Post)> Waiting(ShopSession session, int most) => session.All<(string, string)>(
        $"""
        SELECT jobs.number, mark FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE drill_tickets.state IN ('waiting', 'at the bench') AND {ReleasedJobs.Condition}
        ORDER BY drill_tickets.queue_due, likeness, drill_tickets.id LIMIT @most
        """,
        new { most });
}
