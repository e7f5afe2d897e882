using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Solids;

/// <summary>
/// The part of a post's height that a row of rope covers on the outside: turns that touch each other, from the lowest to the highest, or a
/// rope that passes or ends beside the post.
/// </summary>
/// <param name="Row">The mark of its row.</param>
/// <param name="Low">Its lower edge, above ground.</param>
/// <param name="High">Its upper edge.</param>
/// <param name="HalfTurns">How many turns there are, in halves; zero for a rope beside the post.</param>
public readonly record struct SolidWrap(string Row, Length Low, Length High, int HalfTurns)
{
    /// <summary>N turns of a rope d cover N d of the height, centred on the row's height; a rope beside the post covers d.</summary>
    public static SolidWrap At(string row, Length height, int halfTurns, Length rope)
    {
        var half = halfTurns == 0 ? rope / 2 : rope * halfTurns / 4;
        return new(row, height - half, height + half, halfTurns);
    }

    /// <summary>How many turns there are.</summary>
    public decimal Turns => HalfTurns / 2m;

    /// <summary>True where both cover a part of the height; where they only touch they do not.</summary>
    public bool Overlaps(Length low, Length high) => Low < high && low < High;
}
