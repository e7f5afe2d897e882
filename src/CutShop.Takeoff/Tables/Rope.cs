using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Tables;

/// <summary>What a rope is made of.</summary>
public enum RopeMaterial
{
    /// <summary>Polypropylene: synthetic, true to size.</summary>
    Polypropylene,

    /// <summary>Polyester: synthetic, true to size.</summary>
    Polyester,

    /// <summary>Nylon: synthetic, true to size.</summary>
    Nylon,

    /// <summary>Polyethylene: synthetic, true to size.</summary>
    Polyethylene,

    /// <summary>Manila: natural.</summary>
    Manila,

    /// <summary>Sisal: natural.</summary>
    Sisal,

    /// <summary>Hemp: natural.</summary>
    Hemp,

    /// <summary>Jute: natural.</summary>
    Jute,

    /// <summary>Cotton: natural.</summary>
    Cotton,
}

/// <summary>A rope as ordered, and as measured on the coil in hand.</summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Measured">Diameter measured on the coil, or null.</param>
public sealed record Rope(RopeMaterial Material, Length Diameter, Length? Measured = null)
{
    /// <summary>How it is laid or plaited, from the shop's own list; null where it does not matter.</summary>
    public string? Construction { get; init; }

    /// <summary>Its colour, from the shop's own list; null where it does not matter.</summary>
    public string? Colour { get; init; }

    /// <summary>What a rope material is called.</summary>
    public static Sentence WordOf(RopeMaterial material) => TakeoffWords.Of(material switch
    {
        RopeMaterial.Polypropylene => "Polypropylene",
        RopeMaterial.Polyester => "Polyester",
        RopeMaterial.Nylon => "Nylon",
        RopeMaterial.Polyethylene => "Polyethylene",
        RopeMaterial.Manila => "Manila",
        RopeMaterial.Sisal => "Sisal",
        RopeMaterial.Hemp => "Hemp",
        RopeMaterial.Jute => "Jute",
        RopeMaterial.Cotton => "Cotton",
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, message: null),
    });

    /// <summary>The diameter that geometry uses: measured if there is one, else nominal.</summary>
    public Length Across => Measured ?? Diameter;

    /// <summary>True for fibre that grew: it runs oversize, shrinks when wet and does not melt.</summary>
    public bool IsNatural => Material >= RopeMaterial.Manila;

    /// <summary>The material's name as a job file writes it.</summary>
    public string MaterialName => NameOf(Material);

    /// <summary>Every material by its name as a job file writes it.</summary>
    public static IReadOnlyDictionary<string, RopeMaterial> Materials { get; } = Enum.GetValues<RopeMaterial>().ToDictionary(NameOf);

    /// <summary>A material's name as a job file writes it.</summary>
    public static string NameOf(RopeMaterial material) => material switch
    {
        RopeMaterial.Polypropylene => "polypropylene",
        RopeMaterial.Polyester => "polyester",
        RopeMaterial.Nylon => "nylon",
        RopeMaterial.Polyethylene => "polyethylene",
        RopeMaterial.Manila => "manila",
        RopeMaterial.Sisal => "sisal",
        RopeMaterial.Hemp => "hemp",
        RopeMaterial.Jute => "jute",
        RopeMaterial.Cotton => "cotton",
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, message: null),
    };
}
