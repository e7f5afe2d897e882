using System.Security.Cryptography;
using System.Text;
using CutShop.Shop.Store;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Tickets;

/// <summary>The parts that the shop has stored: what it promised for each piece, each post, each job's frame and each quote.</summary>
internal static class StoredParts
{
    private const string Pieces =
        """
        SELECT pieces.id, number AS job, 'piece ' || run AS name, format, digest, part
        FROM pieces JOIN jobs ON jobs.id = job_id LEFT JOIN piece_parts ON piece_id = pieces.id
        """;

    private const string Posts =
        """
        SELECT posts.id, number AS job, 'post ' || coalesce(post_parts.mark, posts.mark) AS name, format, digest, part
        FROM posts JOIN jobs ON jobs.id = job_id LEFT JOIN post_parts ON post_id = posts.id
        """;

    private const string Frames =
        "SELECT jobs.id, number AS job, 'the frame' AS name, format, digest, part FROM jobs LEFT JOIN job_frames ON job_id = jobs.id";

    private const string Quotes =
        "SELECT quotes.id, job_number AS job, 'quote ' || quotes.id AS name, format, digest, part FROM quotes LEFT JOIN quote_documents ON quote_id = quotes.id";

    /// <summary>The form that is written, and the rules that work it out.</summary>
    private static readonly string Made = FormattableString.Invariant($"{PartText.Format}, {TakeoffRules.Number}");

    /// <summary>Stores the part of a piece, in place of one that it had.</summary>
    public static void Put(ShopSession session, long pieceId, PieceWork work) => session.Execute(
        $"""
        INSERT INTO piece_parts (piece_id, line, first_post, last_post, format, rules, digest, part)
        VALUES (@PieceId, @Line, @First, @Last, {Made}, @Digest, @Text)
        ON CONFLICT (piece_id) DO UPDATE SET line = excluded.line, first_post = excluded.first_post, last_post = excluded.last_post,
          format = excluded.format, rules = excluded.rules, digest = excluded.digest, part = excluded.part
        """,
        new Values(PartText.Write(work)) { PieceId = pieceId, Line = work.Piece.Line, First = work.Piece.First, Last = work.Piece.Last });

    /// <summary>Stores the part of a post, in place of one that it had.</summary>
    public static void Put(ShopSession session, long postId, PostWork work) => session.Execute(
        $"""
        INSERT INTO post_parts (post_id, line, mark, drillings, screw_holes, likeness, format, rules, digest, part)
        VALUES (@PostId, @Line, @Mark, @Drillings, @ScrewHoles, @Likeness, {Made}, @Digest, @Text)
        ON CONFLICT (post_id) DO UPDATE SET line = excluded.line, mark = excluded.mark, drillings = excluded.drillings,
          screw_holes = excluded.screw_holes, likeness = excluded.likeness,
          format = excluded.format, rules = excluded.rules, digest = excluded.digest, part = excluded.part
        """,
        new Values(PartText.Write(work))
        {
            PostId = postId,
            Line = work.Line,
            Mark = work.Post.Mark,
            Drillings = work.DrillingsInShop,
            ScrewHoles = work.ScrewHolesInShop,
            Likeness = work.Likeness,
        });

    /// <summary>Stores what an older program kept of a post that a change took out.</summary>
    public static void PutOldBores(ShopSession session, long postId, string mark, IReadOnlyList<OldBore> bores) => session.Execute(
        $"""
        INSERT INTO post_parts (post_id, line, mark, drillings, screw_holes, likeness, format, rules, digest, part)
        VALUES (@PostId, '', @Mark, @Drillings, @ScrewHoles, '', {PartText.OldBoresFormat}, {TakeoffRules.Number}, @Digest, @Text)
        """,
        new Values(PartText.Write(bores))
        {
            PostId = postId,
            Mark = mark,
            Drillings = bores.Sum(bore => bore.Drillings.Count),
            ScrewHoles = bores.Count(bore => bore.Kind != "knot"),
        });

    /// <summary>Stores a job's frame, in place of one that it had.</summary>
    public static void Put(ShopSession session, long jobId, JobFrame frame) => session.Execute(
        $"""
        INSERT INTO job_frames (job_id, format, rules, digest, part) VALUES (@JobId, {Made}, @Digest, @Text)
        ON CONFLICT (job_id) DO UPDATE SET format = excluded.format, rules = excluded.rules, digest = excluded.digest, part = excluded.part
        """,
        new Values(PartText.Write(frame)) { JobId = jobId });

    /// <summary>Stores a quote's document.</summary>
    public static void PutQuote(ShopSession session, long quoteId, JobTakeoff takeoff) => session.Execute(
        $"INSERT INTO quote_documents (quote_id, format, rules, digest, part) VALUES (@QuoteId, {Made}, @Digest, @Text)",
        new Values(PartText.Write(takeoff)) { QuoteId = quoteId });

    /// <summary>Gives a piece that is cut again the part of the piece whose place it takes.</summary>
    public static void Copy(ShopSession session, long fromPieceId, long toPieceId) => session.Execute(
        """
        INSERT INTO piece_parts (piece_id, line, first_post, last_post, format, rules, digest, part)
        SELECT @toPieceId, line, first_post, last_post, format, rules, digest, part FROM piece_parts WHERE piece_id = @fromPieceId
        """,
        new { fromPieceId, toPieceId });

    /// <summary>The work of a piece; null where a change took it out before parts were stored.</summary>
    public static PieceWork? Piece(ShopSession session, long pieceId) =>
        session.FirstOrDefault<PartRow>(Pieces + " WHERE pieces.id = @pieceId AND (dropped_at IS NULL OR part IS NOT NULL)", new { pieceId }) is { } row
            ? row.Read(PartText.ReadPiece)
            : null;

    /// <summary>The work of every piece of a job that is wanted, in the job's order.</summary>
    public static IReadOnlyList<PieceWork> PiecesOf(ShopSession session, long jobId) =>
        Read(session.All<PartRow>(Pieces + " WHERE pieces.job_id = @jobId AND dropped_at IS NULL ORDER BY position", new { jobId }), PartText.ReadPiece);

    /// <summary>The work of the pieces of a line, all or those at posts from one to another, in the job's order.</summary>
    public static IReadOnlyList<PieceWork> PiecesOf(ShopSession session, long jobId, string line, int first = 0, int last = int.MaxValue) => Read(
        session.All<PartRow>(
            Pieces + " WHERE pieces.job_id = @jobId AND dropped_at IS NULL AND line = @line AND first_post <= @last AND last_post >= @first ORDER BY position",
            new { jobId, line, first, last }),
        PartText.ReadPiece);

    /// <summary>The work at every post of a job that is wanted, in the job's order.</summary>
    public static IReadOnlyList<PostWork> PostsOf(ShopSession session, long jobId) =>
        Read(session.All<PartRow>(Posts + " WHERE posts.job_id = @jobId AND dropped_at IS NULL ORDER BY position", new { jobId }), PartText.ReadPost);

    /// <summary>The work at the posts of a line, in their order.</summary>
    public static IReadOnlyList<PostWork> PostsOf(ShopSession session, long jobId, string line) => Read(
        session.All<PartRow>(Posts + " WHERE posts.job_id = @jobId AND dropped_at IS NULL AND line = @line ORDER BY position", new { jobId, line }),
        PartText.ReadPost);

    /// <summary>The work at the post of a drill ticket.</summary>
    public static StoredPost Post(ShopSession session, long postId)
    {
        var row = session.FirstOrDefault<PartRow>(Posts + " WHERE posts.id = @postId", new { postId })!;
        return row.Format == PartText.OldBoresFormat
            ? new(Work: null, row.Read(PartText.ReadOldBores))
            : new(row.Read(PartText.ReadPost), []);
    }

    /// <summary>The frame of a job.</summary>
    public static JobFrame Frame(ShopSession session, long jobId) =>
        session.FirstOrDefault<PartRow>(Frames + " WHERE jobs.id = @jobId", new { jobId })!.Read(PartText.ReadFrame);

    /// <summary>The takeoff that a quote was made of.</summary>
    public static JobTakeoff Quote(ShopSession session, long quoteId) =>
        session.FirstOrDefault<PartRow>(Quotes + " WHERE quotes.id = @quoteId", new { quoteId })!.Read(PartText.ReadTakeoff);

    /// <summary>Every part of the shop that cannot be read, by its place.</summary>
    public static IEnumerable<DamagedPartException> Damaged(ShopSession session) =>
    [
        .. Damaged(session.All<PartRow>(Frames + " ORDER BY number"), PartText.ReadFrame),
        .. Damaged(session.All<PartRow>(Pieces + " WHERE dropped_at IS NULL OR part IS NOT NULL ORDER BY number, position"), PartText.ReadPiece),
        .. Damaged(session.All<PartRow>(Posts + " WHERE format IS NULL OR format > 0 ORDER BY number, position"), PartText.ReadPost),
        .. Damaged(session.All<PartRow>(Posts + " WHERE format = 0 ORDER BY number, position"), PartText.ReadOldBores),
        .. Damaged(session.All<PartRow>(Quotes + " ORDER BY quotes.id"), PartText.ReadTakeoff),
    ];

    /// <summary>The digest of a part's text.</summary>
    internal static string DigestOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static IReadOnlyList<T> Read<T>(IReadOnlyList<PartRow> rows, Func<string, int, T> read) => [.. rows.Select(row => row.Read(read))];

    private static IEnumerable<DamagedPartException> Damaged<T>(IReadOnlyList<PartRow> rows, Func<string, int, T> read)
    {
        foreach (var row in rows)
        {
            DamagedPartException? damage = null;
            try
            {
                row.Read(read);
            }
            catch (DamagedPartException e)
            {
                damage = e;
            }
            if (damage is not null)
                yield return damage;
        }
    }

    /// <summary>A part's row; without a part it has no text.</summary>
    private sealed record PartRow(long Id, string Job, string Name, long? Format, string? Digest, string? Part)
    {
        public T Read<T>(Func<string, int, T> read)
        {
            var place = $"job {Job}, {Name}";
            if (Part is null)
                throw new DamagedPartException(place, StoreReplies.Say("PartIsMissing"));
            if (DigestOf(Part) != Digest)
                throw new DamagedPartException(place, StoreReplies.Say("PartIsAltered"));
            try
            {
                return read(Part, (int)Format!);
            }
            catch (InvalidDataException e)
            {
                throw new DamagedPartException(place, e.Message, e);
            }
        }
    }

    /// <summary>What the statements above store of a part.</summary>
    private sealed record Values(string Text)
    {
        public string Digest { get; } = DigestOf(Text);

        public long JobId { get; init; }

        public long PieceId { get; init; }

        public long PostId { get; init; }

        public long QuoteId { get; init; }

        public string Line { get; init; } = "";

        public int First { get; init; }

        public int Last { get; init; }

        public string Mark { get; init; } = "";

        public int Drillings { get; init; }

        public int ScrewHoles { get; init; }

        public string Likeness { get; init; } = "";
    }
}

/// <summary>What is stored of the work at a post.</summary>
/// <param name="Work">The work; null where a change took the post out before parts were stored, and no file shows what it was.</param>
/// <param name="OldBores">What an older program kept of its bores then.</param>
public sealed record StoredPost(PostWork? Work, IReadOnlyList<OldBore> OldBores);
