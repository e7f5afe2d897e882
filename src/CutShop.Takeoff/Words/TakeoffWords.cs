namespace CutShop.Takeoff;

/// <summary>
/// What the takeoff says: its warnings, faces, screws, materials and reasons for a bit; they are in the .resx files beside it. Stored parts
/// hold keys of warnings: a key that was ever written keeps its meaning.
/// </summary>
public static class TakeoffWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(TakeoffWords));

    /// <summary>A sentence of the takeoff.</summary>
    internal static Sentence Say(string key, params IReadOnlyList<object?> values) => new(List, key, values);

    /// <summary>What a rope material is called.</summary>
    public static Sentence NameOf(RopeMaterial material) => Say(material switch
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
}
