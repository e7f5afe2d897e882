using System.Globalization;
using CutShop.Shop.Benches;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Jobs;

/// <summary>How accepting a change went.</summary>
/// <param name="Number">The job's number where it is done, else empty.</param>
/// <param name="Problem">Why nothing was changed, or null.</param>
/// <param name="Change">The change as it is now, to be shown again; null where there is nothing to show.</param>
public sealed record ChangeAnswer(string Number, Sentence? Problem, JobChange? Change)
{
    /// <summary>True where the job has its new form.</summary>
    public bool IsDone => Problem is null;
}

/// <summary>What a stored job is called, and its state.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Customer">Who ordered it.</param>
/// <param name="State">received, released or cancelled.</param>
public sealed record JobOfNumber(string Number, string Customer, string State)
{
    /// <summary>True where it was cancelled.</summary>
    public bool IsCancelled => State == "cancelled";

    /// <summary>Whose job it is and how it stands, as a sentence.</summary>
    public Sentence Says => Customer.Length > 0 ? JobReplies.Of("JobOfCustomer", Number, Customer, State) : JobReplies.Of("JobOfNobody", Number, State);
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
    public static Sentence WasCancelled(string number) => JobReplies.Of("JobWasCancelled", number);

    /// <summary>The stored job of a number, or null.</summary>
    public JobOfNumber? OfNumber(string number) => database.Read(session => OfNumber(session, number));

    internal static JobOfNumber? OfNumber(ShopSession session, string number) =>
        session.FirstOrDefault<JobOfNumber>($"SELECT number, customer, {JobCounts.State} AS state FROM jobs WHERE number = @number", new { number });

    internal static bool IsCancelled(ShopSession session, string number) =>
        session.FirstOrDefault<long?>("SELECT id FROM jobs WHERE number = @number AND cancelled_at IS NOT NULL", new { number }) is not null;

    /// <summary>What would change, or null where no job has this number.</summary>
    public JobChange? Compare(Job next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return database.Read(session =>
        {
            var now = tables.Current(session);
            return StoredWork.Find(session, next.Number) is { } was ? JobChange.ByDraft(was, JobTakeoff.Of(next, now), now) : null;
        });
    }

    /// <summary>What today's rules would make of a job that is stored; null where there is no such job, or they no longer read its file.</summary>
    public JobChange? CompareWithRules(string number) => database.Read(session => CompareWithRules(session, number, tables.Current(session)));

    internal static JobChange? CompareWithRules(ShopSession session, string number, ShopTables tables) =>
        StoredWork.Find(session, number) is { } was && was.TakeoffBy(tables) is { } next ? JobChange.ByRules(was, next) : null;

    /// <summary>
    /// Gives a stored job the form that today's rules make of its file, if the change is still the one that was shown. Safe to send twice: then
    /// there is nothing left to change.
    /// </summary>
    /// <param name="number">The job's number.</param>
    /// <param name="token">The <see cref="JobChange.Token"/> of the change that was shown.</param>
    /// <param name="who">Who accepts it.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<ChangeAnswer> AcceptRulesAsync(string number, string token, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => AcceptRules(session, number, token, who), cancel);

    private ChangeAnswer AcceptRules(ShopSession session, string number, string token, string who)
    {
        if (StoredWork.Find(session, number) is not { } was)
            return Refused(JobReplies.Of("NoSuchJob", number));
        if (was.TakeoffBy(tables.Current(session)) is not { } next)
            return Refused(JobReplies.Of("RulesDoNotAccept", number));
        var change = JobChange.ByRules(was, next);
        if (!change.TouchesWork)
            return new(number, Problem: null, Change: null);
        if (Problem(change, token) is { } refusal)
            return Refused(refusal, change);
        Store(session, was, next, change, HistoryCodes.JobByRules, who);
        return new(number, Problem: null, Change: null);
    }

    internal static Sentence? Problem(JobChange change, string token) =>
        change.IsCancelled ? WasCancelled(change.Number)
        : change.Token != token ? JobReplies.Of("ChangedSinceShown")
        : null;

    internal static void Store(ShopSession session, StoredWork was, JobTakeoff next, JobChange change, HistoryCode what, string who)
    {
        ChangePieces(session, was, change, who);
        ChangePosts(session, was, change, who);
        JobIntake.InsertTickets(session, was.JobId);
        PieceWork[] pieces = [.. change.Pieces.Select(piece => piece.Becomes).OfType<PieceWork>()];
        var bores = change.Posts.Sum(post => post.Becomes?.Bores.Count ?? 0);
        StoredParts.Put(session, was.JobId, JobFrame.Of(next) with { Totals = JobTotals.Of(pieces, bores) });
        session.Execute(
            "UPDATE jobs SET customer = @Customer, due = @Due, one_lot = @OneLot, job_file = @file WHERE id = @JobId",
            new { next.Job.Customer, next.Job.Due, next.Job.OneLot, file = JobFileWriter.Write(next.Job), was.JobId });
        session.Record("job", was.JobId, who, what, details: Counts(was, change, pieces.Length, bores));
    }

    private static void ChangePieces(ShopSession session, StoredWork was, JobChange change, string who)
    {
        // Positions below are free once every piece the job ever had has moved past the last.
        session.Execute(
            "UPDATE pieces SET position = position + 1 + (SELECT max(position) FROM pieces WHERE job_id = @JobId) WHERE job_id = @JobId", new { was.JobId });
        var stored = was.Pieces.ToDictionary(piece => piece.Work.Piece.Run);
        foreach (var old in change.Pieces.Where(piece => piece.Kind is ChangeKind.Changed or ChangeKind.Gone).Select(piece => stored[piece.Name]))
        {
            TicketClosing.OfPiece(session, old.TicketId, old.State, who, Reason.Because(HistoryCause.JobChanged));
            session.Execute("UPDATE pieces SET dropped_at = @Now WHERE id = @Id", new { session.Now, old.Id });
        }
        foreach (var (position, piece) in change.Pieces.Where(piece => piece.Becomes is not null).Index())
        {
            if (piece.Kind != ChangeKind.Kept)
            {
                JobIntake.InsertPiece(session, was.JobId, position, piece.Becomes!);
                continue;
            }
            var id = stored[piece.Name].Id;
            session.Execute("UPDATE pieces SET position = @position WHERE id = @id", new { position, id });
            if (piece.IsRevised)
                StoredParts.Put(session, id, piece.Becomes!);
        }
    }

    private static void ChangePosts(ShopSession session, StoredWork was, JobChange change, string who)
    {
        var stored = was.Posts.ToDictionary(post => post.Work.Post.Mark);
        foreach (var old in change.Posts.Where(post => post.Kind is ChangeKind.Changed or ChangeKind.Gone).Select(post => stored[post.Name]))
        {
            if (old.TicketId != 0)
                TicketClosing.OfPost(session, old.TicketId, old.State, who, Reason.Because(HistoryCause.JobChanged));
            // Its mark goes to the post that takes its place; its part keeps it.
            session.Execute(
                "UPDATE posts SET dropped_at = @Now, mark = @mark WHERE id = @Id",
                new { session.Now, mark = string.Create(CultureInfo.InvariantCulture, $"{old.Work.Post.Mark} (out, {old.Id})"), old.Id });
        }
        foreach (var (position, post) in change.Posts.Where(post => post.Becomes is not null).Index())
        {
            if (post.Kind != ChangeKind.Kept)
            {
                var next = JobIntake.InsertPost(session, was.JobId, position, post.Becomes!);
                if (post.Kind == ChangeKind.Changed)
                    BoredOnSite.Keep(session, stored[post.Name].Id, post.Was!, next, post.Becomes!);
                continue;
            }
            var id = stored[post.Name].Id;
            session.Execute("UPDATE posts SET position = @position WHERE id = @id", new { position, id });
            if (post.IsRevised)
                StoredParts.Put(session, id, post.Becomes!);
        }
    }

    private static object Counts(StoredWork was, JobChange change, int pieces, int bores) => new
    {
        piecesBefore = was.Frame.Totals.Pieces,
        boresBefore = was.Frame.Totals.Bores,
        pieces,
        bores,
        piecesAdded = JobChange.Count(change.Pieces, ChangeKind.Added),
        piecesChanged = JobChange.Count(change.Pieces, ChangeKind.Changed),
        piecesGone = JobChange.Count(change.Pieces, ChangeKind.Gone),
        postsAdded = JobChange.Count(change.Posts, ChangeKind.Added),
        postsChanged = JobChange.Count(change.Posts, ChangeKind.Changed),
        postsGone = JobChange.Count(change.Posts, ChangeKind.Gone),
        surplus = change.Surplus.Count(),
    };

    internal static ChangeAnswer Refused(Sentence problem, JobChange? change = null) => new("", problem, change);
}
