namespace CutShop.Shop;

/// <summary>How a ticket ends whose piece or post is no longer wanted: waiting work is cancelled, made work is surplus, and either says so.</summary>
internal static class TicketEnd
{
    public const string Cancelled = "cancelled";
    public const string Surplus = "surplus";

    /// <summary>Ends a cut ticket.</summary>
    /// <returns>Its state now.</returns>
    public static string OfPiece(ShopSession session, long ticketId, string state, string who, string reason) =>
        End(
            session,
            "cut ticket",
            // A piece that is never cut needs no place on a coil; a cut one keeps the place it came from.
            "UPDATE cut_tickets SET state = @next, plan_coil_id = CASE WHEN @next = 'cancelled' THEN NULL ELSE plan_coil_id END WHERE id = @ticketId",
            ticketId,
            state,
            who,
            reason);

    /// <summary>Ends a drill ticket.</summary>
    /// <returns>Its state now.</returns>
    public static string OfPost(ShopSession session, long ticketId, string state, string who, string reason) =>
        End(session, "drill ticket", "UPDATE drill_tickets SET state = @next WHERE id = @ticketId", ticketId, state, who, reason);

    private static string End(ShopSession session, string subject, string sql, long ticketId, string state, string who, string reason)
    {
        var next = state switch
        {
            "waiting" => Cancelled,
            "cut" or "drilled" => Surplus,
            _ => state,
        };
        if (next == state)
            return state;
        session.Execute(sql, new { ticketId, next });
        session.Record(subject, ticketId, who, next == Surplus ? "no longer wanted" : "cancelled", state, next, reason);
        return next;
    }
}
