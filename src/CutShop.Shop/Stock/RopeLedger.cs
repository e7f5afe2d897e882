using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;

namespace CutShop.Shop.Stock;

/// <summary>
/// Where the rope of each coil went, to the nanometre: what came in is what is left and the sum of a coil's lines. Nothing is
/// erased; what is given back is a line below zero.
/// </summary>
internal static class RopeLedger
{
    public const string Piece = "piece";
    public const string Kerf = "kerf";
    public const string Trim = "trim";
    public const string Offcut = "offcut";
    public const string Scrap = "scrap";
    public const string Correction = "correction";

    /// <summary>What a coil lost when it was soaked and dried.</summary>
    public const string Shrunk = "shrunk";

    /// <summary>Adds a line, or none where there is no rope in it.</summary>
    /// <returns>The line's row, or null.</returns>
    public static long? Add(ShopSession session, long coilId, string kind, Length length, long? ticketId = null, long? toCoilId = null) =>
        length == Length.Zero
            ? null
            : session.Insert(
                "INSERT INTO rope_uses (at, coil_id, ticket_id, kind, nm, to_coil_id) VALUES (@Now, @coilId, @ticketId, @kind, @length, @toCoilId)",
                new { session.Now, coilId, ticketId, kind, length, toCoilId });

    /// <summary>What a cut used, from its first line on.</summary>
    public static IReadOnlyList<RopeUse> Of(ShopSession session, long ticketId, long firstId) => session.All<RopeUse>(
        """
        SELECT coil_id, kind, CAST(sum(nm) AS bigint) AS nm, coalesce(to_coil_id, 0) AS to_coil_id FROM rope_uses
        WHERE ticket_id = @ticketId AND id >= @firstId GROUP BY coil_id, kind, to_coil_id HAVING sum(nm) <> 0 ORDER BY min(id)
        """,
        new { ticketId, firstId });
}

/// <summary>Rope that a cut used.</summary>
/// <param name="CoilId">The coil it came from.</param>
/// <param name="Kind">What it became.</param>
/// <param name="Nm">How much, in nanometres.</param>
/// <param name="ToCoilId">The offcut it became; zero where it is none.</param>
internal sealed record RopeUse(long CoilId, string Kind, long Nm, long ToCoilId);
