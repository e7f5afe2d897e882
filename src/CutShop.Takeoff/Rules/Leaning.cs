using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>How hard a rope pulls at its posts when somebody leans on it: to be known, and no rating.</summary>
public static class Leaning
{
    /// <summary>The push of a person, in pounds, that codes reckon a guard with: 200 lb. Source: 29 CFR 1910.29(b), IBC 1607.</summary>
    public const double PersonLb = 200;

    /// <summary>
    /// The pull along a rope in pounds: T = P A / 4 y. A weightless rope of length A between holds at a distance c, pushed in its middle square
    /// to the line between them, makes two straight halves that stand y = √(A² − c²) / 2 off that line, and each takes half of the push: P = 2 T · 2 y / A.
    /// Rope gives, so this is the most. Source: balance of forces at a point, any statics course.
    /// </summary>
    /// <param name="lengthIn">A: rope between the holds, in inches.</param>
    /// <param name="chordIn">c: straight distance between them, in inches.</param>
    /// <returns>The pull; null where the rope is straight, since none that does not give could hold a push.</returns>
    public static double? PullLb(double lengthIn, double chordIn)
    {
        var y = Math.Sqrt(Math.Max(0, (lengthIn - chordIn) * (lengthIn + chordIn))) / 2;
        return y == 0 ? null : PersonLb * lengthIn / (4 * y);
    }

    /// <summary>The pull along the rope in one section.</summary>
    public static double? PullLb(PieceSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return PullLb(section.Arc.Inches, section.Chord.Inches);
    }
}
