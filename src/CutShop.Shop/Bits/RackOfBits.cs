using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>The shop's own rack of bits: hanging bits up and taking them off. The first change starts from the program's list.</summary>
public sealed class RackOfBits(ShopDatabase database, ShopTablesShelf tables)
{
    private static readonly Length Widest = Length.FromInches(12);

    /// <summary>Hangs a bit on the rack.</summary>
    /// <returns>Why not, or null where it hangs there now.</returns>
    public Task<string?> HangAsync(RackBit bit, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (!bit.Diameter.IsPositive || bit.Diameter > Widest)
                return SettingsReplies.Say("BitDiameter", bit.Diameter, Widest);
            Own(session);
            if (session.Execute("INSERT INTO bits (kind, diameter_nm) VALUES (@Kind, @Diameter) ON CONFLICT DO NOTHING", Row(bit)) == 1)
                session.Record("bit rack", 1, who, HistoryCodes.BitHungUp, after: BitWords.Of(bit.Kind), afterLength: bit.Diameter);
            return null;
        },
        cancel);

    /// <summary>Takes a bit off the rack; one that does not hang there is no problem, and changes nothing.</summary>
    /// <returns>True where it hung there.</returns>
    public Task<bool> TakeOffAsync(RackBit bit, string who, CancellationToken cancel = default) => database.WriteAsync(
        session =>
        {
            if (!tables.Current(session).Rack.Bits.Contains(bit))
                return false;
            Own(session);
            session.Execute("DELETE FROM bits WHERE kind = @Kind AND diameter_nm = @Diameter", Row(bit));
            session.Record("bit rack", 1, who, HistoryCodes.BitTakenOff, before: BitWords.Of(bit.Kind), beforeLength: bit.Diameter);
            return true;
        },
        cancel);

    /// <summary>Copies the program's list once, so that the rack can change.</summary>
    private void Own(ShopSession session)
    {
        if (ShopTablesShelf.HasOwnRack(session))
            return;
        session.Execute("INSERT INTO bits (kind, diameter_nm) VALUES (@Kind, @Diameter)", tables.Current(session).Rack.Bits.Distinct().Select(Row));
        StoredSettings.Set(session, (ShopTablesShelf.RackSetting, ShopTablesShelf.OwnRack));
    }

    private static BitValues Row(RackBit bit) => new(BitWords.Of(bit.Kind), bit.Diameter);

    private sealed record BitValues(string Kind, Length Diameter);
}
