using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>The tables that count today: those the program brings, with the shop's own rack of bits in place of the program's once there is one.</summary>
/// <param name="database">The shop's database.</param>
/// <param name="brought">The tables that the program brings.</param>
public sealed class ShopTablesShelf(ShopDatabase database, ShopTables brought)
{
    internal const string RackSetting = "bit rack";
    internal const string OwnRack = "own";

    /// <summary>The tables as of now.</summary>
    public ShopTables Current() => database.Read(Current);

    /// <summary>The tables as a transaction sees them.</summary>
    internal ShopTables Current(ShopSession session) => Current(session, brought);

    /// <summary>The same of tables that are at hand.</summary>
    internal static ShopTables Current(ShopSession session, ShopTables brought) =>
        HasOwnRack(session) ? brought with { Rack = new BitRack([.. OwnBits(session)]) } : brought;

    internal static bool HasOwnRack(ShopSession session) =>
        StoredSettings.Find(session, RackSetting) == OwnRack;

    private static IEnumerable<RackBit> OwnBits(ShopSession session) =>
        session.All<BitRow>("SELECT kind, diameter_nm AS diameter FROM bits ORDER BY diameter_nm, kind")
            .Select(row => new RackBit(BitWords.KindNamed(row.Kind)!.Value, row.Diameter));

    private sealed record BitRow(string Kind, Length Diameter);
}
