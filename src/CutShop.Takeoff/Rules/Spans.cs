using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>How far apart a rope's holds are in a section. Source: plane trigonometry; docs/job-file.md has the figures.</summary>
public static class Spans
{
    /// <summary>Level distance from post centre to post centre, where every bore lies along its section.</summary>
    public static Length Centres(Section section, Post before, Post after)
    {
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return section.Spacing == SpacingKind.Centres ? section.Width : section.Width + ((before.Across + after.Across) / 2);
    }

    /// <summary>What lies between two posts for one row.</summary>
    /// <param name="section">The section as the row has it.</param>
    /// <param name="before">The first post.</param>
    /// <param name="atBefore">Where the rope is held there.</param>
    /// <param name="after">The second post.</param>
    /// <param name="atAfter">Where the rope is held there.</param>
    internal static SectionSpan Between(Section section, Post before, Hold atBefore, Post after, Hold atAfter)
    {
        var (centres, clear, level) = atBefore.IsPlain && atAfter.IsPlain
            ? Plain(section, before, atBefore, after, atAfter)
            : Turned(section, before, atBefore, after, atAfter);
        var climb = (section.Rise + atAfter.Height - atBefore.Height).Inches;
        var slope = climb / centres.Inches;
        var raked = (atBefore.IsLevel ? Length.Zero : before.Across) + (atAfter.IsLevel ? Length.Zero : after.Across);
        return new(centres, clear, level, climb * (1 - (raked.Inches / 2 / centres.Inches)), slope);
    }

    /// <summary>Where every bore lies along the section, lengths add up to the nanometre.</summary>
    private static (Length Centres, Length Clear, Length Level) Plain(Section section, Post before, Hold atBefore, Post after, Hold atAfter)
    {
        var faces = (before.Across + after.Across) / 2;
        var (centres, clear) = section.Spacing switch
        {
            SpacingKind.Centres => (section.Width, section.Width - faces),
            SpacingKind.Clear => (section.Width + faces, section.Width),
            _ => throw new ArgumentOutOfRangeException(nameof(section), section.Spacing, message: null),
        };
        var toCentre = (atBefore.Kind == HoldKind.Centre ? before.Across : Length.Zero) + (atAfter.Kind == HoldKind.Centre ? after.Across : Length.Zero);
        var level = section.Spacing == SpacingKind.Clear ? clear + (toCentre / 2) : centres - ((before.Across + after.Across - toCentre) / 2);
        return (centres, clear, level - atBefore.Reach - atAfter.Reach);
    }

    /// <summary>
    /// With e from a centre to its hold, m to its mouth, and t1, t2 the turns at posts that the rope goes straight through:
    /// a² = (C − e1 cos(t1/2) − e2 cos(t2/2))² + (e1 sin(t1/2) − e2 sin(t2/2))², and the same with m for the clear distance.
    /// </summary>
    private static (Length Centres, Length Clear, Length Level) Turned(Section section, Post before, Hold atBefore, Post after, Hold atAfter)
    {
        var (along, aside) = Parts(atBefore.Mouth(before), atBefore.HalfTurn, atAfter.Mouth(after), atAfter.HalfTurn);
        var centres = section.Spacing == SpacingKind.Centres
            ? section.Width
            : Length.RoundedFromInches(along + Math.Sqrt(Math.Max((section.Width.Inches * section.Width.Inches) - (aside * aside), 0)));
        var clear = section.Spacing == SpacingKind.Clear ? section.Width : Length.RoundedFromInches(Size(centres.Inches - along, aside));
        var (dx, dy) = atBefore.Kind == HoldKind.Mouth && atAfter.Kind == HoldKind.Mouth ? (along, aside) : Parts(atBefore.FromCentre(before), atBefore.HalfTurn, atAfter.FromCentre(after), atAfter.HalfTurn);
        // A sign is kept, so that posts which are too close are seen.
        var level = centres.Inches - dx;
        return (centres, clear, Length.RoundedFromInches(level > 0 ? Size(level, dy) : level));
    }

    private static double Size(double x, double y) => Math.Sqrt((x * x) + (y * y));

    private static (double Along, double Aside) Parts(double first, double firstTurn, double second, double secondTurn)
    {
        var ((sine1, cosine1), (sine2, cosine2)) = (OfTurn(firstTurn), OfTurn(secondTurn));
        return ((first * cosine1) + (second * cosine2), (first * sine1) - (second * sine2));

        // Most bores lie along their section.
        static (double Sine, double Cosine) OfTurn(double turn) => turn == 0 ? (0, 1) : Math.SinCos(turn);
    }
}
