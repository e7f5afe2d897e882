using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;

namespace CutShop.Shop.Orders;

/// <summary>Takes an open draft in: as a new job without a quote, or as the new form of a job that is stored.</summary>
public sealed class DraftIntake(ShopDatabase database, ShopTablesShelf tables)
{
    /// <summary>Stores the draft's job and closes the draft, in one step. Safe to send twice.</summary>
    /// <returns>The job's number, or why there is none.</returns>
    public Task<DeskAnswer> TakeInAsync(long id, long version, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => TakeIn(session, id, version, who), cancel);

    /// <summary>
    /// Gives a stored job the form that an open draft has, if the change is still the one that was shown. Safe to send twice.
    /// </summary>
    /// <param name="draftId">The draft.</param>
    /// <param name="token">The <see cref="JobChange.Token"/> of the change that was shown.</param>
    /// <param name="who">Who accepts it.</param>
    /// <param name="quoteId">The quote that the customer accepted for it, or null.</param>
    /// <param name="cancel">Stops before anything is stored.</param>
    public Task<ChangeAnswer> AcceptChangeAsync(long draftId, string token, string who, long? quoteId = null, CancellationToken cancel = default) =>
        database.WriteAsync(session => AcceptChange(session, draftId, token, who, quoteId), cancel);

    private DeskAnswer TakeIn(ShopSession session, long id, long version, string who)
    {
        if (DraftShelf.Find(session, id) is not { } draft)
            return DeskAnswer.Refused(OrderReplies.Of("NoSuchDraft"));
        if (draft.JobNumber is { } number)
            return DeskAnswer.Done(number);
        if (!draft.IsOpen)
            return DeskAnswer.Refused(OrderReplies.Of("DraftPutAway"));
        if (draft.Version != version)
            return DeskAnswer.Refused(OrderReplies.Of("DraftChangedBeforeIntake"));
        if (DraftReading.Of(draft.Form, tables.Current(session)).Takeoff is not { } takeoff)
            return DeskAnswer.Refused(OrderReplies.Of("DraftHasErrors"));
        if (JobChanging.IsCancelled(session, takeoff.Job.Number))
            return DeskAnswer.Refused(JobChanging.WasCancelled(takeoff.Job.Number));
        if (JobIntake.Receive(session, takeoff, who) == IntakeOutcome.NumberTaken)
            return DeskAnswer.Refused(OrderReplies.Of("JobDiffers", takeoff.Job.Number));
        DraftShelf.Close(session, id, takeoff.Job.Number, who);
        return DeskAnswer.Done(takeoff.Job.Number);
    }

    private ChangeAnswer AcceptChange(ShopSession session, long draftId, string token, string who, long? quoteId)
    {
        if (DraftShelf.Find(session, draftId) is not { } draft)
            return JobChanging.Refused(OrderReplies.Of("NoSuchDraft"));
        if (draft.JobNumber is { } done)
            return new(done, Problem: null, Change: null);
        if (!draft.IsOpen)
            return JobChanging.Refused(OrderReplies.Of("DraftPutAway"));
        if (!draft.Form.IsChangeOf(draft.Form.Number.Trim()) && JobChanging.OfNumber(session, draft.Form.Number.Trim()) is { } stored)
            return JobChanging.Refused(OrderReplies.Of("SayWhetherItChanges", stored.Says));
        var now = tables.Current(session);
        if (DraftReading.Of(draft.Form, now).Takeoff is not { } next)
            return JobChanging.Refused(OrderReplies.Of("DraftHasErrors"));
        if (StoredWork.Find(session, next.Job.Number) is not { } was)
            return JobChanging.Refused(JobReplies.Of("NoSuchJob", next.Job.Number));
        var change = JobChange.ByDraft(was, next, now);
        if (JobChanging.Problem(change, token) is { } refusal)
            return JobChanging.Refused(refusal, change);
        if (quoteId is { } quote && QuoteDesk.AcceptWithChange(session, quote, draftId, next.Job, who) is { } problem)
            return JobChanging.Refused(problem, change);

        JobChanging.Store(session, was, next, change, HistoryCodes.JobChanged, who);
        DraftShelf.Close(session, draftId, next.Job.Number, who);
        return new(next.Job.Number, Problem: null, Change: null);
    }
}
