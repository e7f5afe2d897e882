using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Paper.Words;

/// <summary>A rope in words.</summary>
public static class RopeWords
{
    /// <summary>
    /// Such as <c>1 1/2 in polypropylene, measured 1 9/16 in</c>, sizes in the leading unit; with construction and colour where they are said.
    /// </summary>
    /// <param name="rope">The rope.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="figures">Writes the sizes; null for the settings' own figures.</param>
    public static string Of(Rope rope, PaperSettings settings, Figures? figures = null) => Laid(rope, settings, (figures ?? settings.Figures).Lead);

    /// <summary>By the size that it is sold as, in the unit of that size.</summary>
    public static string AsSold(Rope rope, PaperSettings settings) => Laid(rope with { Measured = null }, settings, size => LengthText.Brief(size));

    /// <summary>The rope of a piece, and that it is preshrunk where it is.</summary>
    public static string Of(Piece piece, PaperSettings settings) => Shrunk(piece.IsPreshrunk, Of(piece.Rope, settings), settings);

    /// <summary>The same with sizes in both units.</summary>
    public static string InBothUnits(Piece piece, PaperSettings settings) =>
        Shrunk(piece.IsPreshrunk, Laid(piece.Rope, settings, settings.Figures.Both), settings);

    /// <summary>Rope that is preshrunk, or any.</summary>
    public static string Shrunk(bool isPreshrunk, string rope, PaperSettings settings) => isPreshrunk ? settings.Text["PreshrunkRope", rope] : rope;

    private static string Laid(Rope rope, PaperSettings settings, Func<Length, string> figure)
    {
        var name = settings.Text.RopeName(
            settings.Text.Material(rope.Material), figure(rope.Diameter), rope.Measured is { } measured ? figure(measured) : null);
        return string.Join(", ", ((string?[])[name, rope.Construction, rope.Colour]).OfType<string>());
    }
}
