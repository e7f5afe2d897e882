using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>Where a hole is marked on a face of a post.</summary>
public static class FaceMark
{
    /// <summary>
    /// Height of a mark on a face above the ground: the hole's height is at the post's centre, and a raked hole comes out half
    /// the post's width times its slope higher uphill and lower downhill.
    /// </summary>
    /// <param name="height">The hole's height at the post's centre.</param>
    /// <param name="across">W, the post's width.</param>
    /// <param name="rakeDegrees">The hole's rake in degrees, positive uphill in the line's direction.</param>
    /// <param name="along">1 for a face that looks along the line, -1 for one that looks back, 0 for a side.</param>
    public static Length Height(Length height, Length across, double rakeDegrees, int along) => rakeDegrees == 0
        ? height
        : height + Length.RoundedFromInches(along * Math.Tan(rakeDegrees * Math.PI / 180) * across.Inches / 2);

    /// <summary>How much a raked hole rises or falls over the post's width, W tan(rake), to set a guide by: what lies between its marks on both faces.</summary>
    /// <param name="across">W, the post's width.</param>
    /// <param name="rakeDegrees">The hole's rake in degrees.</param>
    public static Length RiseOver(Length across, double rakeDegrees) => Height(Length.Zero, across, Math.Abs(rakeDegrees), 1) - Height(Length.Zero, across, Math.Abs(rakeDegrees), -1);
}
