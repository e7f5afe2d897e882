using System.Text.Json;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Jobs;

/// <summary>Which jobs a list shows.</summary>
public enum JobsShown
{
    /// <summary>Not cancelled, and work is left or it waits for release.</summary>
    Open,

    /// <summary>Open and past their day.</summary>
    Late,

    /// <summary>Received, not yet released.</summary>
    Received,

    /// <summary>Every job.</summary>
    All,
}

/// <summary>What is looked for in the list of jobs.</summary>
/// <param name="Shown">Which jobs.</param>
/// <param name="Text">Part of the number or the customer; empty for any.</param>
/// <param name="DueFrom">The first day they are due, or null.</param>
/// <param name="DueTo">The last day they are due, or null.</param>
/// <param name="AfterKey">The key of the last job seen, to go on after it; null to start.</param>
public sealed record JobsWanted(JobsShown Shown, string Text = "", DateOnly? DueFrom = null, DateOnly? DueTo = null, string? AfterKey = null);

/// <summary>A job found.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Customer">Who ordered it.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="State">received, released or cancelled.</param>
/// <param name="Pieces">Pieces of rope.</param>
/// <param name="PiecesLeft">Pieces not cut yet.</param>
/// <param name="Posts">Posts to drill.</param>
/// <param name="PostsLeft">Posts not drilled yet.</param>
public sealed record JobFound(string Number, string Customer, DateOnly? Due, string State, long Pieces, long PiecesLeft, long Posts, long PostsLeft)
{
    /// <summary>Pieces cut so far.</summary>
    public long Cut => Pieces - PiecesLeft;

    /// <summary>Posts drilled so far.</summary>
    public long Drilled => Posts - PostsLeft;

    /// <summary>True where its day is past and work is left.</summary>
    public bool IsLate { get; init; }
}

/// <summary>A page of the list of jobs.</summary>
/// <param name="Jobs">The jobs, the earliest due first and those without a day last.</param>
/// <param name="NextKey">The key to go on after, or null at the end.</param>
public sealed record JobsPage(IReadOnlyList<JobFound> Jobs, string? NextKey);

/// <summary>Searches the stored jobs, a page at a time. A page costs the same wherever it lies.</summary>
public sealed class JobSearch(ShopDatabase database)
{
    private const int PageSize = 40;
    private const string NoDay = "9999-99-99";
    private const int KeyDayLength = 10;
    private const int ShortestLookedUp = 3;
    private const int MostLookedUp = 1000;

    /// <summary>Hits that tell how thick they stand, and one job in how many has to be a hit for the list to meet a page of them soon.</summary>
    private const int FirstHits = 200;
    private const int Thick = 50;

    /// <summary>Written as the index jobs_open has it, which holds these jobs alone.</summary>
    private const string IsOpen = "cancelled_at IS NULL AND (released_at IS NULL OR work_left > 0)";

    /// <summary>A page of jobs.</summary>
    public JobsPage Find(JobsWanted wanted)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        return database.Read(session => Find(session, wanted));
    }

    /// <summary>How many of all jobs, also done and cancelled ones, have the text and the days that are looked for; no more than so many are counted.</summary>
    public long CountAll(JobsWanted wanted, int most)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        return database.Read(session => CountAll(session, wanted with { Shown = JobsShown.All, AfterKey = null }, most));
    }

    private static long CountAll(ShopSession session, JobsWanted wanted, int most)
    {
        var text = wanted.Text.Trim();
        var few = FewWith(session, text);
        if (few is { Count: 0 })
            return 0;
        var conditions = new List<string> { "coalesce(due, '9999-99-99') >= @from AND coalesce(due, '9999-99-99') <= @to" };
        if (few is not null)
            conditions.Add($"jobs.id IN ({session.Dialect.Ids("@few")})");
        else if (text.Length > 0)
            conditions.Add(session.Dialect.JobHasText);
        return session.Value<long>(
            $"""
            SELECT count(*) FROM (
              SELECT 1 FROM {(few is not null ? "jobs" : session.Dialect.ReadBy("jobs", "jobs_listed"))} WHERE {string.Join(" AND ", conditions)} LIMIT @most) AS found
            """,
            new
            {
                from = wanted.DueFrom is { } from ? IsoDate.Text(from) : "",
                to = wanted.DueTo is { } to ? IsoDate.Text(to) : NoDay,
                text,
                few = JsonSerializer.Serialize(few),
                most,
            });
    }

    private static JobsPage Find(ShopSession session, JobsWanted wanted)
    {
        var conditions = new List<string> { "(coalesce(due, '9999-99-99'), number) > (@day, @number)" };
        var (day, number) = Key(wanted.AfterKey);
        if (wanted.DueFrom is { } from && string.CompareOrdinal(IsoDate.Text(from), day) > 0)
            (day, number) = (IsoDate.Text(from), "");
        if (wanted.DueTo is not null)
            conditions.Add("coalesce(due, '9999-99-99') <= @DueTo");
        var text = wanted.Text.Trim();
        var few = FewWith(session, text);
        if (few is { Count: 0 })
            return new([], NextKey: null);
        if (few is not null)
            conditions.Add($"jobs.id IN ({session.Dialect.Ids("@few")})");
        else if (text.Length > 0)
            conditions.Add(session.Dialect.JobHasText);
        if (wanted.Shown != JobsShown.All)
            conditions.Add(IsOpen);
        if (wanted.Shown == JobsShown.Late)
            conditions.Add("coalesce(due, '9999-99-99') < @Today");
        if (wanted.Shown == JobsShown.Received)
            conditions.Add("released_at IS NULL");

        var rows = session.All<JobFound>(
            $"""
            SELECT number, customer, due, state,
              {JobCounts.Of("page")}
            FROM (
              SELECT id, number, customer, due, coalesce(due, '9999-99-99') AS day, work_left, cancelled_at,
                {JobCounts.State} AS state
              FROM {(few is not null ? "jobs" : session.Dialect.ReadBy("jobs", wanted.Shown == JobsShown.All ? "jobs_listed" : "jobs_open"))}
              WHERE {string.Join(" AND ", conditions)}
              ORDER BY coalesce(due, '9999-99-99'), number
              LIMIT @most) AS page
            ORDER BY day, number
            """,
            new { day, number, wanted.DueTo, text, few = JsonSerializer.Serialize(few), session.Today, most = PageSize + 1 });
        var jobs = rows.Take(PageSize)
            .Select(job => job with { IsLate = job.State != "cancelled" && job.Due < session.Today && job.PiecesLeft + job.PostsLeft > 0 }).ToList();
        return new(jobs, rows.Count > PageSize ? (jobs[^1].Due is { } last ? IsoDate.Text(last) : NoDay) + jobs[^1].Number : null);
    }

    /// <summary>
    /// The ids of the jobs that have the text, where they are few: they are looked up and sorted. Null where they are many, or the text is
    /// too short to be looked up: they are met soon enough on the way through the list.
    /// </summary>
    private static IReadOnlyList<long>? FewWith(ShopSession session, string text)
    {
        if (text.Length < ShortestLookedUp)
            return null;
        var first = With(session, text, FirstHits);
        if (first.Count < FirstHits)
            return first;
        if (first.Max() < FirstHits * Thick)
            return null;
        var all = With(session, text, MostLookedUp + 1);
        return all.Count <= MostLookedUp ? all : null;
    }

    private static IReadOnlyList<long> With(ShopSession session, string text, int most) =>
        session.All<long>($"{session.Dialect.JobsWithText} LIMIT @most", new { sought = session.Dialect.Sought(text), most });

    private static (string Day, string Number) Key(string? key) =>
        key is { Length: >= KeyDayLength } ? (key[..KeyDayLength], key[KeyDayLength..]) : ("", "");
}
