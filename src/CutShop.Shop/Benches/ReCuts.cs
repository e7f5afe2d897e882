using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Benches;

/// <summary>Counts pieces that are cut again, for the board.</summary>
internal static class ReCuts
{
    /// <summary>Counts one.</summary>
    /// <param name="session">The transaction.</param>
    /// <param name="ticketId">The ticket of the piece that was no good.</param>
    /// <param name="length">How long that piece is.</param>
    /// <param name="reason">Why.</param>
    /// <param name="who">Who says so.</param>
    public static void Add(ShopSession session, long ticketId, Length length, string reason, string who) => session.Execute(
        "INSERT INTO re_cuts (at, who, ticket_id, measured_nm, reason) VALUES (@Now, @who, @ticketId, @length, @reason)",
        new { session.Now, who, ticketId, length, reason });
}
