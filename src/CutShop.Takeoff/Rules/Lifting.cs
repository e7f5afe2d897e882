using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>What one person lifts.</summary>
public static class Lifting
{
    /// <summary>The heaviest that one person lifts, in pounds, in the best posture. Source: NIOSH 94-110.</summary>
    public const double OnePersonLb = 51;

    /// <summary>True where two people lift it; a weight that is not known is not over it.</summary>
    public static bool TakesTwo(double? pounds) => pounds > OnePersonLb;

    /// <summary>True where two people lift the cut piece.</summary>
    public static bool TakesTwo(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return TakesTwo(piece.WeightLb);
    }
}
