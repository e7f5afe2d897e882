using CutShop.Paper.Words;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>A bore's rake in words: the angle, and whether it climbs or falls toward the post that it looks to.</summary>
public static class RakeText
{
    /// <summary>Such as <c>4.2° up toward A3</c>, or that it is level to a tenth of a degree.</summary>
    public static string Of(Bore bore, PostWork work, PaperSettings settings)
    {
        if (WayOf(bore, work) is not { } way)
            return settings.Text["Level"];
        var degrees = Figures.Degrees(Math.Abs(bore.RakeDegrees));
        return way.IsUp ? settings.Text["RakeUpToward", degrees, way.Toward] : settings.Text["RakeDownToward", degrees, way.Toward];
    }

    /// <summary>
    /// Which way the rake is told, up where it can be; null where the bore is level. At a corner each bore looks to one neighbour only: the
    /// other stands square to it.
    /// </summary>
    internal static (bool IsUp, string Toward)? WayOf(Bore bore, PostWork work)
    {
        if (!bore.IsRaked)
            return null;
        var (higher, lower) = bore.RakeDegrees > 0 ? (work.After, work.Before) : (work.Before, work.After);
        return higher is not null && LooksTo(bore, higher) ? (true, higher) : (false, lower!);
    }

    private static bool LooksTo(Bore bore, string neighbour) =>
        bore.Operations.Any(operation => operation.Face == new Face(FaceSight.Toward, neighbour));
}
