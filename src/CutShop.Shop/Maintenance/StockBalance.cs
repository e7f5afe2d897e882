using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Shop.Maintenance;

/// <summary>Whether every nanometre of every coil is in a piece, an offcut, scrap, kerf, a correction, or left.</summary>
internal static class StockBalance
{
    public static IEnumerable<CheckFinding> Of(ShopSession session) => [.. Coils(session), .. States(session), .. Shrinkings(session), .. Offcuts(session), .. Pieces(session)];

    private static IEnumerable<CheckFinding> Coils(ShopSession session) => session.All<(string Mark, Length Whole, Length Left, long Used)>(
        """
        SELECT mark, whole_nm, left_nm, used FROM (
          SELECT mark, whole_nm, left_nm, coalesce((SELECT sum(nm) FROM rope_uses WHERE coil_id = coils.id), 0) AS used FROM coils) AS balance
        WHERE whole_nm - left_nm <> used ORDER BY mark
        """).Select(coil =>
        {
            var used = Length.FromNanometres(coil.Used);
            var missing = coil.Whole - coil.Left - used;
            return CheckFinding.Of(
                StoreReplies.Say("Coil", coil.Mark),
                missing.IsPositive ? "RopeMissing" : "RopeTwice",
                coil.Whole,
                coil.Left,
                used,
                missing.IsPositive ? missing : -missing);
        });

    private static IEnumerable<CheckFinding> States(ShopSession session) => session.All<(string Mark, Length Left)>(
        $"SELECT mark, left_nm FROM coils WHERE state = '{CoilStates.UsedUp}' AND left_nm <> 0 ORDER BY mark")
        .Select(coil => CheckFinding.Of(StoreReplies.Say("Coil", coil.Mark), "UsedUpButLeft", coil.Left));

    /// <summary>What a coil lost in soaking is in its ledger as it was measured, and a coil that was soaked is preshrunk.</summary>
    private static IEnumerable<CheckFinding> Shrinkings(ShopSession session) => session.All<(string Mark, long IsPreshrunk, Length Measured, Length Led)>(
        $"""
        SELECT mark, preshrunk, measured, led FROM (
          SELECT mark, preshrunk,
            CAST(coalesce((SELECT sum(before_nm - after_nm) FROM shrinkings WHERE coil_id = coils.id AND use_id IS NOT NULL AND taken_back_at IS NULL), 0) AS bigint) AS measured,
            CAST(coalesce((SELECT sum(nm) FROM rope_uses WHERE coil_id = coils.id AND kind = '{RopeLedger.Shrunk}'), 0) AS bigint) AS led
          FROM coils) AS soaked
        WHERE measured <> led OR (led > 0 AND preshrunk = 0) ORDER BY mark
        """).Select(coil => coil.Measured == coil.Led
            ? CheckFinding.Of(StoreReplies.Say("Coil", coil.Mark), "ShrunkButNew")
            : CheckFinding.Of(StoreReplies.Say("Coil", coil.Mark), "ShrunkLedger", coil.Measured, coil.Led));

    private static IEnumerable<CheckFinding> Offcuts(ShopSession session) => session.All<(string Mark, Length Whole, Length Left, long Told, long Strange)>(
        """
        SELECT offcut.mark, offcut.whole_nm, offcut.left_nm, sum(nm) AS told,
          sum(CASE WHEN offcut.parent_id = parent.id AND offcut.lot = parent.lot AND (offcut.material, offcut.diameter_nm, offcut.construction, offcut.colour)
            = (parent.material, parent.diameter_nm, parent.construction, parent.colour) THEN 0 ELSE 1 END) AS strange
        FROM rope_uses JOIN coils AS offcut ON offcut.id = to_coil_id JOIN coils AS parent ON parent.id = rope_uses.coil_id
        GROUP BY offcut.mark, offcut.whole_nm, offcut.left_nm
        """).SelectMany(offcut => OffcutFindings(offcut.Mark, offcut.Whole, offcut.Left, Length.FromNanometres(offcut.Told), offcut.Strange > 0));

    private static IEnumerable<CheckFinding> OffcutFindings(string mark, Length whole, Length left, Length told, bool isStrange)
    {
        if (isStrange)
            yield return CheckFinding.Of(StoreReplies.Say("Coil", mark), "OtherOffcut");
        if (told != whole && told != Length.Zero)
            yield return CheckFinding.Of(StoreReplies.Say("Coil", mark), "OffcutLength", whole, told);
        if (told == Length.Zero && left != Length.Zero)
            yield return CheckFinding.Of(StoreReplies.Say("Coil", mark), "OffcutUndone", left);
    }

    /// <summary>A piece that was cut again after a report from site is scrap by the ledger, though its ticket keeps the measure.</summary>
    private static IEnumerable<CheckFinding> Pieces(ShopSession session) => session.All<(PieceCode Code, long Measured, long Told)>(
        """
        SELECT code, measured, told FROM (
          SELECT code, coalesce(measured_nm, 0) AS measured, first_use_id,
            coalesce((SELECT sum(nm) FROM rope_uses WHERE ticket_id = cut_tickets.id AND kind = 'piece'), 0) AS told
          FROM cut_tickets JOIN pieces ON pieces.id = piece_id
          WHERE NOT EXISTS (SELECT 1 FROM pieces AS again WHERE again.replaces_id = pieces.id)) AS cuts
        WHERE (measured = 0 OR first_use_id IS NOT NULL) AND measured <> told ORDER BY code
        """).Select(piece => CheckFinding.Of(
            StoreReplies.Say("Piece", piece.Code), "PieceLength", Length.FromNanometres(piece.Measured), Length.FromNanometres(piece.Told)));
}
