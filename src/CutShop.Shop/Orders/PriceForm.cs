using System.Globalization;
using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>A price list as typed. Rows left empty do not count.</summary>
/// <param name="ValidFrom">The first day it is valid.</param>
/// <param name="Cut">A piece cut.</param>
/// <param name="Packing">Packing, a job.</param>
/// <param name="Delivery">Delivery, a job.</param>
/// <param name="Tax">The share of tax.</param>
/// <param name="QuoteDays">Days a quote is valid.</param>
/// <param name="Ropes">Prices of rope.</param>
/// <param name="Bores">Prices of bores.</param>
public sealed record PriceForm(
    string ValidFrom,
    string Cut,
    string Packing,
    string Delivery,
    string Tax,
    string QuoteDays,
    IReadOnlyList<RopePriceTyped> Ropes,
    IReadOnlyList<BorePriceTyped> Bores)
{
    private const int MostQuoteDays = 365;

    /// <summary>A form that starts from a list, or empty.</summary>
    public static PriceForm From(PriceList? list, DateOnly day) => list is null
        ? new(IsoDate.Text(day), "", "0", "0", "0%", "30", [], [])
        : new(
            IsoDate.Text(day),
            list.Cut.ToString(),
            list.Packing.ToString(),
            list.Delivery.ToString(),
            list.Tax.ToString(),
            list.QuoteDays.ToString(CultureInfo.InvariantCulture),
            [.. list.Ropes.Select(rope => new RopePriceTyped(Rope.NameOf(rope.Material), LengthText.Brief(rope.Diameter), rope.Foot.ToString()))],
            [.. list.Bores.Select(bore => new BorePriceTyped(LengthText.Brief(bore.UpTo), bore.Bore.ToString()))]);

    /// <summary>The list, or null and what is wrong, by field.</summary>
    /// <param name="currency">The shop's sign, which may stand before or after an amount.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public PriceList? Read(string currency, IDictionary<string, Sentence> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        var day = Take("validFrom", ParseDay(ValidFrom));
        var (cut, packing, delivery) = (Take("cut", Amount(Cut)), Take("packing", Amount(Packing)), Take("delivery", Amount(Delivery)));
        var tax = Take("tax", Share.Parse(TypedLength.IsBare(Tax.Trim()) ? Tax.Trim() + "%" : Tax));
        var days = Take("quoteDays", ParseDays(QuoteDays));
        var ropes = new Dictionary<(RopeMaterial, Length), RopePrice>();
        foreach (var (i, typed) in Ropes.Index().Where(row => !row.Item.IsEmpty))
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"ropes[{i}].");
            var material = Take(at + "material", Rope.Materials.TryGetValue(typed.Material, out var known) ? Parsed.Good(known) : Parsed.Bad<RopeMaterial>(OrderReplies.Of("AcceptedMaterial")));
            var diameter = Take(at + "diameter", ParseSize(typed.Diameter));
            var foot = Take(at + "foot", Amount(typed.Foot));
            if (!ropes.TryAdd((material, diameter), new(material, diameter, foot)))
                problems.TryAdd(at + "diameter", OrderReplies.Of("RopeListedTwice"));
        }
        var bores = new SortedDictionary<Length, BorePrice>();
        foreach (var (i, typed) in Bores.Index().Where(row => !row.Item.IsEmpty))
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"bores[{i}].");
            var upTo = Take(at + "upTo", ParseSize(typed.UpTo));
            var bore = Take(at + "bore", Amount(typed.Bore));
            if (!bores.TryAdd(upTo, new(upTo, bore)))
                problems.TryAdd(at + "upTo", OrderReplies.Of("SizeListedTwice"));
        }
        return problems.Count > 0 ? null : new(0, day, [.. ropes.Values], [.. bores.Values], cut, packing, delivery, tax, days);

        Parsed<Money> Amount(string text) => Money.Parse(WithoutSign(text.Trim(), currency.Trim()));

        T Take<T>(string field, Parsed<T> parsed)
        {
            if (parsed.IsGood)
                return parsed.Value;
            problems[field] = parsed.Reason!;
            return default!;
        }
    }

    private static Parsed<DateOnly> ParseDay(string text) =>
        IsoDate.Find(text) is { } day
            ? Parsed.Good(day)
            : Parsed.Bad<DateOnly>(OrderReplies.Of("AcceptedDate"));

    private static Parsed<int> ParseDays(string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days is >= 1 and <= MostQuoteDays
            ? Parsed.Good(days)
            : Parsed.Bad<int>(OrderReplies.Of("AcceptedDays", MostQuoteDays));

    private static string WithoutSign(string text, string sign) =>
        sign.Length == 0 ? text
        : text.StartsWith(sign, StringComparison.Ordinal) ? text[sign.Length..]
        : text.EndsWith(sign, StringComparison.Ordinal) ? text[..^sign.Length]
        : text;

    private static Parsed<Length> ParseSize(string text)
    {
        var parsed = TypedLength.Diameter(text);
        return parsed.IsGood && !parsed.Value.IsPositive ? Parsed.Bad<Length>(OrderReplies.Of("AcceptedSize")) : parsed;
    }
}

/// <summary>A price of rope as typed.</summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Foot">A foot of it.</param>
public sealed record RopePriceTyped(string Material, string Diameter, string Foot)
{
    /// <summary>True where no size and no price were typed.</summary>
    public bool IsEmpty => Diameter.Trim().Length + Foot.Trim().Length == 0;
}

/// <summary>A price of a bore as typed.</summary>
/// <param name="UpTo">The largest bit of the band.</param>
/// <param name="Bore">One bore.</param>
public sealed record BorePriceTyped(string UpTo, string Bore)
{
    /// <summary>True where nothing was typed.</summary>
    public bool IsEmpty => UpTo.Trim().Length + Bore.Trim().Length == 0;
}
