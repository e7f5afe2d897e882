using CutShop.Shop.Store;
using CutShop.Shop.Tickets;

namespace CutShop.Shop.Benches;

/// <summary>
/// How a ticket ends whose piece or post is no longer wanted: work not begun is cancelled, made work is surplus, and either
/// says so. Whoever has it at the bench has it no more.
/// </summary>
internal static class TicketClosing
{
    /// <summary>Ends a cut ticket.</summary>
    /// <returns>Its state now.</returns>
    public static string OfPiece(ShopSession session, long ticketId, string state, string who, Reason reason)
    {
        var next = Next(state, CutBench.IsCutOff(session, ticketId, who));
        return End(session, TicketStates.CutTickets, ticketId, state, next, OfRope(next), who, reason);
    }

    /// <summary>Ends a drill ticket.</summary>
    /// <returns>Its state now.</returns>
    public static string OfPost(ShopSession session, long ticketId, string state, string who, Reason reason)
    {
        var isBored = session.Value<bool>("SELECT steps > 0 FROM drill_tickets WHERE id = @ticketId", new { ticketId });
        return End(session, TicketStates.DrillTickets, ticketId, state, Next(state, isBored), "", who, reason);
    }

    /// <summary>Ends every ticket of a job that waits, which of a large job are many, as the others do one by one.</summary>
    public static void OfAllThatWait(ShopSession session, long jobId, string who, Reason reason)
    {
        Move(TicketStates.CutTickets, TicketStates.Waiting, TicketStates.Cancelled).DoAll(session, jobId, who, Claims.Free + OfRope(TicketStates.Cancelled), reason);
        Move(TicketStates.DrillTickets, TicketStates.Waiting, TicketStates.Cancelled).DoAll(session, jobId, who, Claims.Free, reason);
    }

    /// <summary>A piece that is never cut needs no place on a coil; a cut one keeps the place it came from.</summary>
    private static string OfRope(string next) =>
        next == TicketStates.Cancelled ? ", reserved_nm = 0, plan_coil_id = NULL, cut_coil_id = NULL, steps = 0, longest_nm = NULL" : ", reserved_nm = 0";

    private static TicketMove Move(string table, string state, string next) => new(table, next == TicketStates.Surplus ? HistoryCodes.NoLongerWanted : HistoryCodes.TicketCancelled, state, next);

    private static string Next(string state, bool isMade) => state switch
    {
        TicketStates.Waiting or TicketStates.ReOrdered => TicketStates.Cancelled,
        TicketStates.AtTheBench => isMade ? TicketStates.Surplus : TicketStates.Cancelled,
        _ when TicketStates.IsMade(state) => TicketStates.Surplus,
        _ => state,
    };

    private static string End(ShopSession session, string table, long ticketId, string state, string next, string set, string who, Reason reason)
    {
        if (next != state)
            Move(table, state, next).Do(session, ticketId, who, Claims.Free + set, reason: reason);
        return next;
    }
}
