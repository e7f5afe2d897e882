using CutShop.Shop.Store;

namespace CutShop.Shop.Orders;

/// <summary>Keeps drafts, so that nothing half typed is lost.</summary>
public sealed class DraftShelf(ShopDatabase database)
{
    private const int VersionsKept = 200;

    private const string Select =
        "SELECT id, version, form, state, job_number, changed_at, changed_by FROM drafts";

    /// <summary>The open drafts, the last changed first.</summary>
    public IReadOnlyList<DraftListed> Open(int most = 200) => In("open", most);

    /// <summary>The drafts that were put away, the last one first. Each can be taken up again.</summary>
    public IReadOnlyList<DraftListed> PutAway(int most = 50) => In("dropped", most);

    private IReadOnlyList<DraftListed> In(string state, int most) => database.Read(session => session.All<DraftListed>(
        "SELECT id, number, customer, changed_at, changed_by FROM drafts WHERE state = @state ORDER BY changed_at DESC, id DESC LIMIT @most",
        new { state, most }));

    /// <summary>A draft, or null.</summary>
    public Draft? Find(long id) => database.Read(session => Find(session, id));

    /// <summary>Starts a draft. Safe to send twice with the same key.</summary>
    /// <returns>Its id.</returns>
    public Task<long> StartAsync(DraftForm form, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(form);
        return database.WriteAsync(session => RequestLog.Once(session, requestKey, () => Start(session, form, who)), cancel);
    }

    /// <summary>
    /// Keeps what was typed, if nobody else changed the draft since <paramref name="version"/>; a draft that is no longer
    /// open is left as it is.
    /// </summary>
    /// <returns>How it went, or null where there is no such draft.</returns>
    public Task<DraftSaved?> SaveAsync(long id, long version, DraftForm form, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(form);
        return database.WriteAsync(session => Save(session, id, version, form, who), cancel);
    }

    /// <summary>Puts an open draft away; it can be taken up again.</summary>
    /// <returns>False where it is not open.</returns>
    public Task<bool> DropAsync(long id, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (session.Execute("UPDATE drafts SET state = 'dropped', changed_at = @Now, changed_by = @who WHERE id = @id AND state = 'open'", new { id, who, session.Now }) == 0)
                return false;
            session.Record("draft", id, who, HistoryCodes.DraftDropped, "open", "dropped");
            return true;
        },
        cancel);

    /// <summary>Takes a draft up again that was put away.</summary>
    /// <returns>False where it was not put away.</returns>
    public Task<bool> ReopenAsync(long id, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (session.Execute("UPDATE drafts SET state = 'open', changed_at = @Now, changed_by = @who WHERE id = @id AND state = 'dropped'", new { id, who, session.Now }) == 0)
                return false;
            session.Record("draft", id, who, HistoryCodes.DraftReopened, "dropped", "open");
            return true;
        },
        cancel);

    internal static Draft? Find(ShopSession session, long id) =>
        session.FirstOrDefault<DraftRow>($"{Select} WHERE id = @id", new { id })?.ToDraft();

    /// <summary>A version as it was kept, or null.</summary>
    internal static DraftForm? FormOf(ShopSession session, long id, long version) =>
        session.FirstOrDefault<string>("SELECT form FROM draft_versions WHERE draft_id = @id AND version = @version", new { id, version }) is { } json
            ? DraftFields.FromJson(json)
            : null;

    /// <summary>The draft has become a job, or a change of one.</summary>
    internal static void Close(ShopSession session, long id, string jobNumber, string who)
    {
        if (session.Execute(
            "UPDATE drafts SET state = 'taken in', job_number = @jobNumber, changed_at = @Now, changed_by = @who WHERE id = @id AND state = 'open'",
            new { id, jobNumber, who, session.Now }) == 1)
            session.Record("draft", id, who, HistoryCodes.DraftTakenIn, "open", jobNumber);
    }

    private static long Start(ShopSession session, DraftForm form, string who)
    {
        var json = DraftFields.ToJson(form);
        var id = session.Insert(
            """
            INSERT INTO drafts (version, number, customer, form, state, changed_at, changed_by)
            VALUES (1, @Number, @Customer, @json, 'open', @Now, @who)
            """,
            new { form.Number, form.Customer, json, session.Now, who });
        KeepVersion(session, id, version: 1, json);
        session.Record("draft", id, who, HistoryCodes.DraftStarted, after: "open");
        return id;
    }

    private static DraftSaved? Save(ShopSession session, long id, long version, DraftForm form, string who)
    {
        if (Find(session, id) is not { } stored)
            return null;
        var json = DraftFields.ToJson(form);
        if (!stored.IsOpen || DraftFields.ToJson(stored.Form) == json)
            return new(stored, Conflict: null);
        if (stored.Version != version)
            return new(stored, DraftConflict.Between(FormOf(session, id, version), stored.Form, form));
        var next = stored.Version + 1;
        session.Execute(
            "UPDATE drafts SET version = @next, number = @Number, customer = @Customer, form = @json, changed_at = @Now, changed_by = @who WHERE id = @id",
            new { id, next, form.Number, form.Customer, json, session.Now, who });
        KeepVersion(session, id, next, json);
        return new(stored with { Version = next, Form = form, ChangedAt = session.Now, ChangedBy = who }, Conflict: null);
    }

    private static void KeepVersion(ShopSession session, long id, long version, string json)
    {
        session.Execute("INSERT INTO draft_versions (draft_id, version, form) VALUES (@id, @version, @json)", new { id, version, json });
        session.Execute("DELETE FROM draft_versions WHERE draft_id = @id AND version <= @old", new { id, old = version - VersionsKept });
    }

    private sealed record DraftRow(long Id, long Version, string Form, string State, string? JobNumber, DateTimeOffset ChangedAt, string ChangedBy)
    {
        public Draft ToDraft() => new(Id, Version, DraftFields.FromJson(Form), State, JobNumber, ChangedAt, ChangedBy);
    }
}
