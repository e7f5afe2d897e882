using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>What a scanned or typed text leads to.</summary>
/// <param name="Code">The piece, or null.</param>
/// <param name="Job">The job's number; empty for a coil.</param>
/// <param name="Post">The post's mark, or null where it is none.</param>
/// <param name="Coil">The coil, or null.</param>
public sealed record Scanned(PieceCode? Code, string Job, string? Post, StockCoil? Coil = null);

/// <summary>What a scan leads to, or why it leads nowhere.</summary>
/// <param name="Found">The ticket or the coil, or null.</param>
/// <param name="Why">Why there is none, or null where there is one.</param>
public sealed record ScanReading(Scanned? Found, Sentence? Why);

/// <summary>Finds what a scan means: the address on a label of a piece, a post or a coil, a code, a ticket's mark as printed at its foot, or a coil's mark.</summary>
public sealed class ScanResolver(ShopDatabase database)
{
    /// <summary>The longest text that is read as a scan, in characters.</summary>
    public const int LongestScan = 400;

    private const string AtPost = "/LINE#post-";

    private static readonly string[] Schemes = ["https://", "http://"];

    /// <summary>The ticket or coil, or why there is none: nothing is so marked, several are, the label no longer counts, or the code is mistyped.</summary>
    /// <param name="text">
    /// A label's address, a code with or without dashes, <c>JOB RUN</c>, <c>JOB POST</c>, a run or mark that only one job has, or a coil's mark.
    /// </param>
    public ScanReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return database.Read(session => Read(session, text));
    }

    /// <summary>
    /// What was scanned while a field for a length had the focus: an address, wherever it begins in the field, a code, mistyped or not, or a mark.
    /// Null for any other text. What reads as a length is one, and is not asked about here.
    /// </summary>
    /// <param name="typed">What stands in the field.</param>
    public string? InsteadOfLength(string typed) =>
        InsteadOfWords(typed) ?? (Read(typed) is var reading && (reading.Found is not null || !Nothing(typed.Trim()).Equals(reading)) ? typed : null);

    /// <summary>The same of a field for words, which may hold a mark: an address, or a code.</summary>
    /// <param name="typed">What stands in the field.</param>
    public static string? InsteadOfWords(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var address = Schemes.Max(scheme => typed.LastIndexOf(scheme, StringComparison.OrdinalIgnoreCase));
        return address >= 0 ? typed[address..] : PieceCode.Parse(typed).IsGood ? typed : null;
    }

    internal static ScanReading Read(ShopSession session, string text)
    {
        var scan = text.Trim();
        if (scan.Length is 0 or > LongestScan)
            return Nothing(scan);
        if (scan.LastIndexOf(AtPost, StringComparison.OrdinalIgnoreCase) is > 0 and var at)
            return OnPostLabel(session, scan, at);
        var code = ScannedCode.Parse(scan);
        return (code.IsGood ? ByCode(session, code.Value) : null) ?? ByMark(session, scan) switch
        {
            [var one] => new(one, Why: null),
            [] when CoilShelf.Find(session, scan[(scan.LastIndexOf('/') + 1)..].ToUpperInvariant()) is { } coil => new(new(Code: null, Job: "", Post: null, coil), Why: null),
            [] when ScannedCode.SlipIn(scan) is { } wrong => new(Found: null, BenchReplies.Of("NotACode", scan, wrong)),
            [] => Nothing(scan),
            _ => new(Found: null, BenchReplies.Of("SeveralMarked", scan)),
        };
    }

    private static ScanReading Nothing(string scan) => new(Found: null, BenchReplies.NothingMarked(scan));

    /// <summary>A post's label holds the address of a piece that passes it, and its mark.</summary>
    private static ScanReading OnPostLabel(ShopSession session, string scan, int at)
    {
        var post = Uri.UnescapeDataString(scan[(at + AtPost.Length)..]);
        return ScannedCode.Parse(scan[..at]) is { IsGood: true } code && ByCode(session, code.Value) is { Found: { } piece }
            && ByMark(session, $"{piece.Job} {post}").FirstOrDefault(one => one.Post is not null) is { } found
            ? new(found, Why: null)
            : Nothing(scan);
    }

    private static ScanReading? ByCode(ShopSession session, PieceCode code)
    {
        if (session.FirstOrDefault<string>("SELECT number FROM jobs JOIN pieces ON job_id = jobs.id WHERE code = @code", new { code }) is { } job)
            return new(new(code, job, Post: null), Why: null);
        return session.FirstOrDefault<EndedLabel>(
            """
            SELECT number AS job, pieces.run, coalesce(again.code, pieces.code) AS newest
            FROM ended_labels JOIN pieces ON pieces.id = ended_labels.piece_id JOIN jobs ON jobs.id = pieces.job_id
            LEFT JOIN pieces AS again ON again.replaces_id = pieces.id
            WHERE ended_labels.code = @code
            """,
            new { code }) is { } ended
            ? new(Found: null, BenchReplies.Of("LabelEnded", code, ended.Run, ended.Job, ended.Newest))
            : null;
    }

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

    private sealed record EndedLabel(string Job, string Run, PieceCode Newest);
}
