using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Stock;

/// <summary>Kinds of bit as the database and the forms write them.</summary>
public static class BitWords
{
    private static readonly Dictionary<string, BitKind> Kinds = new()
    {
        ["threaded-forstner"] = BitKind.ThreadedForstner,
        ["spade"] = BitKind.Spade,
        ["hole-saw"] = BitKind.HoleSaw,
    };

    /// <summary>The words, best bit first.</summary>
    public static IReadOnlyCollection<string> All => Kinds.Keys;

    /// <summary>The kind with this word, or null.</summary>
    public static BitKind? KindNamed(string word) => Kinds.TryGetValue(word, out var kind) ? kind : null;

    /// <summary>A kind's word.</summary>
    public static string Of(BitKind kind) => Kinds.First(pair => pair.Value == kind).Key;
}
