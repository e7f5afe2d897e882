using System.Globalization;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>How accepting a change went.</summary>
/// <param name="Number">The job's number where it is done, else empty.</param>
/// <param name="Problem">Why nothing was changed, or null.</param>
/// <param name="Change">The change as it stands now, to be shown again; null where there is nothing to show.</param>
public sealed record ChangeAnswer(string Number, string? Problem, JobChange? Change)
{
    /// <summary>True where the job has its new form.</summary>
    public bool IsDone => Problem is null;
}

/// <summary>
/// Changes stored jobs. What stays the same keeps its row, code and ticket; what is no longer wanted is cancelled, or
/// surplus where it was made; nothing is erased.
/// </summary>
public sealed class JobChanging(ShopDatabase database, ShopTablesShelf tables)
{
    /// <summary>True where a job has this number.</summary>
    public bool IsStored(string number) =>
        database.Read(session => session.FirstOrDefault<long?>("SELECT id FROM jobs WHERE number = @number", new { number }) is not null);

    /// <summary>True where the job of this number was cancelled.</summary>
    public bool IsCancelled(string number) => database.Read(session => IsCancelled(session, number));

    /// <summary>Why a cancelled job takes no change and no quote.</summary>
    public static string WasCancelled(string number) => $"Job {number} was cancelled and cannot change.";

    internal static bool IsCancelled(ShopSession session, string number) =>
        session.FirstOrDefault<long?>("SELECT id FROM jobs WHERE number = @number AND cancelled_at IS NOT NULL", new { number }) is not null;

    /// <summary>What would change, or null where no job has this number.</summary>
    public JobChange? Compare(Job next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return database.Read(session =>
        {
            var now = tables.Current(session);
            return StoredWork.Find(session, next.Number, now) is { } was ? JobChange.Between(was, JobTakeoff.Of(next, now)) : null;
        });
    }

    /// <summary>
    /// Gives a stored job the form that an open draft has, if the change is still the one that was shown. Safe to send twice.
    /// </summary>
    /// <param name="draftId">The draft.</param>
    /// <param name="token">The <see cref="JobChange.Token"/> of the change that was shown.</param>
    /// <param name="who">Who accepts it.</param>
    /// <param name="quoteId">The quote that the customer accepted for it, or null.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<ChangeAnswer> AcceptAsync(long draftId, string token, string who, long? quoteId = null, CancellationToken cancel = default) =>
        database.WriteAsync(session => Accept(session, draftId, token, who, quoteId), cancel);

    private ChangeAnswer Accept(ShopSession session, long draftId, string token, string who, long? quoteId)
    {
        if (DraftShelf.Find(session, draftId) is not { } draft)
            return Refused("There is no such draft.");
        if (draft.JobNumber is { } done)
            return new(done, Problem: null, Change: null);
        if (!draft.IsOpen)
            return Refused("This draft was put away.");
        var now = tables.Current(session);
        if (DraftReading.Of(draft.Form, now).Takeoff is not { } next)
            return Refused("The draft has errors. Put them right first.");
        if (StoredWork.Find(session, next.Job.Number, now) is not { } was)
            return Refused($"There is no job {next.Job.Number}.");
        var change = JobChange.Between(was, next);
        if (was.IsCancelled)
            return Refused(WasCancelled(next.Job.Number), change);
        if (change.Token != token)
            return Refused("Something was cut, drilled or typed since this was shown. Look again, then accept it.", change);
        if (quoteId is { } quote && QuoteDesk.AcceptWithChange(session, quote, draftId, next.Job, who) is { } problem)
            return Refused(problem, change);

        var pieceIds = ChangePieces(session, was, next, change, who);
        ChangePosts(session, was, next, change, pieceIds, who);
        JobIntake.InsertTickets(session, was.JobId);
        session.Execute(
            "UPDATE jobs SET customer = @Customer, due = @Due, one_lot = @OneLot, job_file = @file, version = @version WHERE id = @JobId",
            new { next.Job.Customer, next.Job.Due, next.Job.OneLot, file = JobFileWriter.Write(next.Job), version = KeptTakeoffs.DrawVersion(), was.JobId });
        session.Record("job", was.JobId, who, HistoryCodes.JobChanged, details: Counts(was.Takeoff, next, change));
        DraftShelf.Close(session, draftId, next.Job.Number, who);
        return new(next.Job.Number, Problem: null, Change: null);
    }

    private static Dictionary<string, long> ChangePieces(ShopSession session, StoredWork was, JobTakeoff next, JobChange change, string who)
    {
        // Positions below are free once every piece the job ever had has moved past the last.
        session.Execute(
            "UPDATE pieces SET position = position + 1 + (SELECT max(position) FROM pieces WHERE job_id = @JobId) WHERE job_id = @JobId", new { was.JobId });
        var kept = Names(change.Pieces, ChangeKind.Kept);
        foreach (var piece in was.Pieces.Where(piece => !kept.Contains(piece.Run)))
        {
            TicketEnd.OfPiece(session, piece.TicketId, piece.State, who, Reason.Because(HistoryCause.JobChanged));
            session.Execute("UPDATE pieces SET dropped_at = @Now WHERE id = @Id", new { session.Now, piece.Id });
        }

        var stored = was.Pieces.ToDictionary(piece => piece.Run, piece => piece.Id);
        var ids = new Dictionary<string, long>();
        foreach (var (position, piece) in next.Pieces.Index())
        {
            if (kept.Contains(piece.Run))
                session.Execute("UPDATE pieces SET position = @position WHERE id = @id", new { position, id = stored[piece.Run] });
            ids.Add(piece.Run, kept.Contains(piece.Run) ? stored[piece.Run] : JobIntake.InsertPiece(session, was.JobId, position, piece));
        }
        return ids;
    }

    private static void ChangePosts(
        ShopSession session, StoredWork was, JobTakeoff next, JobChange change, Dictionary<string, long> pieceIds, string who)
    {
        var kept = Names(change.Posts, ChangeKind.Kept);
        foreach (var post in was.Posts.Where(post => !kept.Contains(post.Post.Mark)))
        {
            if (post.TicketId != 0)
                TicketEnd.OfPost(session, post.TicketId, post.State, who, Reason.Because(HistoryCause.JobChanged));
            // Its mark goes to the post that takes its place.
            session.Execute(
                "UPDATE posts SET dropped_at = @Now, mark = @mark WHERE id = @Id",
                new { session.Now, mark = string.Create(CultureInfo.InvariantCulture, $"{post.Post.Mark} (out, {post.Id})"), post.Id });
        }

        var stored = was.Posts.ToDictionary(post => post.Post.Mark, post => post.Id);
        var bores = next.Bores.ToLookup(bore => bore.Post.Mark);
        foreach (var (position, post) in next.Job.Posts.Index())
        {
            if (!kept.Contains(post.Mark))
            {
                JobIntake.InsertPost(session, was.JobId, position, post, [.. bores[post.Mark]], pieceIds);
                continue;
            }
            var postId = stored[post.Mark];
            session.Execute("UPDATE posts SET position = @position WHERE id = @postId", new { position, postId });
            // The post stays as drilled; a run that goes through it may be a new piece now.
            foreach (var bore in bores[post.Mark])
            {
                session.Execute(
                    "UPDATE bores SET piece_id = @pieceId WHERE post_id = @postId AND piece_id IN (SELECT id FROM pieces WHERE job_id = @JobId AND run = @Run)",
                    new { pieceId = pieceIds[bore.Run], postId, was.JobId, bore.Run });
            }
        }
    }

    private static HashSet<string> Names(IReadOnlyList<ChangedThing> things, ChangeKind kind) =>
        [.. things.Where(thing => thing.Kind == kind).Select(thing => thing.Name)];

    private static object Counts(JobTakeoff was, JobTakeoff next, JobChange change) => new
    {
        piecesBefore = was.Pieces.Count,
        boresBefore = was.Bores.Count,
        pieces = next.Pieces.Count,
        bores = next.Bores.Count,
        piecesAdded = JobChange.Count(change.Pieces, ChangeKind.Added),
        piecesChanged = JobChange.Count(change.Pieces, ChangeKind.Changed),
        piecesGone = JobChange.Count(change.Pieces, ChangeKind.Gone),
        postsAdded = JobChange.Count(change.Posts, ChangeKind.Added),
        postsChanged = JobChange.Count(change.Posts, ChangeKind.Changed),
        postsGone = JobChange.Count(change.Posts, ChangeKind.Gone),
        surplus = change.Surplus.Count(),
    };

    private static ChangeAnswer Refused(string problem, JobChange? change = null) => new("", problem, change);
}
