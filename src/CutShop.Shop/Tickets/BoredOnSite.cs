using CutShop.Shop.Store;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Tickets;

/// <summary>What installers have ticked of the bores in posts that are bored on site.</summary>
internal static class BoredOnSite
{
    /// <summary>The word of a bore that is made, as forms send and tables keep it.</summary>
    public const string Bored = "bored";

    /// <summary>The word of one that is not.</summary>
    public const string NotBored = "not-bored";

    /// <summary>The bores of a job's posts that are ticked.</summary>
    public static IReadOnlySet<BoreMark> Of(ShopSession session, long jobId) => session.All<(string Post, string Row, long Number)>(
        $"""
        SELECT posts.mark, row_mark, bore FROM site_bores JOIN posts ON posts.id = post_id
        WHERE job_id = @jobId AND dropped_at IS NULL AND state = '{Bored}'
        """,
        new { jobId }).Select(row => new BoreMark(row.Post, row.Row, (int)row.Number)).ToHashSet();

    /// <summary>Whether a bore of a post is ticked, and when that was last changed; null where nobody has ticked it yet.</summary>
    public static (bool IsBored, DateTimeOffset? ChangedAt) Of(ShopSession session, long postId, BoreMark bore) =>
        session.FirstOrDefault<Row>("SELECT state, tapped_at FROM site_bores WHERE post_id = @postId AND row_mark = @Row AND bore = @Number", new { postId, bore.Row, bore.Number }) is { } row
            ? (row.State == Bored, row.TappedAt)
            : (false, null);

    /// <summary>Stores a tick, or that it was taken back.</summary>
    public static void Put(ShopSession session, long postId, BoreMark bore, bool isBored, DateTimeOffset at) => session.Execute(
        """
        INSERT INTO site_bores (post_id, row_mark, bore, state, tapped_at) VALUES (@postId, @Row, @Number, @state, @at)
        ON CONFLICT (post_id, row_mark, bore) DO UPDATE SET state = excluded.state, tapped_at = excluded.tapped_at
        """,
        new { postId, bore.Row, bore.Number, state = isBored ? Bored : NotBored, at });

    /// <summary>A post that a change gives another form has the ticks of those bores that stay as they were.</summary>
    public static void Keep(ShopSession session, long fromPostId, PostWork was, long toPostId, PostWork becomes)
    {
        foreach (var row in session.All<TickRow>("SELECT row_mark, bore, tapped_at FROM site_bores WHERE post_id = @fromPostId AND state = @Bored", new { fromPostId, Bored }))
        {
            var bore = new BoreMark(was.Post.Mark, row.RowMark, (int)row.Bore);
            if (bore.In(was) is { } old && bore.In(becomes) is { } next && IsSame(old, next))
                Put(session, toPostId, bore, isBored: true, row.TappedAt);
        }
    }

    private static bool IsSame(Bore one, Bore other) =>
        (one.Kind, one.Bit, one.Height, one.RakeDegrees, one.BoredBy) == (other.Kind, other.Bit, other.Height, other.RakeDegrees, other.BoredBy)
        && one.Operations.SequenceEqual(other.Operations);

    private sealed record Row(string State, DateTimeOffset TappedAt);

    private sealed record TickRow(string RowMark, long Bore, DateTimeOffset TappedAt);
}

/// <summary>A bore of a job, by what it can be found by again.</summary>
/// <param name="Post">The post's mark.</param>
/// <param name="Row">The row's mark.</param>
/// <param name="Number">Which of the row's bores in the post, from 1.</param>
public sealed record BoreMark(string Post, string Row, int Number)
{
    /// <summary>The bore in the work at its post, or null where there is none to be made.</summary>
    public Bore? In(PostWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.NumberedBores.FirstOrDefault(numbered => numbered.Bore.Row == Row && numbered.Number == Number && !numbered.Bore.IsExisting)?.Bore;
    }
}

/// <summary>A post of a job that is bored on site, and how far it is.</summary>
/// <param name="Line">The mark of its line.</param>
/// <param name="Mark">Its mark.</param>
/// <param name="Bores">How many bores are made in it.</param>
/// <param name="Bored">How many of them are ticked.</param>
public sealed record SitePost(string Line, string Mark, int Bores, int Bored)
{
    /// <summary>Those of a job that have something to be bored.</summary>
    internal static IReadOnlyList<SitePost> Of(IEnumerable<PostWork> posts, IReadOnlySet<BoreMark> bored) =>
    [
        .. posts.Where(work => work.IsForSite)
            .Select(work => (Work: work, Bores: work.NumberedBores.Where(numbered => !numbered.Bore.IsExisting).ToList()))
            .Where(post => post.Bores.Count > 0)
            .Select(post => new SitePost(
                post.Work.Line,
                post.Work.Post.Mark,
                post.Bores.Count,
                post.Bores.Count(numbered => bored.Contains(new(post.Work.Post.Mark, numbered.Bore.Row, numbered.Number))))),
    ];
}
