using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Whether each part can be read, whether pieces, posts and tickets are those of their parts, and whether what is no longer wanted has
/// left the queues. By which rules a part was made does not matter here: see <see cref="JobsAgainstRules"/>.
/// </summary>
internal static class TicketsAgainstParts
{
    public static IEnumerable<CheckFinding> Of(ShopSession session) =>
    [
        .. Damaged(session) is [_, ..] damaged ? damaged : session.All<long>("SELECT id FROM jobs ORDER BY number").SelectMany(id => Job(session, id)),
        .. WithoutTickets(session),
        .. Ends(session),
    ];

    private static List<CheckFinding> Damaged(ShopSession session) => [.. StoredParts.Damaged(session).Select(damage => new CheckFinding(damage.Place, damage.Problem))];

    private static IEnumerable<CheckFinding> Job(ShopSession session, long id)
    {
        var row = session.FirstOrDefault<JobRow>("SELECT number, customer, due, one_lot, job_file FROM jobs WHERE id = @id", new { id })!;
        var (frame, pieces, posts) = (StoredParts.Frame(session, id), StoredParts.PiecesOf(session, id), StoredParts.PostsOf(session, id));
        var where = StoreReplies.Say("Job", row.Number);
        return
        [
            .. Different(where, StoredPieces(session, id), [.. pieces.Select(work => Piece(work.Piece.Run, RopeKind.Of(work.Piece), work.Piece.Cut))]),
            .. Different(where, StoredPosts(session, id), [.. posts.Select(work => Post(work.Post.Mark, work.DrillingsInShop, work.ScrewHolesInShop, work.Likeness))]),
            .. Different(
                where,
                [new(StoreReplies.Say("Frame"), Counted(frame.Totals))],
                [new(StoreReplies.Say("Frame"), Counted(JobTotals.Of(pieces, posts.Sum(post => post.Bores.Count))))]),
            .. Different(where, Lines(frame), Lines(posts)),
            .. AsOrdered(where, row),
        ];
    }

    /// <summary>The job's row and the file that it was ordered with both hold its number, customer, due date and lot rule; they must agree. A file that today's rules refuse is not an error; one without lines is.</summary>
    private static IEnumerable<CheckFinding> AsOrdered(string where, JobRow row)
    {
        if (JobFileReader.Find(row.JobFile) is { } job)
        {
            if (row.Facts != (job.Number, job.Customer, job.Due, job.OneLot))
                yield return CheckFinding.Of(where, "RowAgainstFile", row.Facts, (job.Number, job.Customer, job.Due, job.OneLot));
        }
        else if (!row.JobFile.Contains("\"lines\"", StringComparison.Ordinal))
        {
            yield return CheckFinding.Of(where, "NotAJobFile");
        }
    }

    private static string Counted(JobTotals totals) => StoreReplies.Say("Totals", totals.Pieces, totals.Bores, totals.Screws, totals.Cut);

    private static Thing Piece(string run, RopeKind rope, Length cut) => new(StoreReplies.Say("Piece", run), StoreReplies.Say("PieceFacts", rope, cut));

    private static Thing Post(string mark, long drillings, long screwHoles, string likeness) =>
        new(StoreReplies.Say("Post", mark), StoreReplies.Say("PostFacts", drillings, screwHoles, likeness));

    private static List<Thing> Lines(JobFrame frame) => [.. frame.Lines.Select(line => new Thing(StoreReplies.Say("Line", line.Mark), string.Join(", ", line.Posts.Select(post => post.Mark))))];

    private static List<Thing> Lines(IReadOnlyList<PostWork> posts) =>
        [.. posts.GroupBy(post => post.Line).Select(line => new Thing(StoreReplies.Say("Line", line.Key), string.Join(", ", line.Select(post => post.Post.Mark))))];

    private static IEnumerable<CheckFinding> Different(string where, IReadOnlyList<Thing> rows, IReadOnlyList<Thing> parts)
    {
        var stored = rows.ToLookup(row => row.Name, row => row.What);
        foreach (var part in parts.Where(part => !stored[part.Name].Contains(part.What)))
            yield return stored[part.Name].Any()
                ? CheckFinding.Of($"{where}, {part.Name}", "RowAgainstPart", stored[part.Name].Aggregate((one, other) => StoreReplies.Say("And", one, other)), part.What)
                : CheckFinding.Of($"{where}, {part.Name}", "NoRow", part.What);
        foreach (var row in rows.Where(row => parts.All(part => part.Name != row.Name)))
            yield return CheckFinding.Of($"{where}, {row.Name}", "NoPart");
    }

    private static IReadOnlyList<Thing> StoredPieces(ShopSession session, long id) =>
        [.. session.All<(string Run, RopeKind Rope, Length Cut)>(
            $"SELECT run, {SqlTypes.RopeOf("pieces")}, cut_nm FROM pieces WHERE job_id = @id AND dropped_at IS NULL ORDER BY position", new { id })
            .Select(piece => Piece(piece.Run, piece.Rope, piece.Cut))];

    private static IReadOnlyList<Thing> StoredPosts(ShopSession session, long id) =>
        [.. session.All<(string Mark, long Drillings, long ScrewHoles, string Likeness)>(
            """
            SELECT posts.mark, drillings, screw_holes, likeness FROM posts JOIN post_parts ON post_id = posts.id
            WHERE job_id = @id AND dropped_at IS NULL ORDER BY position
            """,
            new { id }).Select(post => Post(post.Mark, post.Drillings, post.ScrewHoles, post.Likeness))];

    private static IEnumerable<CheckFinding> WithoutTickets(ShopSession session) => session.All<(string Number, string Name, string Key)>(
        """
        SELECT number, run AS name, 'PieceWithoutTicket' AS key FROM pieces JOIN jobs ON jobs.id = job_id
        WHERE NOT EXISTS (SELECT 1 FROM cut_tickets WHERE piece_id = pieces.id)
        UNION ALL
        SELECT number, post_parts.mark, 'PostWithoutTicket' FROM post_parts JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE drillings > 0 AND NOT EXISTS (SELECT 1 FROM drill_tickets WHERE drill_tickets.post_id = posts.id)
        """).Select(one => CheckFinding.Of(StoreReplies.Say("Job", one.Number), one.Key, one.Name));

    /// <summary>What a cancelled job or a change no longer wants is at no bench and in no queue.</summary>
    private static IEnumerable<CheckFinding> Ends(ShopSession session) => session.All<(string Number, string Kind, string Name, string State)>(
        $"""
        SELECT number, 'Piece' AS kind, run AS name, state FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id
        WHERE (cancelled_at IS NOT NULL OR dropped_at IS NOT NULL) AND state NOT IN ('{TicketStates.Cancelled}', '{TicketStates.Surplus}')
        UNION ALL
        SELECT number, 'Post', mark, state FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE (cancelled_at IS NOT NULL OR dropped_at IS NOT NULL) AND state NOT IN ('{TicketStates.Cancelled}', '{TicketStates.Surplus}')
        """).Select(ticket => CheckFinding.Of(StoreReplies.Say("Job", ticket.Number), "NotWanted", StoreReplies.Say(ticket.Kind, ticket.Name), ticket.State));

    private sealed record JobRow(string Number, string Customer, DateOnly? Due, bool OneLot, string JobFile)
    {
        public (string, string, DateOnly?, bool) Facts => (Number, Customer, Due, OneLot);
    }

    /// <summary>A piece, a post or a line with what is compared of it.</summary>
    private sealed record Thing(string Name, string What);
}
