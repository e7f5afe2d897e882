using System.Globalization;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Tables;

/// <summary>The tables a takeoff looks things up in: rope weights, screws, the rack of bits, and the posts' wood.</summary>
/// <param name="Weights">Published rope weights.</param>
/// <param name="Screws">The catalogue of screws.</param>
/// <param name="Rack">The shop's rack of bits.</param>
/// <param name="WoodGravity">Specific gravity of the posts' wood, which the pilot holes depend on.</param>
public sealed record ShopTables(RopeWeights Weights, ScrewCatalogue Screws, BitRack Rack, decimal WoodGravity)
{
    /// <summary>Southern pine: specific gravity 0.55 in the National Design Specification's table of wood species.</summary>
    public const decimal SouthernPineGravity = 0.55m;

    private static readonly Lazy<ShopTables> LazyStandard = new(ReadStandard);
    private static readonly Lazy<BitRack> LazyFirstRack = new(() => ReadRack("bits-of-rules-1.csv"));

    /// <summary>The tables that come with the program, from db/tables.</summary>
    public static ShopTables Standard => LazyStandard.Value;

    /// <summary>The rack that came with the program under its first rules.</summary>
    public static BitRack FirstRack => LazyFirstRack.Value;

    private static BitRack ReadRack(string name) =>
        new([.. Csv.ReadResource(name).Select(row => new RackBit(BitKinds[row["kind"]], InchesOf(row["diameter_in"])))]);

    private static ShopTables ReadStandard() => new(
        ReadWeights(Csv.ReadResource("rope.csv")),
        new ScrewCatalogue([.. Csv.ReadResource("screws.csv").Select(ReadScrew)]),
        ReadRack("bits.csv"),
        SouthernPineGravity);

    private static readonly Dictionary<string, BitKind> BitKinds = new()
    {
        ["threaded-forstner"] = BitKind.ThreadedForstner,
        ["spade"] = BitKind.Spade,
        ["hole-saw"] = BitKind.HoleSaw,
    };

    private static readonly Dictionary<string, ScrewKind> ScrewKinds = new()
    {
        ["deck"] = ScrewKind.DeckScrew,
        ["lag"] = ScrewKind.LagScrew,
    };

    private static RopeWeights ReadWeights(IReadOnlyList<IReadOnlyDictionary<string, string>> rows)
    {
        var (nominal, heaviest) = (Column("manila_nominal_lb_per_100ft"), Column("manila_heaviest_lb_per_100ft"));
        return new(new Dictionary<RopeMaterial, IReadOnlyList<RopeWeight>>
        {
            // Larger sizes have no published nominal weight.
            [RopeMaterial.Manila] = [.. nominal, .. heaviest.Where(weight => weight.Diameter > nominal[^1].Diameter)],
            [RopeMaterial.Polypropylene] = Column("polypropylene_lb_per_100ft"),
            [RopeMaterial.Nylon] = Column("nylon_lb_per_100ft"),
        });

        List<RopeWeight> Column(string name) =>
            [.. rows.Where(row => row[name].Length > 0).Select(row => new RopeWeight(InchesOf(row["diameter_in"]), double.Parse(row[name], CultureInfo.InvariantCulture)))];
    }

    private static Screw ReadScrew(IReadOnlyDictionary<string, string> row) => new(
        ScrewKinds[row["kind"]],
        row["size"],
        InchesOf(row["length_in"]),
        InchesOf(row["shank_in"]),
        InchesOf(row["root_in"]),
        InchesOf(row["head_in"]),
        InchesOf(row["head_height_in"]),
        InchesOf(row["rope_up_to_in"]),
        InchesOf(row["wrap_rope_up_to_in"]));

    private static Length InchesOf(string number) => LengthText.Parse(number + " in").OrThrow();
}
