using CutShop.Shop.Store;
using CutShop.Shop.Tickets;

namespace CutShop.Shop.Benches;

/// <summary>
/// How the tickets of a cancelled job are wanted again, the way back from <see cref="TicketClosing"/>. What a change took out before stays out.
/// </summary>
internal static class TicketReopening
{
    /// <summary>A ticket that the cancelled job left.</summary>
    /// <param name="Id">The ticket.</param>
    /// <param name="Before">Its state before it was cancelled or surplus; empty where the history does not say.</param>
    /// <param name="Taker">Who had it at the bench last, or empty.</param>
    /// <param name="Installed">1 for a piece that hangs on site, else 0.</param>
    private sealed record Left(long Id, string Before, string Taker, long Installed);

    /// <summary>Gives every ticket of a job back the state that is true of it now.</summary>
    /// <returns>How many are to be made, and how many are made.</returns>
    public static (int Waiting, int Made) OfJob(ShopSession session, long jobId, string who)
    {
        // A piece whose rope went to the rack or the scrap is cancelled like one that was never cut, and has nothing of it left.
        var waiting = Reordered(session, jobId, who)
            + Move(TicketStates.CutTickets, TicketStates.Cancelled, TicketStates.Waiting).DoAll(session, jobId, who, "", reason: default)
            + Move(TicketStates.DrillTickets, TicketStates.Cancelled, TicketStates.Waiting).DoAll(session, jobId, who, "", reason: default);
        var made = 0;
        foreach (var piece in Surplus(session, jobId, TicketStates.CutTickets))
        {
            var next = NextOf(piece);
            var set = next == TicketStates.AtTheBench ? ", claimed_by = @Taker, claimed_at = @now, touched_at = @now" : "";
            Move(TicketStates.CutTickets, TicketStates.Surplus, next).Do(session, piece.Id, who, set, new { piece.Taker });
            made++;
        }
        foreach (var post in Surplus(session, jobId, TicketStates.DrillTickets))
        {
            // A post with some of its holes waits with those done, as one that was handed back does.
            var next = post.Before == TicketStates.AtTheBench ? TicketStates.Waiting : TicketStates.Drilled;
            Move(TicketStates.DrillTickets, TicketStates.Surplus, next).Do(session, post.Id, who);
            made += next == TicketStates.Drilled ? 1 : 0;
            waiting += next == TicketStates.Drilled ? 0 : 1;
        }
        return (waiting, made);
    }

    /// <summary>A parcel may have been taken apart, so its pieces are packed again; one that is cut off and not finished goes back to its cutter.</summary>
    private static string NextOf(Left piece) => piece switch
    {
        { Before: TicketStates.AtTheBench, Taker: not "" } => TicketStates.AtTheBench,
        { Before: TicketStates.Packed, Installed: 1 } => TicketStates.Packed,
        _ => TicketStates.Cut,
    };

    /// <summary>A spoiled post was ordered again, and that it came somebody has to say.</summary>
    private static int Reordered(ShopSession session, long jobId, string who)
    {
        var move = Move(TicketStates.DrillTickets, TicketStates.Cancelled, TicketStates.ReOrdered);
        var posts = Of(session, jobId, TicketStates.DrillTickets, TicketStates.Cancelled).Where(post => post.Before == TicketStates.ReOrdered).ToList();
        foreach (var post in posts)
            move.Do(session, post.Id, who);
        return posts.Count;
    }

    private static IReadOnlyList<Left> Surplus(ShopSession session, long jobId, string table) => Of(session, jobId, table, TicketStates.Surplus);

    private static IReadOnlyList<Left> Of(ShopSession session, long jobId, string table, string state)
    {
        var (subject, thing, things, installed) = table == TicketStates.CutTickets
            ? ("cut ticket", "piece_id", "pieces", "EXISTS (SELECT 1 FROM installations WHERE installations.piece_id = t.piece_id AND installations.state = 'installed')")
            : ("drill ticket", "post_id", "posts", "false");
        return session.All<Left>(
            $"""
            SELECT t.id,
              coalesce((SELECT before FROM history WHERE subject = @subject AND subject_id = t.id AND after = @state ORDER BY history.id DESC LIMIT 1), '') AS before,
              coalesce((SELECT {Actors.NameOf("actor_id")} FROM history WHERE subject = @subject AND subject_id = t.id AND what IN (@taken, @takenOver)
                ORDER BY history.id DESC LIMIT 1), '') AS taker,
              CAST(CASE WHEN {installed} THEN 1 ELSE 0 END AS bigint) AS installed
            FROM {table} AS t JOIN {things} ON {things}.id = {thing}
            WHERE job_id = @jobId AND dropped_at IS NULL AND t.state = @state
            ORDER BY t.id
            """,
            new { jobId, state, subject, taken = HistoryCodes.TakenToBench.Code, takenOver = HistoryCodes.TakenOver.Code });
    }

    private static TicketMove Move(string table, string state, string next) => new(table, HistoryCodes.WantedAgain, state, next);
}
