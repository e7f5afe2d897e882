using System.Text;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>
/// Whether the pieces, posts, bores and tickets of each job are those that its stored file works out to. The bit of a bore is
/// not held against it: it was chosen from the rack as it was on the day.
/// </summary>
internal static class JobsAgainstFiles
{
    public static IEnumerable<CheckFinding> Of(ShopSession session, ShopTables tables)
    {
        var now = ShopTablesShelf.Current(session, tables);
        return [.. session.All<long>("SELECT id FROM jobs ORDER BY number").SelectMany(id => Job(session, id, now)), .. Ends(session)];
    }

    private static IEnumerable<CheckFinding> Job(ShopSession session, long id, ShopTables tables)
    {
        var row = session.FirstOrDefault<JobRow>("SELECT number, customer, due, one_lot, job_file FROM jobs WHERE id = @id", new { id })!;
        var where = $"job {row.Number}";
        var reading = JobFileReader.Read(Encoding.UTF8.GetBytes(row.JobFile));
        if (reading.Job is not { } job)
            return [new(where, $"its stored file is not a job file: {reading.Problems[0]}")];
        var takeoff = JobTakeoff.Of(job, tables);
        return
        [
            .. Different(where, "the facts", [$"{row.Number}, {row.Customer}, {row.Due:O}, one lot {row.OneLot == 1}"], [$"{job.Number}, {job.Customer}, {job.Due:O}, one lot {job.OneLot}"]),
            .. Different(where, "the pieces", StoredPieces(session, id), [.. takeoff.Pieces.Select(piece => $"{piece.Run} {piece.Rope.MaterialName} {piece.Rope.Diameter} {piece.Cut}")]),
            .. Different(where, "the posts", session.All<string>("SELECT mark FROM posts WHERE job_id = @id AND dropped_at IS NULL ORDER BY position", new { id }), [.. job.Posts.Select(post => post.Mark)]),
            .. Different(where, "the bores", StoredBores(session, id), [.. takeoff.Bores.SelectMany(Told).Order(StringComparer.Ordinal)]),
            .. WithoutTickets(session, id, where),
        ];
    }

    private static IEnumerable<CheckFinding> Different(string where, string what, IReadOnlyList<string> stored, IReadOnlyList<string> worked)
    {
        foreach (var thing in stored.Except(worked))
            yield return new(where, $"{what}: stored is {thing}, which its file does not work out to");
        foreach (var thing in worked.Except(stored))
            yield return new(where, $"{what}: its file works out to {thing}, which is not stored");
    }

    private static string[] StoredPieces(ShopSession session, long id) =>
        [.. session.All<(string Run, string Material, Length Diameter, Length Cut)>(
            "SELECT run, material, diameter_nm, cut_nm FROM pieces WHERE job_id = @id AND dropped_at IS NULL ORDER BY position", new { id })
            .Select(piece => $"{piece.Run} {piece.Material} {piece.Diameter} {piece.Cut}")];

    private static string[] StoredBores(ShopSession session, long id) =>
        [.. session.All<(string Mark, string Run, string Kind, Length Height, string Face, Length Depth)>(
            """
            SELECT mark, run, kind, height_nm, coalesce(face, '') AS face, coalesce(depth_nm, 0) AS depth
            FROM posts JOIN bores ON post_id = posts.id JOIN pieces ON pieces.id = piece_id LEFT JOIN bore_operations ON bore_id = bores.id
            WHERE posts.job_id = @id AND posts.dropped_at IS NULL
            """,
            new { id }).Select(bore => $"{bore.Mark} for {bore.Run}, {bore.Kind} at {bore.Height}, {bore.Face} {bore.Depth} deep").Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Told(Bore bore) =>
        bore.Operations.Select(drilling => $"{bore.Post.Mark} for {bore.Run}, {TakeoffJson.Word(bore.Kind)} at {bore.Height}, {drilling.Face} {drilling.Depth} deep");

    private static IEnumerable<CheckFinding> WithoutTickets(ShopSession session, long id, string where) =>
    [
        .. session.All<string>("SELECT run FROM pieces WHERE job_id = @id AND NOT EXISTS (SELECT 1 FROM cut_tickets WHERE piece_id = pieces.id) ORDER BY position", new { id })
            .Select(run => new CheckFinding(where, $"piece {run} has no cut ticket")),
        .. session.All<string>(
            """
            SELECT mark FROM posts WHERE job_id = @id AND EXISTS (SELECT 1 FROM bores WHERE post_id = posts.id)
              AND NOT EXISTS (SELECT 1 FROM drill_tickets WHERE post_id = posts.id) ORDER BY position
            """,
            new { id }).Select(mark => new CheckFinding(where, $"post {mark} has bores and no drill ticket")),
    ];

    /// <summary>What a cancelled job or a change no longer wants is at no bench and in no queue.</summary>
    private static IEnumerable<CheckFinding> Ends(ShopSession session) => session.All<(string Number, string Name, string State)>(
        """
        SELECT number, 'piece ' || run AS name, state FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id
        WHERE (cancelled_at IS NOT NULL OR dropped_at IS NOT NULL) AND state NOT IN ('cancelled', 'surplus')
        UNION ALL
        SELECT number, 'post ' || mark, state FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE (cancelled_at IS NOT NULL OR dropped_at IS NOT NULL) AND state NOT IN ('cancelled', 'surplus')
        """).Select(ticket => new CheckFinding($"job {ticket.Number}", $"{ticket.Name} is {ticket.State}, though it is no longer wanted"));

    private sealed record JobRow(string Number, string Customer, DateOnly? Due, long OneLot, string JobFile);
}
