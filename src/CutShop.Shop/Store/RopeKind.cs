using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Store;

/// <summary>
/// Which rope: what keeps ropes apart in stock and in plans. A piece is cut from a coil of its own kind, and ropes of different kinds never
/// mix in a plan. It has five columns in each table that has a rope.
/// </summary>
/// <param name="Material">What it is made of.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Construction">How it is laid or plaited, such as three-strand, from the shop's own list.</param>
/// <param name="Colour">Its colour, from the shop's own list; empty where it does not matter.</param>
/// <param name="IsPreshrunk">True for natural rope that was soaked and dried; new rope and rope that is true to size are not.</param>
public sealed record RopeKind(RopeMaterial Material, Length Diameter, string Construction, string Colour = "", bool IsPreshrunk = false)
{
    /// <summary>The construction of a rope of which nothing else is said.</summary>
    public const string ThreeStrand = "three-strand";

    /// <summary>The columns of a kind in a table, to be selected or inserted.</summary>
    internal const string Columns = "material, diameter_nm, construction, colour, preshrunk";

    /// <summary>The values of those columns, by the names of the properties.</summary>
    internal const string Values = "@MaterialName, @Diameter, @Construction, @Colour, @IsPreshrunk";

    /// <summary>The material's name as it is stored.</summary>
    public string MaterialName => Rope.NameOf(Material);

    /// <summary>True for rope that shrinks when it is wet, which is new or preshrunk.</summary>
    public bool IsNatural => AsRope.IsNatural;

    /// <summary>True where neither construction nor colour is asked for.</summary>
    public bool IsPlain => Construction == ThreeStrand && Colour.Length == 0;

    /// <summary>True for coils that pieces of this kind may be cut from: of the same kind, or of any construction and colour where the pieces ask for none.</summary>
    public bool MayBeCutFrom(RopeKind coils)
    {
        ArgumentNullException.ThrowIfNull(coils);
        return coils == this || (IsPlain && coils with { Construction = Construction, Colour = Colour } == this);
    }

    /// <summary>The rope as a job has it, of no measured diameter.</summary>
    public Rope AsRope => new(Material, Diameter) { Construction = Construction, Colour = Colour.Length == 0 ? null : Colour };

    /// <summary>The kind of a rope as a job has it.</summary>
    /// <param name="rope">The rope.</param>
    /// <param name="isPreshrunk">True where it is cut from rope that was soaked and dried.</param>
    public static RopeKind Of(Rope rope, bool isPreshrunk = false)
    {
        ArgumentNullException.ThrowIfNull(rope);
        return new(rope.Material, rope.Diameter, rope.Construction ?? ThreeStrand, rope.Colour ?? "", isPreshrunk);
    }

    /// <summary>The kind that a piece is cut from.</summary>
    public static RopeKind Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return Of(piece.Rope, piece.IsPreshrunk);
    }

    /// <summary>The kind in words.</summary>
    public override string ToString()
    {
        var laid = $"{LengthText.Brief(Diameter)} {MaterialName}, {Construction}{(Colour.Length == 0 ? "" : ", " + Colour)}";
        return IsPreshrunk ? StoreReplies.Say("PreshrunkRope", laid) : laid;
    }
}
