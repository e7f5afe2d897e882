using System.Globalization;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>A line of a quote.</summary>
/// <param name="What">What it is for.</param>
/// <param name="Quantity">How much, in words.</param>
/// <param name="Price">The price of one.</param>
/// <param name="Unit">What the price is for: a foot, a bore, a piece, a job.</param>
/// <param name="Amount">Quantity times price, half up to the cent.</param>
public sealed record QuoteLine(string What, string Quantity, Money Price, string Unit, Money Amount);

/// <summary>A job held against a price list.</summary>
/// <param name="Lines">What is charged.</param>
/// <param name="Net">The sum of the lines.</param>
/// <param name="Tax">Tax on the sum, half up to the cent.</param>
/// <param name="Missing">What has no price; with anything here there is no quote.</param>
public sealed record Priced(IReadOnlyList<QuoteLine> Lines, Money Net, Money Tax, IReadOnlyList<string> Missing)
{
    /// <summary>Net and tax.</summary>
    public Money Total => Net + Tax;

    /// <summary>True where everything has a price.</summary>
    public bool IsWhole => Missing.Count == 0;
}

/// <summary>Works out what a job costs by a price list.</summary>
public static class Pricing
{
    /// <summary>The job's price, or what of it has none.</summary>
    public static Priced Of(JobTakeoff takeoff, PriceList prices)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(prices);
        var (lines, missing) = (new List<QuoteLine>(), new List<string>());
        AddRope(takeoff, prices, lines, missing);
        AddBores(takeoff, prices, lines, missing);
        AddCounted(lines, "Cutting, ends sealed or bound", takeoff.Pieces.Count, "piece", prices.Cut);
        if (prices.Packing > Money.Zero)
            AddCounted(lines, "Packing", 1, "job", prices.Packing);
        if (prices.Delivery > Money.Zero)
            AddCounted(lines, "Delivery", 1, "job", prices.Delivery);
        var net = lines.Aggregate(Money.Zero, (sum, line) => sum + line.Amount);
        return new(lines, net, net.ShareOf(prices.Tax), missing);
    }

    private static void AddRope(JobTakeoff takeoff, PriceList prices, List<QuoteLine> lines, List<string> missing)
    {
        foreach (var rope in takeoff.Pieces.GroupBy(piece => (piece.Rope.Material, piece.Rope.Diameter)))
        {
            var name = $"{LengthText.Brief(rope.Key.Diameter)} {Rope.NameOf(rope.Key.Material)} rope";
            var length = rope.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);
            if (prices.Ropes.FirstOrDefault(price => price.Material == rope.Key.Material && price.Diameter == rope.Key.Diameter) is { } price)
                lines.Add(new(name, $"{LengthText.Exact(length)} = {LengthText.Millimetres(length)}", price.Foot, "a foot", price.Foot.ForFeet(length)));
            else
                missing.Add(name);
        }
    }

    private static void AddBores(JobTakeoff takeoff, PriceList prices, List<QuoteLine> lines, List<string> missing)
    {
        foreach (var band in takeoff.Bores.GroupBy(bore => prices.Bores.FirstOrDefault(price => bore.Bit <= price.UpTo)).OrderBy(band => band.Key?.UpTo))
        {
            if (band.Key is { } price)
                AddCounted(lines, $"Boring, bit up to {LengthText.Brief(price.UpTo)}", band.Count(), "bore", price.Bore);
            else
                missing.AddRange(band.Select(bore => bore.Bit).Distinct().Order().Select(bit => $"a bore with a {LengthText.Brief(bit)} bit"));
        }
    }

    private static void AddCounted(List<QuoteLine> lines, string what, int count, string of, Money price) => lines.Add(new(
        what, string.Create(CultureInfo.InvariantCulture, $"{count} {of}{(count == 1 ? "" : "s")}"), price, $"a {of}", price.Times(count)));
}
