using CutShop.Shop.Store;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Orders;

/// <summary>A line of a quote, in English, as it is stored.</summary>
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
public sealed record Priced(IReadOnlyList<QuoteLine> Lines, Money Net, Money Tax, IReadOnlyList<Sentence> Missing)
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
        return Of(takeoff.Pieces, takeoff.Bores, prices);
    }

    /// <summary>The same of a job's pieces and bores.</summary>
    internal static Priced Of(IReadOnlyCollection<Piece> pieces, IEnumerable<Bore> bores, PriceList prices)
    {
        ArgumentNullException.ThrowIfNull(prices);
        var (lines, missing) = (new List<QuoteLine>(), new List<Sentence>());
        AddRope(pieces, prices, lines, missing);
        AddBores(bores, prices, lines, missing);
        AddPieces(lines, pieces.Count, prices.Cut);
        if (prices.Packing > Money.Zero)
            AddForJob(lines, "Packing", prices.Packing);
        if (prices.Delivery > Money.Zero)
            AddForJob(lines, "Delivery", prices.Delivery);
        var net = lines.Aggregate(Money.Zero, (sum, line) => sum + line.Amount);
        return new(lines, net, net.ShareOf(prices.Tax), missing);
    }

    private static void AddRope(IEnumerable<Piece> pieces, PriceList prices, List<QuoteLine> lines, List<Sentence> missing)
    {
        foreach (var rope in pieces.GroupBy(piece => (piece.Rope.Material, piece.Rope.Diameter)))
        {
            var name = OrderReplies.Of("RopeName", LengthText.Brief(rope.Key.Diameter), Rope.NameOf(rope.Key.Material));
            var length = rope.Aggregate(Length.Zero, (sum, piece) => sum + piece.Cut);
            if (prices.Ropes.FirstOrDefault(price => price.Material == rope.Key.Material && price.Diameter == rope.Key.Diameter) is { } price)
                lines.Add(Line(name, OrderReplies.Of("RopeLength", LengthText.Exact(length), LengthText.Millimetres(length)), price.Foot, "PerFoot", price.Foot.ForFeet(length)));
            else
                missing.Add(name);
        }
    }

    private static void AddBores(IEnumerable<Bore> bores, PriceList prices, List<QuoteLine> lines, List<Sentence> missing)
    {
        foreach (var band in bores.Where(bore => bore.IsMadeInShop).GroupBy(bore => prices.Bores.FirstOrDefault(price => bore.Bit <= price.UpTo)).OrderBy(band => band.Key?.UpTo))
        {
            if (band.Key is { } price)
                AddBand(lines, price, band.Count());
            else
                missing.AddRange(band.Select(bore => bore.Bit).Distinct().Order().Select(bit => OrderReplies.Of("BoreWithBit", LengthText.Brief(bit))));
        }
    }

    private static void AddBand(List<QuoteLine> lines, BorePrice price, int bores) => lines.Add(Line(
        OrderReplies.Of("Boring", LengthText.Brief(price.UpTo)), Counted(bores, "OneBore", "SomeBores"), price.Bore, "PerBore", price.Bore.Times(bores)));

    private static void AddPieces(List<QuoteLine> lines, int pieces, Money price) =>
        lines.Add(Line(OrderReplies.Of("Cutting"), Counted(pieces, "OnePiece", "SomePieces"), price, "PerPiece", price.Times(pieces)));

    private static void AddForJob(List<QuoteLine> lines, string what, Money price) =>
        lines.Add(Line(OrderReplies.Of(what), OrderReplies.Of("OneJob"), price, "PerJob", price.Times(1)));

    private static Sentence Counted(int count, string one, string some) => count == 1 ? OrderReplies.Of(one) : OrderReplies.Of(some, count);

    private static QuoteLine Line(Sentence what, Sentence quantity, Money price, string unit, Money amount) =>
        new(what.ToString(), quantity.ToString(), price, OrderReplies.Of(unit).ToString(), amount);
}
