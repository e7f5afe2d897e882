using CutShop.Takeoff;

namespace CutShop.Paper;

/// <summary>A bore's rake in words: the angle and the neighbour it climbs toward.</summary>
public static class RakeText
{
    private const double Level = 0.05;

    /// <summary>Such as <c>4.2° up toward A3</c>, or that it is level to a tenth of a degree.</summary>
    public static string Of(Bore bore, PostWork work, PaperSettings settings)
    {
        if (Math.Abs(bore.RakeDegrees) < Level)
            return settings.Text.Level;
        var degrees = Figures.Degrees(Math.Abs(bore.RakeDegrees));
        var (first, second) = bore.RakeDegrees > 0 ? (work.After, work.Before) : (work.Before, work.After);
        return first is not null
            ? settings.Text.RakeUpToward(degrees, first.Mark)
            : settings.Text.RakeDownToward(degrees, second!.Mark);
    }
}
