using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Stock;

/// <summary>
/// The tables in use: those the program brings, with the shop's own rack of bits in place of the program's from the first bit that is
/// hung up or taken off.
/// </summary>
/// <param name="database">The shop's database.</param>
/// <param name="brought">The tables that the program brings.</param>
public sealed class ShopTablesShelf(ShopDatabase database, ShopTables brought)
{
    private static readonly Length Widest = Length.FromInches(12);

    internal const string RackSetting = "bit rack";
    internal const string OwnRack = "own";

    /// <summary>The tables as of now.</summary>
    public ShopTables Current() => database.Read(Current);

    /// <summary>Hangs a bit on the rack.</summary>
    /// <returns>Why not, or null where it hangs there now.</returns>
    public Task<string?> HangBitAsync(RackBit bit, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (!bit.Diameter.IsPositive || bit.Diameter > Widest)
                return SettingsReplies.Of("BitDiameter", bit.Diameter, Widest).ToString();
            Own(session);
            if (session.Execute("INSERT INTO bits (kind, diameter_nm) VALUES (@Kind, @Diameter) ON CONFLICT DO NOTHING", Row(bit)) == 1)
                session.Record("bit rack", 1, who, HistoryCodes.BitHungUp, after: BitWords.Of(bit.Kind), afterLength: bit.Diameter);
            return null;
        },
        cancel);

    /// <summary>Takes a bit off the rack; one that does not hang there is no problem, and changes nothing.</summary>
    /// <returns>True where it hung there.</returns>
    public Task<bool> TakeBitOffAsync(RackBit bit, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (!Current(session).Rack.Bits.Contains(bit))
                return false;
            Own(session);
            session.Execute("DELETE FROM bits WHERE kind = @Kind AND diameter_nm = @Diameter", Row(bit));
            session.Record("bit rack", 1, who, HistoryCodes.BitTakenOff, before: BitWords.Of(bit.Kind), beforeLength: bit.Diameter);
            return true;
        },
        cancel);

    /// <summary>The tables as a transaction sees them.</summary>
    internal ShopTables Current(ShopSession session) => Current(session, brought);

    /// <summary>The same of tables that are at hand.</summary>
    internal static ShopTables Current(ShopSession session, ShopTables brought) =>
        HasOwnRack(session) ? brought with { Rack = new BitRack([.. OwnBits(session)]) } : brought;

    internal static bool HasOwnRack(ShopSession session) =>
        StoredSettings.Find(session, RackSetting) == OwnRack;

    private static IEnumerable<RackBit> OwnBits(ShopSession session) =>
        session.All<(string Kind, Length Diameter)>("SELECT kind, diameter_nm FROM bits ORDER BY diameter_nm, kind")
            .Select(row => new RackBit(BitWords.KindNamed(row.Kind)!.Value, row.Diameter));

    /// <summary>Copies the program's list once, so that the rack can change.</summary>
    private void Own(ShopSession session)
    {
        if (HasOwnRack(session))
            return;
        session.Execute("INSERT INTO bits (kind, diameter_nm) VALUES (@Kind, @Diameter)", Current(session).Rack.Bits.Distinct().Select(Row));
        StoredSettings.Set(session, (RackSetting, OwnRack));
    }

    private static object Row(RackBit bit) => new { Kind = BitWords.Of(bit.Kind), bit.Diameter };
}
