using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Jobs;

/// <summary>A line of the history, as programs read it.</summary>
/// <param name="Id">Its number: later lines have higher ones.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Who">Who did it.</param>
/// <param name="Subject">What changed: job, cut ticket, drill ticket, coil, cut plan, piece or site report.</param>
/// <param name="Job">The number of the job it belongs to, or empty.</param>
/// <param name="Mark">The run of a cut ticket, a piece or a site report, the post of a drill ticket, the mark of a coil; empty elsewhere.</param>
/// <param name="Code">What was done, as a code that stays the same.</param>
/// <param name="What">What was done, in words.</param>
/// <param name="Before">The state before, in words; empty where there was none.</param>
/// <param name="After">The state after, in words.</param>
/// <param name="Reason">Why, where there was a reason.</param>
public sealed record Change(
    long Id,
    DateTimeOffset At,
    string Who,
    string Subject,
    string Job,
    string Mark,
    string Code,
    string What,
    string Before,
    string After,
    string Reason);

/// <summary>A job as the news tells of it.</summary>
/// <param name="Cursor">The newest line of the job's own history.</param>
/// <param name="Number">The job's number.</param>
/// <param name="Customer">Who ordered it.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="TakenInAt">When it was taken in, UTC.</param>
/// <param name="State">received, released or cancelled.</param>
/// <param name="Pieces">Pieces of rope.</param>
/// <param name="PiecesLeft">Pieces not cut yet.</param>
/// <param name="Posts">Posts to drill.</param>
/// <param name="PostsLeft">Posts not drilled yet.</param>
public sealed record JobNewsLine(
    long Cursor, string Number, string Customer, DateOnly? Due, DateTimeOffset TakenInAt, string State, long Pieces, long PiecesLeft, long Posts, long PostsLeft)
{
    /// <summary>Pieces cut so far.</summary>
    public long Cut => Pieces - PiecesLeft;

    /// <summary>Posts drilled so far.</summary>
    public long Drilled => Posts - PostsLeft;
}

/// <summary>A drill ticket as it stands.</summary>
/// <param name="Post">The post's mark.</param>
/// <param name="State">waiting, at the bench, drilled, re-ordered, cancelled or surplus.</param>
public sealed record DrillState(string Post, string State);

/// <summary>What changed since a cursor. The history is written in the order of its ids, so a reader that keeps the last one misses nothing.</summary>
public sealed class JobFeed(ShopDatabase database)
{
    private static readonly string Jobs =
        $"""
        SELECT max(history.id) AS cursor, number, customer, due, taken_in_at,
          {JobCounts.State} AS state,
          {JobCounts.Of("jobs")}
        FROM history JOIN jobs ON jobs.id = subject_id AND subject = 'job'
        """;

    /// <summary>Jobs taken in or changed since a cursor, the oldest change first.</summary>
    public IReadOnlyList<JobNewsLine> JobsSince(long since, int most) => database.Read(session => session.All<JobNewsLine>(
        $"{Jobs} WHERE history.id > @since GROUP BY jobs.id ORDER BY cursor LIMIT @most", new { since, most }));

    /// <summary>One job, or null.</summary>
    public JobNewsLine? Job(string number) => database.Read(session => session.FirstOrDefault<JobNewsLine>(
        $"{Jobs} WHERE number = @number GROUP BY jobs.id", new { number }));

    /// <summary>Lines of the history since a cursor, in order; people, tablets and keys are nobody's business but the owner's.</summary>
    public IReadOnlyList<Change> ChangesSince(long since, int most) => database.Read(session => session.All<ChangeRow>(
        $"""
        SELECT history.id, subject,
          coalesce(CASE subject
            WHEN 'job' THEN (SELECT number FROM jobs WHERE id = subject_id)
            WHEN 'cut ticket' THEN (SELECT number FROM cut_tickets JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id WHERE cut_tickets.id = subject_id)
            WHEN 'drill ticket' THEN (SELECT number FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id WHERE drill_tickets.id = subject_id)
            WHEN 'piece' THEN (SELECT number FROM pieces JOIN jobs ON jobs.id = job_id WHERE pieces.id = subject_id)
            WHEN 'post' THEN (SELECT number FROM posts JOIN jobs ON jobs.id = job_id WHERE posts.id = subject_id)
            WHEN 'site report' THEN (SELECT number FROM site_reports JOIN pieces ON pieces.id = piece_id JOIN jobs ON jobs.id = job_id WHERE site_reports.id = subject_id)
          END, '') AS job,
          coalesce(CASE subject
            WHEN 'cut ticket' THEN (SELECT run FROM cut_tickets JOIN pieces ON pieces.id = piece_id WHERE cut_tickets.id = subject_id)
            WHEN 'piece' THEN (SELECT run FROM pieces WHERE id = subject_id)
            WHEN 'site report' THEN (SELECT run FROM site_reports JOIN pieces ON pieces.id = piece_id WHERE site_reports.id = subject_id)
            WHEN 'drill ticket' THEN (SELECT mark FROM drill_tickets JOIN posts ON posts.id = post_id WHERE drill_tickets.id = subject_id)
            WHEN 'post' THEN (SELECT mark FROM post_parts WHERE post_id = subject_id)
            WHEN 'coil' THEN (SELECT mark FROM coils WHERE id = subject_id)
          END, '') AS mark,
          {HistoryEntry.Columns}
        FROM history JOIN history_subjects ON history_subjects.name = subject AND told = 1
        WHERE history.id > @since
        ORDER BY history.id
        LIMIT @most
        """,
        new { since, most }).Select(row => row.ToChange()).ToList());

    /// <summary>The drill tickets of a job, in the order of its posts; what a change has dropped is not among them.</summary>
    public IReadOnlyList<DrillState> DrillTickets(string number) => database.Read(session => session.All<DrillState>(
        """
        SELECT posts.mark AS post, state
        FROM drill_tickets JOIN posts ON posts.id = post_id JOIN jobs ON jobs.id = job_id
        WHERE number = @number AND posts.dropped_at IS NULL ORDER BY posts.position
        """,
        new { number }));

    private sealed record ChangeRow(
        long Id,
        string Subject,
        string Job,
        string Mark,
        DateTimeOffset At,
        string Who,
        string From,
        string Code,
        string Before,
        string After,
        Length? BeforeLength,
        Length? AfterLength,
        string Details,
        string Cause,
        string Reason) : HistoryEntry(At, Who, From, Code, Before, After, BeforeLength, AfterLength, Details, Cause, Reason)
    {
        public Change ToChange()
        {
            var words = InWords();
            return new(Id, At, Who, Subject, Job, Mark, Code, words.What, words.Before, words.After, words.Reason);
        }
    }
}
