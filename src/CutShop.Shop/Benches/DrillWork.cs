using CutShop.Shop.Store;
using CutShop.Shop.Tickets;

namespace CutShop.Shop.Benches;

/// <summary>A drill ticket as the bench sees it.</summary>
/// <param name="Id">The ticket.</param>
/// <param name="PostId">The post.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Post">The post's mark.</param>
/// <param name="State">waiting, at the bench, drilled, re-ordered, cancelled or surplus.</param>
/// <param name="Steps">Steps done, in the ticket's order: the drillings, then the screw holes.</param>
/// <param name="Drillings">Drillings in all.</param>
/// <param name="ScrewHoles">Screw holes in all: one for each bore whose rope a screw holds; a knot needs none.</param>
/// <param name="ClaimedBy">Who has it at the bench, or null.</param>
/// <param name="ClaimedAt">Since when, or null.</param>
/// <param name="DrilledBy">Who drilled it, or null.</param>
/// <param name="DrilledAt">When it was drilled, or null.</param>
/// <param name="Likeness">The same for posts that are bored alike.</param>
/// <param name="DroppedAt">When a change took the post out, or null.</param>
/// <param name="Spoiled">Posts that were spoiled for this ticket.</param>
public sealed record DrillWork(
    long Id,
    long PostId,
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
    DateTimeOffset? DroppedAt,
    long Spoiled) : IBenchTicket
{
    private const string Columns =
        $"""
        SELECT drill_tickets.id, drill_tickets.post_id, jobs.number AS job, coalesce(post_parts.mark, posts.mark) AS post, drill_tickets.state, steps,
          coalesce(drillings, 0) AS drillings, coalesce(screw_holes, 0) AS screw_holes,
          claimed_by, claimed_at, drilled_by, drilled_at, drill_tickets.likeness, dropped_at,
          (SELECT count(*) FROM damages WHERE ticket_id = drill_tickets.id) AS spoiled
        FROM drill_tickets JOIN posts ON posts.id = drill_tickets.post_id JOIN jobs ON jobs.id = job_id LEFT JOIN post_parts ON post_parts.post_id = posts.id
        """;

    /// <summary>Drillings and screw holes in all.</summary>
    public long All => Drillings + ScrewHoles;

    /// <summary>How many of <see cref="All"/> are done; a drilled post is done whatever was ticked.</summary>
    public long Done => State == TicketStates.Drilled ? All : Steps;

    /// <summary>The number of the drilling or screw hole to do now; null where all are done or nobody has the ticket.</summary>
    public int? Next => State == TicketStates.AtTheBench && Steps < All ? (int)Steps + 1 : null;

    /// <summary>True where every bore is in, so that the rope can be tried. Screw holes that are not ticked are said to be in with it.</summary>
    public bool IsFitDue => State == TicketStates.AtTheBench && Steps >= Drillings;

    /// <summary>True where a change took the post out, so that this ticket has ended.</summary>
    public bool IsDropped => DroppedAt is not null;

    /// <summary>The ticket of a post; where a change took the post out and none has its mark now, the last one that had it.</summary>
    internal static DrillWork? Find(ShopSession session, string job, string post) => OfMark(session, job, post) is [var newest, ..] ? newest : null;

    /// <summary>All tickets that a mark ever had, the one that is wanted first, then the newest.</summary>
    internal static IReadOnlyList<DrillWork> OfMark(ShopSession session, string job, string post) =>
    [
        .. session.All<DrillWork>(Columns + " WHERE jobs.number = @job AND posts.mark = @post", new { job, post }),
        .. session.All<DrillWork>(Columns + " WHERE jobs.number = @job AND dropped_at IS NOT NULL AND post_parts.mark = @post ORDER BY posts.id DESC", new { job, post }),
    ];

    internal static DrillWork Of(ShopSession session, long id) =>
        session.FirstOrDefault<DrillWork>(Columns + " WHERE drill_tickets.id = @id", new { id })!;

    internal static IReadOnlyList<DrillWork> AtTheBench(ShopSession session) =>
        session.All<DrillWork>(Columns + $" WHERE drill_tickets.state = '{TicketStates.AtTheBench}' ORDER BY claimed_at");

    internal static IReadOnlyList<DrillWork> ReOrdered(ShopSession session) =>
        session.All<DrillWork>(Columns + $" WHERE drill_tickets.state = '{TicketStates.ReOrdered}' ORDER BY drill_tickets.queue_due, drill_tickets.id");

    internal static IReadOnlyList<DrillWork> Latest(ShopSession session, int most) =>
        session.All<DrillWork>(Columns + $" WHERE drilled_at IS NOT NULL AND drill_tickets.state = '{TicketStates.Drilled}' ORDER BY drilled_at DESC LIMIT @most", new { most });

    internal static IReadOnlyList<(string Job, long PostId)> Waiting(ShopSession session, int most) => session.All<(string, long)>(
        $"""
        SELECT jobs.number, posts.id FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE drill_tickets.state IN ({TicketStates.ToDo}) AND {ReleasedJobs.Condition}
        ORDER BY drill_tickets.queue_due, likeness, drill_tickets.id LIMIT @most
        """,
        new { most });
}
