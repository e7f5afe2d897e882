namespace CutShop.Takeoff;

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

    /// <summary>
    /// Level distance between a rope's two supports: a bored post holds it at its face, a wrapped one at its centre line,
    /// the tangent point abeam of the centre.
    /// </summary>
    public static Length BetweenSupports(Section section, Post before, Treatment atBefore, Post after, Treatment atAfter) =>
        Centres(section, before, after) - Setback(before, atBefore) - Setback(after, atAfter);

    /// <summary>Slope of the ground along a section: rise over the distance of the post centres.</summary>
    public static double Slope(Section section, Post before, Post after) =>
        section.Rise.Inches / Centres(section, before, after).Inches;

    private static Length Setback(Post post, Treatment treatment) =>
        treatment.Kind == TreatmentKind.Wrap ? Length.Zero : post.Across / 2;
}
