namespace CutShop.Shop;

/// <summary>Takes an open draft in as a job, without a quote.</summary>
public sealed class DraftIntake(ShopDatabase database, ShopTablesShelf tables)
{
    /// <summary>Stores the draft's job and closes the draft, in one step. Safe to send twice.</summary>
    /// <returns>The job's number, or why there is none.</returns>
    public Task<DeskAnswer> TakeInAsync(long id, long version, string who, CancellationToken cancel = default) =>
        database.WriteAsync(session => TakeIn(session, id, version, who), cancel);

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
}
