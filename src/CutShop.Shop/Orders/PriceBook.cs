using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>The shop's price lists by the first day they are valid. A list is never changed: a correction is a newer list for the same day.</summary>
public sealed class PriceBook(ShopDatabase database)
{
    private const string CurrencySetting = "currency sign";
    private const string DefaultCurrency = "$";
    private const int LongestCurrency = 4;

    /// <summary>The list that is valid on a day, or null where none is yet.</summary>
    public PriceList? On(DateOnly day) => database.Read(session => On(session, day));

    /// <summary>Every list that is or will be valid from a day on: the one of that day and the later ones, by day.</summary>
    public IReadOnlyList<PriceList> From(DateOnly day) => database.Read(session =>
    {
        var later = session.All<ListRow>(
            $"{Select} WHERE valid_from > @day AND id = (SELECT max(id) FROM price_lists AS same WHERE same.valid_from = price_lists.valid_from) ORDER BY valid_from",
            new { day }).Select(row => Load(session, row));
        return (IReadOnlyList<PriceList>)[.. On(session, day) is { } now ? [now] : Array.Empty<PriceList>(), .. later];
    });

    /// <summary>What a change of a job comes to by the list that is valid today; null where there is none.</summary>
    public ChangePrice? Of(JobChange change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return database.Read(session => On(session, session.Today) is { } prices ? ChangePrice.Of(change, prices, Currency(session)) : null);
    }

    /// <summary>The sign before an amount.</summary>
    public string Currency() => database.Read(Currency);

    /// <summary>Keeps a list. Safe to send twice with the same key.</summary>
    public Task<long> KeepAsync(PriceList list, string who, string requestKey, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(list);
        return database.WriteAsync(session => RequestLog.Once(session, requestKey, () => Keep(session, list, who)), cancel);
    }

    /// <summary>Sets the sign before an amount.</summary>
    /// <returns>Why not, or null.</returns>
    public Task<Sentence?> SetCurrencyAsync(string sign, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(sign);
        return database.WriteAsync(
            session =>
            {
                if (sign.Trim().Length == 0 || sign.Length > LongestCurrency || sign.Any(c => char.IsDigit(c) || char.IsControl(c)))
                    return OrderReplies.Of("AcceptedCurrency");
                var before = Currency(session);
                if (before == sign)
                    return null;
                StoredSettings.Set(session, (CurrencySetting, sign));
                session.Record("price list", 0, who, HistoryCodes.CurrencySet, before, sign);
                return null;
            },
            cancel);
    }

    internal static string Currency(ShopSession session) =>
        StoredSettings.Find(session, CurrencySetting) ?? DefaultCurrency;

    internal static PriceList? On(ShopSession session, DateOnly day) =>
        session.FirstOrDefault<ListRow>($"{Select} WHERE valid_from <= @day ORDER BY valid_from DESC, id DESC LIMIT 1", new { day }) is { } row
            ? Load(session, row)
            : null;

    private const string Select =
        "SELECT id, valid_from, cut_e4 AS cut, packing_e4 AS packing, delivery_e4 AS delivery, tax_millionths, quote_days FROM price_lists";

    private static PriceList Load(ShopSession session, ListRow row) => new(
        row.Id,
        row.ValidFrom,
        [.. session.All<(string Material, Length Diameter, Money Foot)>("SELECT material, diameter_nm, foot_e4 FROM rope_prices WHERE list_id = @Id ORDER BY material, diameter_nm", new { row.Id })
            .Select(rope => new RopePrice(Rope.Materials[rope.Material], rope.Diameter, rope.Foot))],
        session.All<BorePrice>("SELECT up_to_nm AS up_to, bore_e4 AS bore FROM bore_prices WHERE list_id = @Id ORDER BY up_to_nm", new { row.Id }),
        row.Cut,
        row.Packing,
        row.Delivery,
        Share.FromMillionths((int)row.TaxMillionths),
        (int)row.QuoteDays);

    private static long Keep(ShopSession session, PriceList list, string who)
    {
        var id = session.Insert(
            """
            INSERT INTO price_lists (valid_from, cut_e4, packing_e4, delivery_e4, tax_millionths, quote_days, made_at)
            VALUES (@ValidFrom, @Cut, @Packing, @Delivery, @Millionths, @QuoteDays, @Now)
            """,
            new { list.ValidFrom, list.Cut, list.Packing, list.Delivery, list.Tax.Millionths, list.QuoteDays, session.Now });
        session.Execute(
            "INSERT INTO rope_prices (list_id, material, diameter_nm, foot_e4) VALUES (@id, @material, @Diameter, @Foot)",
            list.Ropes.Select(rope => new { id, material = Rope.NameOf(rope.Material), rope.Diameter, rope.Foot }));
        session.Execute(
            "INSERT INTO bore_prices (list_id, up_to_nm, bore_e4) VALUES (@id, @UpTo, @Bore)",
            list.Bores.Select(bore => new { id, bore.UpTo, bore.Bore }));
        session.Record("price list", id, who, HistoryCodes.PriceListKept, after: IsoDate.Text(list.ValidFrom));
        return id;
    }

    private sealed record ListRow(long Id, DateOnly ValidFrom, Money Cut, Money Packing, Money Delivery, long TaxMillionths, long QuoteDays);
}
