using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Store;

/// <summary>A rope as it is bought and hung: material, nominal diameter and construction. Ropes of different kinds never mix in a plan.</summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Construction">How it is laid, such as three-strand.</param>
public sealed record RopeKind(RopeMaterial Material, Length Diameter, string Construction)
{
    /// <summary>The construction of a rope of which nothing else is said.</summary>
    public const string ThreeStrand = "three-strand";

    /// <summary>The kind in words.</summary>
    public override string ToString() => $"{LengthText.Brief(Diameter)} {Rope.NameOf(Material)}, {Construction}";
}
