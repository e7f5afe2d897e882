using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// The rules of number 1, where they differ from today's: a shop that is older than stored parts promised what they say. Reaches of screws
/// are level, pilots are those of screws that hold by their thread, a bit is the wanted one or none, a bored corner counts as a right angle,
/// and a turn round a post as part of a circle.
/// </summary>
internal static class FirstRules
{
    private static readonly string[] Codes =
    [
        "thin-wall", "near-top", "bores-close", "rope-for-post", "no-shrink", "deep-sag", "sag-to-ground", "sag-to-row-below", "no-weight", "measured-far-off",
        "bit-not-on-rack", "corner-angle", "turn-at-end", "no-screw",
    ];

    /// <summary>The tables that came with the program then, where a shop has no own.</summary>
    public static ShopTables Of(ShopTables tables)
    {
        var manila = tables.Weights.ByMaterial[RopeMaterial.Manila].Where(weight => weight.Diameter <= Length.FromInches(2)).ToList();
        return tables with
        {
            Weights = new(new Dictionary<RopeMaterial, IReadOnlyList<RopeWeight>>
            {
                [RopeMaterial.Manila] = manila,
                [RopeMaterial.Polypropylene] = tables.Weights.ByMaterial[RopeMaterial.Polypropylene],
            }),
            Rack = tables.Rack.Bits.SequenceEqual(ShopTables.Standard.Rack.Bits) ? ShopTables.FirstRack : tables.Rack,
        };
    }

    /// <summary>The job with posts whose corners count as right angles.</summary>
    public static Job Of(Job job) => job with
    {
        Lines = [.. job.Lines.Select(line => line with { Posts = [.. line.Posts.Select(post => post with { HasSquareCorner = true })] })],
    };

    /// <summary>Bores without their rake, and no screws: the wood round a bore was measured as if it were level, and screws were not looked at.</summary>
    public static IReadOnlyList<RowWork> Level(IEnumerable<RowWork> works) =>
        [.. works.Select(work => work with { Bores = [.. work.Bores.Select(bore => bore with { RakeDegrees = 0 })], Fixings = [] })];

    /// <summary>The bit of the wanted diameter, of the best kind.</summary>
    public static (Length Bit, BitChoice Choice) Choose(BitRack rack, Length wanted, Length rope) =>
        new BitRack([.. rack.Bits.Where(bit => bit.Diameter == wanted)]).Choose(wanted, rope);

    /// <summary>The warnings that there were then.</summary>
    public static IEnumerable<Warning> Of(IEnumerable<Warning> warnings) =>
        warnings.Where(warning => Codes.Contains(warning.Code) && warning.Says.Key != "WrapOverTop").Select((warning, i) => warning with { Number = i });
}
