using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>When the rope of a job is to be set again.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Customer">Whose it is.</param>
/// <param name="Due">The day.</param>
/// <param name="CountedFrom"><see cref="ReSettings.Packed"/>, <see cref="ReSettings.Installed"/> or <see cref="ReSettings.Chosen"/>.</param>
/// <param name="DoneAt">When it was done, UTC, or null.</param>
public sealed record ReSetting(string Job, string Customer, DateOnly Due, string CountedFrom, DateTimeOffset? DoneAt);

/// <summary>
/// Reminders that new rope has bedded in and is to be set again: one for each job, counted from the day its parcel was closed, then from the
/// day its last piece was up, until somebody chooses a day.
/// </summary>
public sealed class ReSettings(ShopDatabase database)
{
    /// <summary>Counted from the day the parcel was closed.</summary>
    public const string Packed = "packed";

    /// <summary>Counted from the day the last piece was up.</summary>
    public const string Installed = "installed";

    /// <summary>A day that somebody chose.</summary>
    public const string Chosen = "chosen";

    private const string Columns = "SELECT number AS job, customer, re_settings.due, counted_from, done_at FROM re_settings JOIN jobs ON jobs.id = job_id";

    /// <summary>A job's reminder, done or not; null where it has none.</summary>
    public ReSetting? Find(string job) => database.Read(session => session.FirstOrDefault<ReSetting>(Columns + " WHERE number = @job", new { job }));

    /// <summary>Reminders whose day has come and that are not done, the earliest first. Cancelled jobs have none.</summary>
    public IReadOnlyList<ReSetting> Due(int most = 100) => database.Read(session => session.All<ReSetting>(
        Columns + " WHERE done_at IS NULL AND cancelled_at IS NULL AND re_settings.due <= @Today ORDER BY re_settings.due, number LIMIT @most",
        new { session.Today, most }));

    /// <summary>Chooses the day, from text as typed: today or later. It also takes up again what was done.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="typed">The day, such as 2027-05-01.</param>
    /// <param name="who">Who chooses it.</param>
    /// <param name="requestKey">Sent twice it counts once.</param>
    /// <param name="cancel">Stops.</param>
    public Task<BenchAnswer> ChooseAsync(string job, string typed, string who, string requestKey, CancellationToken cancel = default) => database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () =>
            {
                if (session.FirstOrDefault<long?>("SELECT id FROM jobs WHERE number = @job", new { job }) is not { } id)
                    return BenchAnswer.Refused(BenchReplies.Of("NoSuchJob", job));
                if (IsoDate.Find(typed.Trim()) is not { } day || day < session.Today)
                    return BenchAnswer.Refused(BenchReplies.Of("NoReSettingDay", typed, IsoDate.Text(session.Today.AddMonths(1))));
                Put(session, id, day, Chosen, who);
                return BenchAnswer.Of(null, job);
            }),
        cancel);

    /// <summary>The rope was set again.</summary>
    /// <param name="job">The job's number.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="requestKey">Sent twice it counts once.</param>
    /// <param name="cancel">Stops.</param>
    public Task<BenchAnswer> DoneAsync(string job, string who, string requestKey, CancellationToken cancel = default) => database.WriteAsync(
        session => BenchAnswer.Once(
            session,
            requestKey,
            () =>
            {
                if (session.FirstOrDefault<long?>("SELECT job_id FROM re_settings JOIN jobs ON jobs.id = job_id WHERE number = @job", new { job }) is not { } id)
                    return BenchAnswer.Refused(BenchReplies.Of("NoReSetting", job));
                if (session.Execute("UPDATE re_settings SET done_at = @Now WHERE job_id = @id AND done_at IS NULL", new { session.Now, id }) == 1)
                    session.Record("job", id, who, HistoryCodes.ReSettingDone);
                return BenchAnswer.Of(null, job);
            }),
        cancel);

    /// <summary>Counts a job's reminder from today, where the shop wants reminders, nobody chose a day and it is not done.</summary>
    internal static void CountFrom(ShopSession session, long jobId, string from, string who)
    {
        var months = SendingSettingsShelf.Read(session).ReSetMonths;
        var before = session.FirstOrDefault<Row>("SELECT counted_from, done_at FROM re_settings WHERE job_id = @jobId", new { jobId });
        if (months == 0 || before is { CountedFrom: Chosen } or { DoneAt: not null } || (before is { CountedFrom: Installed } && from == Packed))
            return;
        Put(session, jobId, session.Today.AddMonths(months), from, who);
    }

    private static void Put(ShopSession session, long jobId, DateOnly due, string from, string who)
    {
        session.Execute(
            """
            INSERT INTO re_settings (job_id, due, counted_from) VALUES (@jobId, @due, @from)
            ON CONFLICT (job_id) DO UPDATE SET due = excluded.due, counted_from = excluded.counted_from, done_at = NULL
            """,
            new { jobId, due, from });
        session.Record("job", jobId, who, HistoryCodes.ReSettingDue, details: new { due.Year, due.Month, due.Day });
    }

    private sealed record Row(string CountedFrom, DateTimeOffset? DoneAt);
}
