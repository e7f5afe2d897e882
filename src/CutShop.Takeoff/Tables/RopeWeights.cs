using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Tables;

/// <summary>A published weight of one size of rope.</summary>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="PoundsPer100Feet">Weight in pounds a hundred feet.</param>
public readonly record struct RopeWeight(Length Diameter, double PoundsPer100Feet);

/// <summary>Published weights of rope by material and nominal diameter (db/tables/rope.csv names the sources).</summary>
/// <param name="ByMaterial">Weights of each covered material, by rising diameter.</param>
public sealed record RopeWeights(IReadOnlyDictionary<RopeMaterial, IReadOnlyList<RopeWeight>> ByMaterial)
{
    private const double FeetInTable = 100;

    /// <summary>
    /// Weight of a foot of rope in pounds, interpolated in the diameter squared between the table's sizes and never beyond
    /// them; null where no published figure covers the rope.
    /// </summary>
    public double? PoundsPerFoot(Rope rope)
    {
        ArgumentNullException.ThrowIfNull(rope);
        if (!ByMaterial.TryGetValue(rope.Material, out var weights))
            return null;
        for (var i = 0; i < weights.Count; i++)
        {
            if (weights[i].Diameter == rope.Diameter)
                return weights[i].PoundsPer100Feet / FeetInTable;
            if (weights[i].Diameter > rope.Diameter)
                return i == 0 ? null : Between(weights[i - 1], weights[i], rope.Diameter.Inches) / FeetInTable;
        }
        return null;
    }

    private static double Between(RopeWeight lighter, RopeWeight heavier, double diameter)
    {
        var (low, high) = (lighter.Diameter.Inches, heavier.Diameter.Inches);
        var share = ((diameter * diameter) - (low * low)) / ((high * high) - (low * low));
        return lighter.PoundsPer100Feet + (share * (heavier.PoundsPer100Feet - lighter.PoundsPer100Feet));
    }
}
