using CutShop.Takeoff;

namespace CutShop.Shop;

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
        var where = $"job {row.Number}";
        return
        [
            .. Different(where, StoredPieces(session, id), [.. pieces.Select(work => Piece(work.Piece.Run, work.Piece.Rope.MaterialName, work.Piece.Rope.Diameter, work.Piece.Cut))]),
            .. Different(where, StoredPosts(session, id), [.. posts.Select(work => Post(work.Post.Mark, work.Bores.Sum(bore => bore.Operations.Count), work.ScrewHoles.Count, work.Likeness))]),
            .. Different(
                where,
                [new("the frame", Counted(frame.Totals))],
                [new("the frame", Counted(JobTotals.Of(pieces, posts.Sum(post => post.Bores.Count))))]),
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
                yield return new(where, $"its row says {row.Facts}, and its file {(job.Number, job.Customer, job.Due, job.OneLot)}");
        }
        else if (!row.JobFile.Contains("\"lines\"", StringComparison.Ordinal))
        {
            yield return new(where, "its stored file is not a job file");
        }
    }

    private static string Counted(JobTotals totals) =>
        FormattableString.Invariant($"{totals.Pieces} pieces, {totals.Bores} bores, {totals.Screws} screws, {totals.Cut} of rope");

    private static Thing Piece(string run, string material, Length diameter, Length cut) => new($"piece {run}", $"{material}, {diameter}, cut {cut}");

    private static Thing Post(string mark, long drillings, long screwHoles, string likeness) =>
        new($"post {mark}", FormattableString.Invariant($"{drillings} drillings, {screwHoles} screw holes, bored as {likeness}"));

    private static List<Thing> Lines(JobFrame frame) => [.. frame.Lines.Select(line => new Thing($"line {line.Mark}", string.Join(", ", line.Posts.Select(post => post.Mark))))];

    private static List<Thing> Lines(IReadOnlyList<PostWork> posts) =>
        [.. posts.GroupBy(post => post.Line).Select(line => new Thing($"line {line.Key}", string.Join(", ", line.Select(post => post.Post.Mark))))];

    private static IEnumerable<CheckFinding> Different(string where, IReadOnlyList<Thing> rows, IReadOnlyList<Thing> parts)
    {
        var stored = rows.ToLookup(row => row.Name, row => row.What);
        foreach (var part in parts.Where(part => !stored[part.Name].Contains(part.What)))
            yield return new($"{where}, {part.Name}", $"its row says {string.Join(" and ", stored[part.Name].DefaultIfEmpty("nothing"))}, and its part {part.What}");
        foreach (var row in rows.Where(row => parts.All(part => part.Name != row.Name)))
            yield return new($"{where}, {row.Name}", "it has no part");
    }

    private static IReadOnlyList<Thing> StoredPieces(ShopSession session, long id) =>
        [.. session.All<(string Run, string Material, Length Diameter, Length Cut)>(
            "SELECT run, material, diameter_nm, cut_nm FROM pieces WHERE job_id = @id AND dropped_at IS NULL ORDER BY position", new { id })
            .Select(piece => Piece(piece.Run, piece.Material, piece.Diameter, piece.Cut))];

    private static IReadOnlyList<Thing> StoredPosts(ShopSession session, long id) =>
        [.. session.All<(string Mark, long Drillings, long ScrewHoles, string Likeness)>(
            """
            SELECT posts.mark, drillings, screw_holes, likeness FROM posts JOIN post_parts ON post_id = posts.id
            WHERE job_id = @id AND dropped_at IS NULL ORDER BY position
            """,
            new { id }).Select(post => Post(post.Mark, post.Drillings, post.ScrewHoles, post.Likeness))];

    private static IEnumerable<CheckFinding> WithoutTickets(ShopSession session) => session.All<(string Number, string Name)>(
        """
        SELECT number, 'piece ' || run || ' has no cut ticket' AS name FROM pieces JOIN jobs ON jobs.id = job_id
        WHERE NOT EXISTS (SELECT 1 FROM cut_tickets WHERE piece_id = pieces.id)
        UNION ALL
        SELECT number, 'post ' || post_parts.mark || ' has bores and no drill ticket' FROM post_parts JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE drillings > 0 AND NOT EXISTS (SELECT 1 FROM drill_tickets WHERE drill_tickets.post_id = posts.id)
        """).Select(one => new CheckFinding($"job {one.Number}", one.Name));

    /// <summary>What a cancelled job or a change no longer wants is at no bench and in no queue.</summary>
    private static IEnumerable<CheckFinding> Ends(ShopSession session) => session.All<(string Number, string Name, string State)>(
        $"""
        SELECT number, 'piece ' || run AS name, state FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id
        WHERE (cancelled_at IS NOT NULL OR dropped_at IS NOT NULL) AND state NOT IN ('{TicketStates.Cancelled}', '{TicketStates.Surplus}')
        UNION ALL
        SELECT number, 'post ' || mark, state FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE (cancelled_at IS NOT NULL OR dropped_at IS NOT NULL) AND state NOT IN ('{TicketStates.Cancelled}', '{TicketStates.Surplus}')
        """).Select(ticket => new CheckFinding($"job {ticket.Number}", $"{ticket.Name} is {ticket.State}, though it is no longer wanted"));

    private sealed record JobRow(string Number, string Customer, DateOnly? Due, bool OneLot, string JobFile)
    {
        public (string, string, DateOnly?, bool) Facts => (Number, Customer, Due, OneLot);
    }

    /// <summary>A piece, a post or a line with what is compared of it.</summary>
    private sealed record Thing(string Name, string What);
}
