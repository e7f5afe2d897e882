namespace CutShop.Shop.Store;

/// <summary>A line of the append-only history, in words.</summary>
/// <param name="At">When, UTC.</param>
/// <param name="Who">Who.</param>
/// <param name="What">What was done.</param>
/// <param name="Before">The state before.</param>
/// <param name="After">The state after.</param>
/// <param name="Reason">Why, where there was a reason.</param>
public sealed record HistoryLine(DateTimeOffset At, string Who, string What, string Before, string After, string Reason);

/// <summary>Reads the history.</summary>
public sealed class HistoryShelf(ShopDatabase database)
{
    /// <summary>All lines of one subject, the newest last.</summary>
    /// <param name="subject">A name in the table of the history's subjects, such as job or cut ticket.</param>
    /// <param name="id">Its row id.</param>
    public IReadOnlyList<HistoryLine> Of(string subject, long id) => database.Read(session => session.All<HistoryEntry>(
        $"SELECT {HistoryEntry.Columns} FROM history WHERE subject = @subject AND subject_id = @id ORDER BY history.id",
        new { subject, id }).Select(entry => entry.InWords()).ToList());
}
