using CutShop.Shop.Store;
using CutShop.Takeoff.Words;
using Dapper;

namespace CutShop.Shop.Tickets;

/// <summary>A move of a ticket from one state to another: it does it and writes its history, or says why it cannot.</summary>
/// <param name="Table">The table of its tickets.</param>
/// <param name="What">What the history says was done.</param>
/// <param name="From">The state it starts from.</param>
/// <param name="To">The state it ends in.</param>
internal sealed record TicketMove(string Table, HistoryCode What, string From, string To)
{
    /// <summary>What the move counts as, or null.</summary>
    public ShopCount? Counts { get; init; }

    /// <summary>What the history calls its tickets.</summary>
    public string Subject => Table == TicketStates.CutTickets ? "cut ticket" : "drill ticket";

    /// <summary>Makes the move where the ticket is in the state it starts from; the row count decides.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="id">The ticket.</param>
    /// <param name="who">Who moves it.</param>
    /// <param name="set">Further columns that the move sets, as SQL that starts with a comma; it may speak of @who and @now.</param>
    /// <param name="values">What else <paramref name="set"/> speaks of.</param>
    /// <param name="reason">Why, where a reason was asked for.</param>
    /// <param name="details">What else the history keeps of it.</param>
    /// <returns>Null where it is done, else from which state it cannot go where.</returns>
    public Sentence? Try(
        ShopSession session, long id, string who, string set = "", object? values = null, Reason reason = default, object? details = null)
    {
        if (session.Execute($"UPDATE {Table} SET state = @To{set} WHERE id = @id AND state = @From", With(id, who, session.Now, values)) == 1)
        {
            session.Record(Subject, id, who, What, From, To, reason, details: details);
            if (Counts is { } counts)
                session.Count(counts);
            return null;
        }
        var state = session.Value<string>($"SELECT state FROM {Table} WHERE id = @id", new { id });
        return BenchReplies.Of("NoSuchMove", BenchReplies.State(state), BenchReplies.State(To));
    }

    /// <summary>Makes a move that cannot fail, because the state was read in the same transaction.</summary>
    public void Do(ShopSession session, long id, string who, string set = "", object? values = null, Reason reason = default, object? details = null)
    {
        if (Try(session, id, who, set, values, reason, details) is { } why)
            throw new InvalidOperationException(why.ToString());
    }

    /// <summary>Makes the move, by one statement, of every ticket of a job that is in the state it starts from and whose piece or post is wanted.</summary>
    /// <returns>How many they are.</returns>
    public int DoAll(ShopSession session, long jobId, string who, string set, Reason reason)
    {
        var (thing, things) = Table == TicketStates.CutTickets ? ("piece_id", "pieces") : ("post_id", "posts");
        var ofJob = $"state = @From AND {thing} IN (SELECT id FROM {things} WHERE job_id = @id AND dropped_at IS NULL)";
        var values = With(jobId, who, session.Now, values: null);
        var tickets = session.All<long>($"SELECT id FROM {Table} WHERE {ofJob} ORDER BY id", values);
        session.Execute($"UPDATE {Table} SET state = @To{set} WHERE {ofJob}", values);
        foreach (var ticket in tickets)
            session.Record(Subject, ticket, who, What, From, To, reason);
        return tickets.Count;
    }

    private object With(long id, string who, DateTimeOffset now, object? values)
    {
        var usual = new { id, who, now, From, To };
        if (values is null)
            return usual;
        var all = new DynamicParameters(usual);
        all.AddDynamicParams(values);
        return all;
    }
}
