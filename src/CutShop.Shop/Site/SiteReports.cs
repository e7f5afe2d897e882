using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>Reports from site: installers send them with nothing but a label's code, the desk has pieces cut again and closes them.</summary>
public sealed class SiteReports(ShopDatabase database)
{
    /// <summary>The most open reports of one piece: nobody who holds a label can flood the desk.</summary>
    public const int MostOpenOfAPiece = 10;

    /// <summary>SQL: the words of the kinds of a piece's open reports, with blanks between.</summary>
    internal const string OpenKinds = "coalesce((SELECT string_agg(kind, ' ') FROM site_reports WHERE site_reports.piece_id = pieces.id AND closed_at IS NULL), '')";

    private const string Columns =
        """
        SELECT site_reports.id, jobs.number AS job, pieces.run, pieces.code, kind, note, photo, tapped_at, came_at, cut_tickets.state AS ticket,
          again.code AS re_cut, closed_at, closed_by, closing_note
        FROM site_reports JOIN pieces ON pieces.id = site_reports.piece_id JOIN jobs ON jobs.id = pieces.job_id
        JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
        LEFT JOIN pieces AS again ON again.id = re_cut_id
        """;

    /// <summary>Open reports, the oldest first.</summary>
    public IReadOnlyList<SiteReport> Open(int most = 200) => database.Read(session => session.All<SiteReport>(
        Columns + " WHERE closed_at IS NULL ORDER BY site_reports.id LIMIT @most", new { most }));

    /// <summary>Closed reports, the newest first.</summary>
    public IReadOnlyList<SiteReport> Closed(int most = 50) => database.Read(session => session.All<SiteReport>(
        Columns + " WHERE closed_at IS NOT NULL ORDER BY site_reports.id DESC LIMIT @most", new { most }));

    /// <summary>Reports of a job's pieces, the newest first.</summary>
    public IReadOnlyList<SiteReport> OfJob(string number) => database.Read(session => session.All<SiteReport>(
        Columns + " WHERE jobs.number = @number ORDER BY site_reports.id DESC", new { number }));

    /// <summary>A report, or null.</summary>
    public SiteReport? Find(long id) => database.Read(session => Find(session, id));

    /// <summary>Pieces that are marked as installed though the shop has not cut them, by job and run: for the desk to ask about.</summary>
    public IReadOnlyList<HungUncut> HungUncut() => database.Read(session => session.All<HungUncut>(
        $"""
        SELECT number AS job, run, code, tapped_at FROM installations JOIN pieces ON pieces.id = installations.piece_id JOIN jobs ON jobs.id = job_id
        JOIN cut_tickets ON cut_tickets.piece_id = pieces.id
        WHERE installations.state = '{InstalledWords.Of(InstalledState.Installed)}' AND cut_tickets.state IN ({TicketStates.ToDo}) AND dropped_at IS NULL
        ORDER BY number, position
        """));

    /// <summary>How many reports are open.</summary>
    public long OpenCount() => database.Read(session => session.Value<long>("SELECT count(*) FROM site_reports WHERE closed_at IS NULL"));

    /// <summary>True where a report has this photo.</summary>
    public bool HasPhoto(string photo) => database.Read(session => session.Value<bool>("SELECT EXISTS (SELECT 1 FROM site_reports WHERE photo = @photo)", new { photo }));

    /// <summary>What a report would be answered if it came now: a refusal, or the answer that it had already; null where it would be taken in.</summary>
    /// <param name="code">The label's code.</param>
    /// <param name="requestKey">The report's own key.</param>
    public SiteReportAnswer? Foresee(PieceCode code, string requestKey) => database.Read(session =>
        RequestLog.AnswerOf(session, KeyOf(code, requestKey)) is { } before ? Again(before)
        : Refusal(session, LabelRow.Find(session, code)) is { } refused ? new SiteReportAnswer(refused, 0)
        : null);

    /// <summary>Takes a report in. Safe to send twice.</summary>
    /// <param name="code">The label's code.</param>
    /// <param name="report">What is reported.</param>
    /// <param name="who">Who reports it, for the history.</param>
    /// <param name="requestKey">The report's own key.</param>
    /// <param name="keepPhoto">Called once the report is sure to be taken in, before it is stored.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<SiteReportAnswer> SendAsync(
        PieceCode code, NewSiteReport report, string who, string requestKey, Action? keepPhoto = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        return database.WriteAsync(
            session => RequestLog.Once(
                session,
                KeyOf(code, requestKey),
                () => Send(session, code, report, who, keepPhoto),
                answer => answer.Outcome == SiteOutcome.Done ? answer.Id.ToString(CultureInfo.InvariantCulture) : null,
                Again),
            cancel);
    }

    /// <summary>
    /// Has the piece of an open report cut again: a new piece with a ticket that waits takes its place, and the old label says so. Safe to send
    /// twice; the outcome is the new piece's code.
    /// </summary>
    /// <param name="id">The report.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="requestKey">The request's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> ReCutAsync(long id, string who, string requestKey, CancellationToken cancel = default) => database.WriteAsync(
        session => BenchAnswer.Once(session, $"re-cut {requestKey}", () => ReCut(session, id, who)), cancel);

    /// <summary>Closes an open report. Safe to send twice.</summary>
    /// <param name="id">The report.</param>
    /// <param name="note">What came of it, 1 to 200 characters.</param>
    /// <param name="who">Who closes it.</param>
    /// <param name="requestKey">The request's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> CloseAsync(long id, string note, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(note);
        return database.WriteAsync(session => BenchAnswer.Once(session, $"close {requestKey}", () => Close(session, id, note.Trim(), who)), cancel);
    }

    /// <summary>True where a piece has an open report of a kind.</summary>
    internal static bool AreOpen(ShopSession session, long pieceId, SiteReportKind kind) => session.Value<bool>(
        "SELECT EXISTS (SELECT 1 FROM site_reports WHERE piece_id = @pieceId AND kind = @word AND closed_at IS NULL)", new { pieceId, word = SiteReportWords.Of(kind) });

    /// <summary>Kinds of reports from their words as <see cref="OpenKinds"/> lists them, each once.</summary>
    internal static IReadOnlyList<SiteReportKind> KindsOf(string words) =>
        [.. words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => SiteReportWords.Read(word)!.Value).Distinct().Order()];

    private static string KeyOf(PieceCode code, string requestKey) => $"report {code.Plain} {requestKey}";

    private static SiteReportAnswer Again(string before) => new(SiteOutcome.Done, long.Parse(before, CultureInfo.InvariantCulture));

    /// <summary>Why no report of a label is taken in, or null.</summary>
    private static SiteOutcome? Refusal(ShopSession session, LabelRow? label) =>
        LabelRow.OutcomeOf(label) is not SiteOutcome.Done and var refused ? refused
        : session.Value<long>("SELECT count(*) FROM site_reports WHERE piece_id = @PieceId AND closed_at IS NULL", new { label!.PieceId }) >= MostOpenOfAPiece ? SiteOutcome.TooManyReports
        : null;

    private static BenchAnswer ReCut(ShopSession session, long id, string who)
    {
        if (Find(session, id) is not { IsOpen: true } report)
            return BenchAnswer.Refused(SiteReplies.Of("NoOpenReport"));
        if (report.ReCut is not null)
            return BenchAnswer.Refused(SiteReplies.Of("AlreadyCutAgain"));
        var pieceId = session.Value<long>("SELECT piece_id FROM site_reports WHERE id = @id", new { id });
        if (ReCutting.Again(session, pieceId, report.Kind, who, out var newId) is { } why)
            return BenchAnswer.Refused(why);
        session.Execute("UPDATE site_reports SET re_cut_id = @newId WHERE id = @id", new { newId, id });
        session.Record("site report", id, who, HistoryCodes.ReportCutAgain, after: report.Run, reason: Reason.Because(HistoryCause.OnSite(report.Kind)));
        return BenchAnswer.Given(Find(session, id)!.ReCut!.Value.Plain);
    }

    private static BenchAnswer Close(ShopSession session, long id, string note, string who)
    {
        if (BenchAnswer.NeedsReason(note) is { } why)
            return BenchAnswer.Refused(why);
        if (session.Execute(
            "UPDATE site_reports SET closed_at = @Now, closed_by = @who, closing_note = @note WHERE id = @id AND closed_at IS NULL",
            new { session.Now, who, note, id }) == 0)
            return BenchAnswer.Refused(SiteReplies.Of("NoOpenReport"));
        session.Record("site report", id, who, HistoryCodes.ReportClosed, "open", "closed", note);
        return BenchAnswer.Nothing;
    }

    private static SiteReportAnswer Send(ShopSession session, PieceCode code, NewSiteReport report, string who, Action? keepPhoto)
    {
        var label = LabelRow.Find(session, code);
        if (Refusal(session, label) is { } refused)
            return new(refused, 0);
        var pieceId = label!.PieceId;
        var at = session.NoLaterThanNow(report.At);
        if (report.Clear is { } clear && MeasuredSpans.Put(session, pieceId, clear, at, who) is not SiteOutcome.Done and var unlikely)
            return new(unlikely, 0);
        keepPhoto?.Invoke();
        var id = session.Insert(
            """
            INSERT INTO site_reports (piece_id, kind, note, photo, tapped_at, came_at) VALUES (@pieceId, @kind, @Note, @Photo, @at, @Now)
            """,
            new { pieceId, kind = SiteReportWords.Of(report.Kind), report.Note, report.Photo, at, session.Now });
        session.Record("site report", id, who, HistoryCodes.ReportSent, after: SiteReportWords.Of(report.Kind), reason: report.Note);
        return new(SiteOutcome.Done, id);
    }

    private static SiteReport? Find(ShopSession session, long id) => session.FirstOrDefault<SiteReport>(Columns + " WHERE site_reports.id = @id", new { id });
}

/// <summary>A piece that is marked as installed though the shop has not cut it.</summary>
/// <param name="Job">The job's number.</param>
/// <param name="Run">Its run.</param>
/// <param name="Code">Its code.</param>
/// <param name="TappedAt">When it was marked, UTC.</param>
public sealed record HungUncut(string Job, string Run, PieceCode Code, DateTimeOffset TappedAt);
