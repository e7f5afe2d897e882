using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Benches;

/// <summary>
/// The drill bench. One post is given to one driller, posts bored alike one after the other. A tap is a <see cref="DrillStep"/>: what is
/// drilled before anything changes in the driller's hands; the post is done when the rope was passed through every bore. A post that is
/// drilled just like the one before it is one tap. A spoiled post is ordered again and its ticket starts again.
/// </summary>
public sealed class DrillBench(ShopDatabase database) : TicketBench<DrillWork, (string Job, string Post)>(database)
{
    private const string Fresh = ", steps = 0, drilled_by = NULL, drilled_at = NULL";
    private const string Finished = Claims.Free + ", steps = @All, drilled_by = @who, drilled_at = @now";

    private protected override Claims Claims { get; } = new(TicketStates.DrillTickets, TicketStates.HandBackDrill, "1 = 1", "");

    /// <summary>All tickets that a post's mark ever had, the one that is wanted first, then the newest.</summary>
    public IReadOnlyList<DrillWork> AllOf(string job, string post) => Database.Read(session => DrillWork.OfMark(session, job, post));

    /// <summary>What a ticket says is done at its post.</summary>
    /// <exception cref="DamagedPartException">It cannot be read.</exception>
    public StoredPost PostOf(DrillWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Database.Read(session => StoredParts.Post(session, work.PostId));
    }

    /// <summary>
    /// The post that someone drilled last, as the drill is still set up for it: none where that was a shift ago, or where they have
    /// spoiled one since.
    /// </summary>
    /// <exception cref="DamagedPartException">It cannot be read.</exception>
    public PostWork? LastBy(string who) => Database.Read(session => LastBy(session, who));

    /// <summary>How many posts of a ticket's job are bored alike, this one too, and how many of them are drilled.</summary>
    public (long All, long Drilled) Alike(DrillWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return Database.Read(session => session.Value<(long, long)>(
            $"""
            SELECT count(*), count(*) FILTER (WHERE drill_tickets.state = '{TicketStates.Drilled}')
            FROM drill_tickets JOIN posts ON posts.id = post_id
            WHERE job_id = (SELECT job_id FROM posts WHERE id = @PostId) AND dropped_at IS NULL AND likeness = @Likeness
            """,
            new { work.PostId, work.Likeness }));
    }

    /// <summary>Posts that are ordered again.</summary>
    public IReadOnlyList<DrillWork> ReOrdered() => Database.Read(DrillWork.ReOrdered);

    /// <summary>How many posts wait.</summary>
    public long Waiting() => Database.Read(session => session.Value<long>($"SELECT count(*) FROM drill_tickets WHERE state = '{TicketStates.Waiting}'"));

    /// <summary>The posts to drill with the numbers of their jobs, in the order in which they will be given out.</summary>
    /// <exception cref="DamagedPartException">One of them cannot be read.</exception>
    public IReadOnlyList<(string Job, PostWork Post)> ToDrill(int most = 500) => Database.Read(session => DrillWork.Waiting(session, most)
        .Select(waiting => (waiting.Job, StoredParts.Post(session, waiting.PostId).Work!)).ToList());

    /// <summary>
    /// Ticks the holes of a step up to one of them, by its number on the ticket; screw holes are numbered on after the drillings. Steps are
    /// ticked in their order, by whoever has the ticket.
    /// </summary>
    public Task<BenchAnswer> TickAsync((string Job, string Post) mark, int drilling, string who, string requestKey, CancellationToken cancel = default) => WhenClaimedAsync(
        mark,
        who,
        requestKey,
        (session, work) =>
        {
            if (drilling <= work.Steps)
                return BenchReplies.Of("DrillingDoneAlready", drilling);
            if (StepsOf(session, work).FirstOrDefault(step => step.Last > work.Steps) is not { } due || drilling > due.Last)
                return BenchReplies.Of("DrillingNotDue", drilling, work.Steps, work.All);
            session.Execute("UPDATE drill_tickets SET steps = @drilling, touched_at = @Now WHERE id = @Id", new { drilling, session.Now, work.Id });
            session.Record(
                "drill ticket",
                work.Id,
                who,
                drilling > work.Drillings ? HistoryCodes.ScrewHoleDrilled : HistoryCodes.BoreDrilled,
                details: new { drilledBefore = work.Steps, drilled = drilling, drillings = work.All });
            return null;
        },
        cancel);

    /// <summary>Undoes the step that was ticked last: its holes are to be drilled again.</summary>
    /// <param name="mark">The post.</param>
    /// <param name="drilling">The number of the last hole that is ticked: a tap that comes late undoes nothing more.</param>
    /// <param name="who">Who has the ticket.</param>
    /// <param name="requestKey">The request's key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> UntickAsync((string Job, string Post) mark, int drilling, string who, string requestKey, CancellationToken cancel = default) => WhenClaimedAsync(
        mark,
        who,
        requestKey,
        (session, work) =>
        {
            if (drilling != work.Steps || StepsOf(session, work).FirstOrDefault(step => step.First <= drilling && drilling <= step.Last) is not { } last)
                return BenchReplies.Of("StepNotLast", work.Steps, work.All);
            Untick(session, work, last.First - 1, who);
            return null;
        },
        cancel);

    /// <summary>Hands a post back with nothing drilled, as after a tap on the wrong post.</summary>
    public Task<BenchAnswer> HandBackUndrilledAsync((string Job, string Post) mark, string who, string requestKey, CancellationToken cancel = default) => WhenClaimedAsync(
        mark,
        who,
        requestKey,
        (session, work) =>
        {
            if (work.Steps > 0)
                Untick(session, work, left: 0, who);
            return TicketStates.HandBackDrill.Try(session, work.Id, who, Claims.Free);
        },
        cancel);

    /// <summary>Says that the actual rope went through every bore, which finishes the post. Screw holes that were not ticked are said to be in with it.</summary>
    public Task<BenchAnswer> FitsAsync((string Job, string Post) mark, string who, string requestKey, CancellationToken cancel = default) => WhenClaimedAsync(
        mark,
        who,
        requestKey,
        (session, work) =>
        {
            return work.IsFitDue
                ? TicketStates.FinishDrill.Try(
                    session,
                    work.Id,
                    who,
                    Finished,
                    new { work.All },
                    details: new { screwHoles = work.All - work.Steps })
                : BenchReplies.Of("NotAllDrilled", work.Steps, work.Drillings);
        },
        cancel);

    /// <summary>
    /// Says that a post is drilled, and the rope fits, just like the one that this person drilled before it. The next one like it, if it waits,
    /// comes to the bench with the same tap. The outcome is its address; empty where none waits.
    /// </summary>
    public Task<BenchAnswer> FitsLikeLastAsync((string Job, string Post) mark, string who, string requestKey, CancellationToken cancel = default) => Database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () =>
            {
                if (Find(session, mark) is not { } work)
                    return BenchAnswer.Refused(Unknown(mark));
                if (NotClaimedBy(work, who) is { } why)
                    return BenchAnswer.Refused(why);
                if (StoredParts.Post(session, work.PostId).Work is not { } post || LastBy(session, who)?.IsDrilledLike(post) != true)
                    return BenchAnswer.Refused(BenchReplies.Of("GoThroughFirst"));
                TicketStates.FinishAlike.Do(session, work.Id, who, Finished, new { work.All }, details: new { holes = work.All - work.Steps });
                return BenchAnswer.Given(ClaimLike(session, work, post, who));
            }),
        cancel);

    /// <summary>Says that a post was spoiled: another is ordered, the damage is counted, and the ticket starts again once the new post is here.</summary>
    public Task<BenchAnswer> DamageAsync((string Job, string Post) mark, string reason, string who, string requestKey, CancellationToken cancel = default) => WithReasonAsync(
        mark,
        reason,
        requestKey,
        (session, work) =>
        {
            var move = work.State == TicketStates.Drilled ? TicketStates.DamageLater : TicketStates.DamageAtTheBench;
            if (move.Try(session, work.Id, who, Fresh + Claims.Free, reason: reason) is { } cannot)
                return cannot;
            session.Execute(
                "INSERT INTO damages (at, who, ticket_id, steps, reason) VALUES (@Now, @who, @Id, @Steps, @reason)",
                new { session.Now, who, work.Id, work.Steps, reason });
            return null;
        },
        cancel);

    /// <summary>
    /// Takes back that a post was spoiled, as long as the new one is not here: it is at this person's bench again with what was ticked, and no
    /// damage is counted.
    /// </summary>
    public Task<BenchAnswer> UndoDamageAsync((string Job, string Post) mark, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        mark,
        requestKey,
        (session, work) =>
        {
            if (Claims.HasAnother(session, work.Id, who) is { } busy)
                return busy;
            var (damage, ticked) = session.FirstOrDefault<(long, long)>("SELECT id, steps FROM damages WHERE ticket_id = @Id ORDER BY id DESC LIMIT 1", new { work.Id });
            if (TicketStates.UndoDamage.Try(session, work.Id, who, Claims.Take + ", steps = @ticked", new { ticked }) is { } cannot)
                return cannot;
            session.Execute("DELETE FROM damages WHERE id = @damage", new { damage });
            return null;
        },
        cancel);

    /// <summary>Says that the post that was ordered again is here, so that its ticket waits.</summary>
    public Task<BenchAnswer> NewPostAsync((string Job, string Post) mark, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(mark, requestKey, (session, work) => TicketStates.NewPost.Try(session, work.Id, who), cancel);

    /// <summary>A job and a post as one address, each part escaped.</summary>
    public static string AddressOf(string job, string post) => $"{Uri.EscapeDataString(job)}/{Uri.EscapeDataString(post)}";

    private protected override DrillWork? Find(ShopSession session, (string Job, string Post) mark) => DrillWork.Find(session, mark.Job, mark.Post);

    private protected override DrillWork Of(ShopSession session, long id) => DrillWork.Of(session, id);

    private protected override IReadOnlyList<DrillWork> AtTheBench(ShopSession session) => DrillWork.AtTheBench(session);

    private protected override IReadOnlyList<DrillWork> Latest(ShopSession session, int most) => DrillWork.Latest(session, most);

    private protected override string AddressOf(DrillWork work) => AddressOf(work.Job, work.Post);

    private protected override Sentence Unknown((string Job, string Post) mark) => BenchReplies.Of("NoSuchPost", mark.Job, mark.Post);

    private protected override Sentence AtTheBenchOf(DrillWork work, string other) => BenchReplies.Of("PostAtTheBenchOf", work.Post, other);

    private protected override Sentence TakeItFirst(DrillWork work) => work.State == TicketStates.Drilled
        ? BenchReplies.Of("PostDrilledAlready", work.Post, work.DrilledBy)
        : BenchReplies.Of("TakePostFirst", work.Post, BenchReplies.State(work.State));

    /// <summary>A post like the one that this person drilled last where it is due as early, else the first of the queue.</summary>
    private protected override BenchAnswer ClaimNext(ShopSession session, string who)
    {
        if (Pick(session, who) is not { } next)
            return BenchAnswer.Refused(BenchReplies.Of("NoPostWaits"));
        var why = TicketStates.ClaimDrill.Try(session, next, who, Claims.Take);
        return BenchAnswer.Of(why, AddressOf(DrillWork.Of(session, next)));
    }

    private protected override Sentence? Claim(ShopSession session, DrillWork work, string who) =>
        session.Value<bool>($"SELECT EXISTS (SELECT 1 FROM jobs WHERE number = @Job AND {ReleasedJobs.Condition})", new { work.Job })
            ? TicketStates.ClaimDrill.Try(session, work.Id, who, Claims.Take)
            : BenchReplies.Of("JobNotReleased", work.Job);

    private protected override Sentence? Undo(ShopSession session, DrillWork work, TimeSpan shift, string reason, string who) =>
        session.Now - work.DrilledAt > shift
            ? BenchReplies.Of("DrilledTooLongAgo", (int)shift.TotalHours)
            : TicketStates.UndoDrill.Try(session, work.Id, who, Fresh, reason: reason);

    private static IReadOnlyList<DrillStep> StepsOf(ShopSession session, DrillWork work) => StoredParts.Post(session, work.PostId).Work?.Steps() ?? [];

    private static void Untick(ShopSession session, DrillWork work, int left, string who)
    {
        session.Execute("UPDATE drill_tickets SET steps = @left, touched_at = @Now WHERE id = @Id", new { left, session.Now, work.Id });
        session.Record("drill ticket", work.Id, who, HistoryCodes.DrillStepUndone, details: new { drilledBefore = work.Steps, drilled = left, drillings = work.All });
    }

    private static PostWork? LastBy(ShopSession session, string who)
    {
        var since = session.Now - BenchSettingsShelf.Read(session).Shift;
        return session.FirstOrDefault<long?>(
            $"""
            SELECT post_id FROM drill_tickets
            WHERE drilled_by = @who AND drilled_at >= @since AND state = '{TicketStates.Drilled}'
              AND NOT EXISTS (SELECT 1 FROM damages WHERE damages.who = @who AND damages.at >= drill_tickets.drilled_at)
            ORDER BY drilled_at DESC, id DESC LIMIT 1
            """,
            new { who, since }) is { } last ? StoredParts.Post(session, last).Work : null;
    }

    /// <summary>Claims the next post of the queue that is drilled just like one, and gives its address, or nothing.</summary>
    private static string ClaimLike(ShopSession session, DrillWork work, PostWork post, string who)
    {
        if (First(session, " AND drill_tickets.likeness = @Likeness", new { work.Likeness }) is not { } first)
            return "";
        var next = DrillWork.Of(session, first.Id);
        return StoredParts.Post(session, next.PostId).Work is { } like && post.IsDrilledLike(like) && TicketStates.ClaimDrill.Try(session, next.Id, who, Claims.Take) is null
            ? AddressOf(next.Job, next.Post)
            : "";
    }

    private static long? Pick(ShopSession session, string who)
    {
        if (First(session) is not { } first)
            return null;
        var set = session.FirstOrDefault<string>(
            "SELECT likeness FROM drill_tickets WHERE drilled_by = @who AND drilled_at IS NOT NULL ORDER BY drilled_at DESC LIMIT 1", new { who });
        return set is not null && First(session, " AND drill_tickets.queue_due = @Due AND drill_tickets.likeness = @set", new { first.Due, set }) is { } like
            ? like.Id
            : first.Id;
    }

    /// <summary>The first free ticket of the queue, held.</summary>
    private static (long Id, string Due)? First(ShopSession session, string more = "", object? values = null)
    {
        var (join, hold) = (session.Dialect.JoinAsWritten, session.Dialect.LockFirstAvailable("drill_tickets"));
        return session.All<(long, string)>(
            $"""
            SELECT drill_tickets.id, queue_due FROM drill_tickets {join} posts ON posts.id = post_id {join} jobs ON jobs.id = job_id
            WHERE drill_tickets.state = '{TicketStates.Waiting}' AND {ReleasedJobs.Condition}{more}
            ORDER BY drill_tickets.queue_due, drill_tickets.likeness, drill_tickets.id{hold}
            """,
            values) is [var first, ..] ? first : null;
    }
}
