namespace CutShop.Shop.Store;

/// <summary>What the shop has set for what it sends out.</summary>
/// <param name="ParcelLb">The most that the rope of one parcel weighs, in pounds; null for any.</param>
/// <param name="IsForSalt">True where what holds the rope must stand salt air, which paper then says.</param>
/// <param name="ReSetMonths">So many months after it left the shop, or was up, a job's rope is to be set again; 0 for no reminders.</param>
public sealed record SendingSettings(int? ParcelLb, bool IsForSalt, int ReSetMonths)
{
    /// <summary>What holds until the shop sets something else: parcels of any weight, no salt, a reminder after 6 months (common practice, no source).</summary>
    public static SendingSettings Default { get; } = new(ParcelLb: null, IsForSalt: false, ReSetMonths: 6);
}

/// <summary>The same as typed.</summary>
/// <param name="ParcelLb">Pounds; empty for any.</param>
/// <param name="Salt">yes or no.</param>
/// <param name="ReSetMonths">Months.</param>
public sealed record SendingTyped(string ParcelLb, string Salt, string ReSetMonths);
