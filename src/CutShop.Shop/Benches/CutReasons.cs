namespace CutShop.Shop.Benches;

/// <summary>Why a cut piece is refused, as it is stored.</summary>
public static class CutReasons
{
    /// <summary>Reasons that lie in the rope itself: it is never cut from again.</summary>
    public static IReadOnlyList<string> BadRope { get; } = ["frayed", "damaged"];

    /// <summary>Reasons that lie in the piece alone: its rope is sound.</summary>
    public static IReadOnlyList<string> BadPiece { get; } = ["wrong length", "wrong rope", "bad end"];
}
