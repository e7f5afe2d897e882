using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>Where a rope is held in a section, and how far apart.</summary>
public static class Spans
{
    /// <summary>Level distance from post centre to post centre.</summary>
    public static Length Centres(Section section, Post before, Post after) => section.Spacing switch
    {
        SpacingKind.Centres => section.Width,
        SpacingKind.Clear => section.Width + ((before.Across + after.Across) / 2),
        _ => throw new ArgumentOutOfRangeException(nameof(section), section.Spacing, message: null),
    };

    /// <summary>Level distance from post face to post face.</summary>
    public static Length Clear(Section section, Post before, Post after) => section.Spacing switch
    {
        SpacingKind.Centres => section.Width - ((before.Across + after.Across) / 2),
        SpacingKind.Clear => section.Width,
        _ => throw new ArgumentOutOfRangeException(nameof(section), section.Spacing, message: null),
    };

    /// <summary>
    /// Level distance between a rope's two supports: a bored post holds it at its face, a wrapped one at its centre line,
    /// the tangent point abeam of the centre.
    /// </summary>
    public static Length BetweenSupports(Section section, Post before, Treatment atBefore, Post after, Treatment atAfter)
    {
        var (toCentreBefore, toCentreAfter) = (IsAtCentre(atBefore), IsAtCentre(atAfter));
        return section.Spacing switch
        {
            SpacingKind.Clear => section.Width + (WidthsWhere(toCentreBefore, before, toCentreAfter, after) / 2),
            SpacingKind.Centres => section.Width - (WidthsWhere(!toCentreBefore, before, !toCentreAfter, after) / 2),
            _ => throw new ArgumentOutOfRangeException(nameof(section), section.Spacing, message: null),
        };
    }

    /// <summary>Slope of the ground along a section: rise over the distance of the post centres.</summary>
    public static double Slope(Section section, Post before, Post after) =>
        section.Rise.Inches / Centres(section, before, after).Inches;

    private static bool IsAtCentre(Treatment treatment) => treatment.Kind == TreatmentKind.Wrap;

    private static Length WidthsWhere(bool takeBefore, Post before, bool takeAfter, Post after) =>
        (takeBefore ? before.Across : Length.Zero) + (takeAfter ? after.Across : Length.Zero);
}
