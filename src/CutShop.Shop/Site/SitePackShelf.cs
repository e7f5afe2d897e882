using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Site;

/// <summary>
/// Site packs: everything that the labels of a job show, behind one code. A pack's code is drawn as a piece's is and is as
/// hard to guess.
/// </summary>
public sealed class SitePackShelf(ShopDatabase database)
{
    /// <summary>The code of a job's pack, drawn when it is first asked for; null where there is no such job.</summary>
    /// <param name="number">The job's number.</param>
    /// <param name="who">Who asks, for the history.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public async Task<PieceCode?> CodeOfAsync(string number, string who, CancellationToken cancel = default) =>
        database.Read(session => Known(session, number)) ?? await database.WriteAsync(session => Known(session, number) ?? Draw(session, number, who), cancel).ConfigureAwait(false);

    /// <summary>Gives a job's pack a new code, so that the old one opens nothing. Safe to send twice; the outcome is the new code.</summary>
    /// <param name="number">The job's number.</param>
    /// <param name="reason">Why, 1 to 200 characters.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="requestKey">The request's own key.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<BenchAnswer> ReplaceAsync(string number, string reason, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return database.WriteAsync(session => BenchAnswer.Once(session, $"site pack {requestKey}", () => Replace(session, number, reason, who)), cancel);
    }

    /// <summary>The pack with this code; null where there is none, or its job was cancelled.</summary>
    public SitePack? Find(PieceCode code) => database.Read(session =>
    {
        if (session.FirstOrDefault<JobRow>("SELECT id, number FROM jobs JOIN site_packs ON job_id = jobs.id WHERE code = @code AND cancelled_at IS NULL", new { code }) is not { } job)
            return null;
        var rows = session.All<PieceRow>(
            $"""
            SELECT code, {InstalledWords.Column} AS state, cut_tickets.state AS ticket, {SiteReports.OpenKinds} AS reported
            FROM pieces JOIN cut_tickets ON cut_tickets.piece_id = pieces.id LEFT JOIN installations ON installations.piece_id = pieces.id
            WHERE job_id = @Id AND dropped_at IS NULL ORDER BY position
            """,
            new { job.Id });
        var posts = StoredParts.PostsOf(session, job.Id);
        var takeoff = StoredParts.Frame(session, job.Id).ToTakeoff(new(job.Number, Customer: "", Due: null, OneLot: false), StoredParts.PiecesOf(session, job.Id), posts);
        return new SitePack(code, takeoff, [.. takeoff.Pieces.Zip(rows, (piece, row) => row.Of(piece))], PieceShelf.DrilledPosts(session, job.Id))
        {
            SitePosts = SitePost.Of(posts, BoredOnSite.Of(session, job.Id)),
            LinesForSite = posts.Where(post => post.IsForSite).Select(post => post.Line).ToHashSet(),
        };
    });

    private static PieceCode? Known(ShopSession session, string number) =>
        session.All<PieceCode>("SELECT code FROM site_packs JOIN jobs ON jobs.id = job_id WHERE number = @number", new { number }) is [var code, ..] ? code : null;

    private static PieceCode? Draw(ShopSession session, string number, string who)
    {
        if (session.FirstOrDefault<long?>("SELECT id FROM jobs WHERE number = @number", new { number }) is not { } jobId)
            return null;
        var code = PieceCode.Draw();
        session.Execute("INSERT INTO site_packs (job_id, code) VALUES (@jobId, @code)", new { jobId, code });
        session.Record("job", jobId, who, HistoryCodes.SitePackOpened);
        return code;
    }

    private static BenchAnswer Replace(ShopSession session, string number, string reason, string who)
    {
        if (BenchAnswer.NeedsReason(reason) is { } why)
            return BenchAnswer.Refused(why);
        if (session.FirstOrDefault<PackRow>("SELECT job_id, code FROM site_packs JOIN jobs ON jobs.id = job_id WHERE number = @number", new { number }) is not { } pack)
            return BenchAnswer.Refused(SiteReplies.Of("NoSitePack", number));
        var next = PieceCode.Draw();
        session.Execute("UPDATE site_packs SET code = @next WHERE job_id = @JobId", new { next, pack.JobId });
        session.Record("job", pack.JobId, who, HistoryCodes.SitePackReplaced, pack.Code.ToString(), next.ToString(), reason.Trim());
        return BenchAnswer.Given(next.Plain);
    }

    private sealed record PackRow(long JobId, PieceCode Code);

    private sealed record JobRow(long Id, string Number);

    private sealed record PieceRow(PieceCode Code, string State, string Ticket, string Reported)
    {
        public LinePiece Of(Piece piece) => new(piece, Code, InstalledWords.Read(State)!.Value, TicketStates.IsMade(Ticket), SiteReports.KindsOf(Reported));
    }
}
