using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>
/// The drill bench. One post is given to one driller, posts bored alike one after the other; each drilling and each screw hole is a
/// tap; the post is done when the rope was passed through every bore. A spoiled post is ordered again and its ticket starts anew.
/// </summary>
public sealed class DrillBench(ShopDatabase database)
{
    private const string Fresh = ", steps = 0, drilled_by = NULL, drilled_at = NULL";

    internal static Claims Claims { get; } = new(TicketStates.DrillTickets, TicketStates.HandBackDrill, "1 = 1", "");

    /// <summary>The ticket of a post, or null; where a change took the post out, the last one that its mark had.</summary>
    public DrillWork? Find(string job, string post) => database.Read(session => DrillWork.Find(session, job, post));

    /// <summary>All tickets that a post's mark ever had, the one that is wanted first, then the newest.</summary>
    public IReadOnlyList<DrillWork> AllOf(string job, string post) => database.Read(session => DrillWork.OfMark(session, job, post));

    /// <summary>What a ticket says is done at its post.</summary>
    /// <exception cref="DamagedPartException">It cannot be read.</exception>
    public StoredPost PostOf(DrillWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return database.Read(session => StoredParts.Post(session, work.PostId));
    }

    /// <summary>The ticket that someone has at the bench, or null.</summary>
    public DrillWork? Of(string who) => database.Read(session => Claims.Of(session, who) is { } id ? DrillWork.Of(session, id) : null);

    /// <summary>What is at the benches now.</summary>
    public IReadOnlyList<DrillWork> AtTheBench() => database.Read(DrillWork.AtTheBench);

    /// <summary>Posts that are ordered again.</summary>
    public IReadOnlyList<DrillWork> ReOrdered() => database.Read(DrillWork.ReOrdered);

    /// <summary>The posts drilled last, the newest first.</summary>
    public IReadOnlyList<DrillWork> Latest(int most = 10) => database.Read(session => DrillWork.Latest(session, most));

    /// <summary>How many posts wait.</summary>
    public long Waiting() => database.Read(session => session.Value<long>("SELECT count(*) FROM drill_tickets WHERE state = 'waiting'"));

    /// <summary>The posts to drill with the numbers of their jobs, in the order in which they will be given out.</summary>
    /// <exception cref="DamagedPartException">One of them cannot be read.</exception>
    public IReadOnlyList<(string Job, PostWork Post)> ToDrill(int most = 500) => database.Read(session => DrillWork.Waiting(session, most)
        .Select(waiting => (waiting.Job, StoredParts.Post(session, waiting.PostId).Work!)).ToList());

    /// <summary>
    /// Gives the next post: the one that this person has already, else one like the post they drilled last where it is due
    /// as early, else the first of the queue. The outcome is JOB/MARK, each escaped for an address.
    /// </summary>
    public Task<BenchAnswer> NextAsync(string who, string requestKey, CancellationToken cancel = default) => Claims.NextAsync(
        database,
        who,
        requestKey,
        session =>
        {
            if (Claims.Of(session, who) is { } mine)
                return Given(DrillWork.Of(session, mine));
            if (Pick(session, who) is not { } next)
                return BenchAnswer.Refused($"No post waits to be drilled.");
            return TicketStates.ClaimDrill.Try(session, next, who, Claims.Take) is { } why
                ? BenchAnswer.Refused(why)
                : Given(DrillWork.Of(session, next));
        },
        cancel);

    /// <summary>Gives a certain post that waits.</summary>
    public Task<BenchAnswer> TakeAsync(string job, string post, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        post,
        requestKey,
        (session, work) =>
        {
            Claims.HandBackForgotten(session);
            if (Claims.HasAnother(session, work.Id, who) is { } busy)
                return busy;
            if (!session.Value<bool>($"SELECT EXISTS (SELECT 1 FROM jobs WHERE number = @job AND {ReleasedJobs.Condition})", new { job }))
                return $"Job {job} is not released to the benches.";
            return TicketStates.ClaimDrill.Try(session, work.Id, who, Claims.Take);
        },
        cancel);

    /// <summary>
    /// Ticks a drilling by its number on the ticket, or a screw hole, which are numbered on after the drillings. They are ticked in
    /// their order, by whoever has the ticket.
    /// </summary>
    public Task<BenchAnswer> TickAsync(string job, string post, int drilling, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        post,
        requestKey,
        (session, work) =>
        {
            if (IsNotHis(work, who) is { } why)
                return why;
            if (work.Next != drilling)
                return $"Drilling {drilling} cannot be ticked now: {work.Steps} of {work.All} are done.";
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

    /// <summary>Says that the actual rope went through every bore, which finishes the post. Screw holes that were not ticked are said to be in with it.</summary>
    public Task<BenchAnswer> FitsAsync(string job, string post, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        post,
        requestKey,
        (session, work) =>
        {
            if (IsNotHis(work, who) is { } why)
                return why;
            return work.IsFitDue
                ? TicketStates.FinishDrill.Try(
                    session,
                    work.Id,
                    who,
                    Claims.Free + ", steps = @All, drilled_by = @who, drilled_at = @now",
                    new { work.All },
                    details: new { screwHoles = work.All - work.Steps })
                : $"Not all is drilled yet: {work.Steps} of {work.Drillings} are done.";
        },
        cancel);

    /// <summary>Says that a post was spoiled: another is ordered, the damage is counted, and the ticket starts anew once the post is here.</summary>
    public Task<BenchAnswer> DamageAsync(string job, string post, string reason, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        post,
        requestKey,
        (session, work) =>
        {
            if (BenchAnswer.NeedsReason(reason) is { } why)
                return why;
            var move = work.State == TicketStates.Drilled ? TicketStates.DamageLater : TicketStates.DamageAtTheBench;
            if (move.Try(session, work.Id, who, Fresh + Claims.Free, reason: reason) is { } cannot)
                return cannot;
            session.Execute(
                "INSERT INTO damages (at, who, ticket_id, steps, reason) VALUES (@Now, @who, @Id, @Steps, @reason)",
                new { session.Now, who, work.Id, work.Steps, reason });
            return null;
        },
        cancel);

    /// <summary>Says that the post that was ordered again is here, so that its ticket waits.</summary>
    public Task<BenchAnswer> NewPostAsync(string job, string post, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(job, post, requestKey, (session, work) => TicketStates.NewPost.Try(session, work.Id, who), cancel);

    /// <summary>Hands a ticket back to the queue; the drillings that are done stay ticked.</summary>
    public Task<BenchAnswer> HandBackAsync(string job, string post, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(job, post, requestKey, (session, work) => Claims.HandBack(session, work.Id, who), cancel);

    /// <summary>Takes a ticket over from whoever has it, as far as it is.</summary>
    public Task<BenchAnswer> TakeOverAsync(string job, string post, string who, string requestKey, CancellationToken cancel = default) =>
        ForAsync(job, post, requestKey, (session, work) => Claims.TakeOver(session, work.Id, who), cancel);

    /// <summary>Undoes a post that was finished by mistake: its ticket waits with nothing ticked. Within the shift, with a reason.</summary>
    public Task<BenchAnswer> UndoAsync(string job, string post, string reason, string who, string requestKey, CancellationToken cancel = default) => ForAsync(
        job,
        post,
        requestKey,
        (session, work) =>
        {
            if (BenchAnswer.NeedsReason(reason) is { } why)
                return why;
            var shift = BenchSettingsShelf.Read(session).Shift;
            if (session.Now - work.DrilledAt > shift)
                return $"The post was drilled more than {(int)shift.TotalHours} hours ago.";
            return TicketStates.UndoDrill.Try(session, work.Id, who, Fresh, reason: reason);
        },
        cancel);

    /// <summary>A job and a post as one address, each part escaped.</summary>
    public static string AddressOf(string job, string post) => $"{Uri.EscapeDataString(job)}/{Uri.EscapeDataString(post)}";

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
        var (join, hold) = (session.Dialect.JoinAsWritten, session.Dialect.HoldFirstFree("drill_tickets"));
        return session.All<(long, string)>(
            $"""
            SELECT drill_tickets.id, queue_due FROM drill_tickets {join} posts ON posts.id = post_id {join} jobs ON jobs.id = job_id
            WHERE drill_tickets.state = 'waiting' AND {ReleasedJobs.Condition}{more}
            ORDER BY drill_tickets.queue_due, drill_tickets.likeness, drill_tickets.id{hold}
            """,
            values) is [var first, ..] ? first : null;
    }

    private static BenchAnswer Given(DrillWork work) => BenchAnswer.Given(AddressOf(work.Job, work.Post));

    private static FormattableString? IsNotHis(DrillWork work, string who) => work.State == TicketStates.AtTheBench && work.ClaimedBy == who
        ? null
        : work.ClaimedBy is { } other
            ? $"The post {work.Post} is at the bench of {other}."
            : (FormattableString)$"The post {work.Post} is {new StateWord(work.State)}: take it to the bench first.";

    private Task<BenchAnswer> ForAsync(
        string job, string post, string requestKey, Func<ShopSession, DrillWork, FormattableString?> work, CancellationToken cancel) => database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () => DrillWork.Find(session, job, post) is { } found
                ? work(session, found) is { } why ? BenchAnswer.Refused(why) : Given(found)
                : BenchAnswer.Refused($"Job {job} has no post {post} to drill.")),
        cancel);
}
