using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>How shallow and how deep a rope may hang.</summary>
public static class SagLimit
{
    /// <summary>True where a sag is over half the height of its row: the takeoff warns of it (common practice, no source).</summary>
    public static bool IsDeep(Length sag, Length rowHeight) => sag * 2 > rowHeight;

    /// <summary>Height of the underside of a hanging rope over the line of the ground below its middle.</summary>
    public static Length Underside(Length rowHeight, Length sag, Rope rope)
    {
        ArgumentNullException.ThrowIfNull(rope);
        return rowHeight - sag - (rope.Across / 2);
    }

    /// <summary>Height of the upper side of a hanging rope, likewise.</summary>
    public static Length Upside(Length rowHeight, Length sag, Rope rope)
    {
        ArgumentNullException.ThrowIfNull(rope);
        return rowHeight - sag + (rope.Across / 2);
    }

    /// <summary>
    /// The shallowest sag that a rope may be given in place of the planned one: half of it. A shallow rope pulls at its posts in inverse
    /// proportion to its sag, H = w a² / 8 s, so it then pulls twice as hard as planned (the formula: any statics course on cables; the
    /// half: common practice, no source).
    /// </summary>
    public static Length Least(Length planned) => planned / 2;

    /// <summary>The deepest sag of which the takeoff would not warn; the planned one where that is deeper, since it was accepted.</summary>
    /// <param name="pieces">The pieces that hang beside it, or all of the job.</param>
    /// <param name="piece">The piece.</param>
    /// <param name="index">Which of its sections, from 0.</param>
    public static Length Most(IEnumerable<Piece> pieces, Piece piece, int index)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(piece);
        var place = piece.First + index;
        var below = pieces
            .Where(other => other.Line == piece.Line && other.Height < piece.Height && other.First <= place && other.Last > place)
            .MaxBy(other => other.Height);
        var most = piece.Height / 2;
        if (below is not null)
        {
            var free = Underside(piece.Height, Length.Zero, piece.Rope) - Upside(below.Height, below.Sections[place - below.First].Sag, below.Rope);
            most = Length.Min(most, free - Length.FromNanometres(1));
        }
        return Length.Max(most, piece.Sections[index].Sag);
    }
}
