namespace CutShop.Takeoff.Words;

/// <summary>
/// What the takeoff says: its warnings, faces, screws, materials and reasons for a bit; they are in the .resx files beside it. Stored parts
/// hold keys of warnings: a key that was ever written keeps its meaning, such as "CornerNotSquare", which no rule uses any more.
/// </summary>
public static class TakeoffWords
{
    /// <summary>The words.</summary>
    public static WordList List { get; } = new(typeof(TakeoffWords));

    /// <summary>A sentence of the takeoff.</summary>
    internal static Sentence Of(string key, params IReadOnlyList<object?> values) => new(List, key, values);
}
