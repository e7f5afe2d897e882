using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>What a scanned or typed text leads to.</summary>
/// <param name="Code">The piece, or null.</param>
/// <param name="Job">The job's number.</param>
/// <param name="Post">The post's mark, or null where it is a piece.</param>
public sealed record Scanned(PieceCode? Code, string Job, string? Post);

/// <summary>Finds the ticket that a scan means: a label's address, a code, or a ticket's mark as printed at its foot.</summary>
public sealed class ScanResolver(ShopDatabase database)
{
    private const int LongestScan = 400;

    /// <summary>The ticket, or null where nothing is so marked or several are.</summary>
    /// <param name="text">A label's address, a code with or without dashes, <c>JOB RUN</c>, <c>JOB POST</c>, or a run or mark that only one job has.</param>
    public Scanned? Find(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Meant(text) is [var one] ? one : null;
    }

    /// <summary>True where several tickets are so marked, so that <see cref="Find"/> cannot say which is meant.</summary>
    public bool IsOfSeveral(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Meant(text).Count > 1;
    }

    /// <summary>Why a scan leads to no ticket.</summary>
    public static Sentence NotFound(string text, bool isOfSeveral) =>
        ScannedCode.SlipIn(text) ?? BenchReplies.Of(isOfSeveral ? "SeveralMarked" : "NothingMarked", text);

    private IReadOnlyList<Scanned> Meant(string text)
    {
        var scan = text.Trim();
        if (scan.Length is 0 or > LongestScan)
            return [];
        var code = ScannedCode.Parse(scan);
        return database.Read(session => (code.IsGood ? ByCode(session, code.Value) : null) is { } coded ? [coded] : ByMark(session, scan));
    }

    private static Scanned? ByCode(ShopSession session, PieceCode code) =>
        session.FirstOrDefault<string>("SELECT number FROM jobs JOIN pieces ON job_id = jobs.id WHERE code = @code", new { code }) is { } job
            ? new(code, job, Post: null)
            : null;

    private static IReadOnlyList<Scanned> ByMark(ShopSession session, string scan)
    {
        var sql = session.Dialect;
        var pieces = session.All<(string Job, PieceCode Code)>(
            $"""
            SELECT number, code FROM jobs JOIN pieces ON job_id = jobs.id
            WHERE dropped_at IS NULL AND ({sql.AreAlike("number || ' ' || run", "@scan")}
               OR ({sql.AreAlike("run", "@scan")} AND EXISTS (SELECT 1 FROM cut_tickets WHERE piece_id = pieces.id AND state IN ({TicketStates.ToDo}))))
            LIMIT 2
            """,
            new { scan });
        var posts = session.All<(string Job, string Post)>(
            $"""
            SELECT number, mark FROM jobs JOIN posts ON job_id = jobs.id JOIN drill_tickets ON post_id = posts.id
            WHERE {sql.AreAlike("number || ' ' || mark", "@scan")} OR ({sql.AreAlike("mark", "@scan")} AND drill_tickets.state IN ({TicketStates.ToDo}))
            LIMIT 2
            """,
            new { scan });
        return [.. pieces.Select(piece => new Scanned(piece.Code, piece.Job, Post: null)), .. posts.Select(post => new Scanned(Code: null, post.Job, post.Post))];
    }
}
