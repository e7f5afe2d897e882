using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Benches;

/// <summary>What the cuts of a piece left beside it, for whoever has it in hand.</summary>
/// <param name="Offcuts">Lengths that became coils of their own and hang untouched, the oldest first.</param>
/// <param name="Scrap">Rope too short to keep, all together.</param>
public sealed record LeftOver(IReadOnlyList<OffcutToHang> Offcuts, Length Scrap)
{
    internal static LeftOver Of(ShopSession session, PieceCode code)
    {
        var offcuts = session.All<OffcutToHang>(
            $"""
            SELECT mark, left_nm AS length, place
            FROM coils
            WHERE state = '{CoilStates.InStock}' AND left_nm = whole_nm AND id IN (
              SELECT to_coil_id
              FROM rope_uses JOIN cut_tickets ON cut_tickets.id = ticket_id JOIN pieces ON pieces.id = piece_id
              WHERE code = @code GROUP BY to_coil_id HAVING sum(nm) > 0)
            ORDER BY id
            """,
            new { code });
        var scrap = session.Value<Length>(
            $"""
            SELECT CAST(coalesce(sum(nm), 0) AS bigint)
            FROM rope_uses JOIN cut_tickets ON cut_tickets.id = ticket_id JOIN pieces ON pieces.id = piece_id
            WHERE code = @code AND kind = '{RopeLedger.Scrap}'
            """,
            new { code });
        return new(offcuts, scrap);
    }
}

/// <summary>An offcut to be marked and hung up.</summary>
/// <param name="Mark">Its mark.</param>
/// <param name="Length">How long it is.</param>
/// <param name="Place">Where it is to hang; empty where the shop has not said.</param>
public sealed record OffcutToHang(string Mark, Length Length, string Place);
