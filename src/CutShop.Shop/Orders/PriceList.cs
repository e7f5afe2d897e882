using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>The shop's prices from a day on.</summary>
/// <param name="Id">Its row; 0 before it is stored.</param>
/// <param name="ValidFrom">The first day it is valid.</param>
/// <param name="Ropes">Rope by the foot; a rope that is not here has no price.</param>
/// <param name="Bores">Boring, the narrowest band first.</param>
/// <param name="Cut">A piece cut, its ends sealed or bound.</param>
/// <param name="Packing">Packing, a job.</param>
/// <param name="Delivery">Delivery, a job.</param>
/// <param name="Tax">Tax on everything else.</param>
/// <param name="QuoteDays">Days a quote is valid, counted from the day it is made.</param>
public sealed record PriceList(
    long Id,
    DateOnly ValidFrom,
    IReadOnlyList<RopePrice> Ropes,
    IReadOnlyList<BorePrice> Bores,
    Money Cut,
    Money Packing,
    Money Delivery,
    Share Tax,
    int QuoteDays);

/// <summary>The price of a rope.</summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Foot">A foot of it, cut lengths.</param>
public sealed record RopePrice(RopeMaterial Material, Length Diameter, Money Foot);

/// <summary>The price of a bore, whatever its depth and operations.</summary>
/// <param name="UpTo">The largest bit of this band.</param>
/// <param name="Bore">One bore.</param>
public sealed record BorePrice(Length UpTo, Money Bore);
