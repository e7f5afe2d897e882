using CutShop.Takeoff.Tables;

namespace CutShop.Paper.Words;

/// <summary>A rope in words.</summary>
public static class RopeWords
{
    /// <summary>Such as <c>1 1/2 in polypropylene, measured 1 9/16 in</c>, sizes in the leading unit.</summary>
    public static string Of(Rope rope, PaperSettings settings) => settings.Text.RopeName(
        settings.Text.Material(rope.Material),
        settings.Figures.Lead(rope.Diameter),
        rope.Measured is { } measured ? settings.Figures.Lead(measured) : null);

    /// <summary>The same with sizes in both units.</summary>
    public static string InBothUnits(Rope rope, PaperSettings settings) => settings.Text.RopeName(
        settings.Text.Material(rope.Material),
        settings.Figures.Both(rope.Diameter),
        rope.Measured is { } measured ? settings.Figures.Both(measured) : null);
}
