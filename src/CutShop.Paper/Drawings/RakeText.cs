using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>How a hole lies in its post, in words: its rake, its skew, and how the rope bends at its mouths.</summary>
public static class RakeText
{
    /// <summary>Such as <c>4.2° up toward A3</c>, or that it is level to a tenth of a degree.</summary>
    public static string Of(Bore bore, PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (WayOf(bore, work) is not { } way)
            return settings.Text["Level"];
        return Rake(bore.RakeDegrees, way.IsUp, way.Toward, settings);
    }

    /// <summary>The rake of a screw's hole as it is drilled: up or down from its face toward the neighbour that the rope leaves to; null where it is level.</summary>
    public static string? Of(Fixing fixing, PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        return !fixing.IsRaked ? null : Rake(fixing.RakeDegrees, fixing.RakeDegrees > 0 == (fixing.Face.Neighbour == work.After), fixing.Face.Neighbour, settings);
    }

    /// <summary>Which way a bore at a face is skewed, and where its centre lies on that face; null where it is square to it.</summary>
    public static string? SkewOf(PostWork work, Face face, Bore? bore, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        if (PostWays.SkewOf(work, face, bore) is not (not 0 and var skew))
            return null;
        // The mark lies on the other side of the middle than the way its bit points.
        return settings.Text[skew > 0 ? "SkewRight" : "SkewLeft", Figures.Degrees(Math.Abs(skew)), settings.Figures.Lead(PostWays.BesideTheMiddle(work, face, bore).Abs())];
    }

    /// <summary>The same for the hole of a screw that is in line with its bore.</summary>
    public static string? SkewOf(Fixing fixing, PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        ArgumentNullException.ThrowIfNull(work);
        return SkewOf(work, fixing.Face, PostWays.BoreOf(work, fixing), settings);
    }

    /// <summary>How the rope bends at each mouth of a straight bore through a corner; null where it does not.</summary>
    public static string? KinkOf(Bore bore, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(bore);
        ArgumentNullException.ThrowIfNull(settings);
        return bore.KinkDegrees > 0 ? settings.Text["KinkOf", Figures.Degrees(bore.KinkDegrees)] : null;
    }

    /// <summary>Where the two screws of a join go in beside the middle of their face; null for any other screw.</summary>
    public static string? PlacesOf(Fixing fixing, PostWork work, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(settings);
        var holes = PostWays.HolesOf(work, fixing);
        if (holes.Count == 1)
            return null;
        var right = settings.Figures.Lead(holes[^1].Right);
        return holes[0].Mark == holes[^1].Mark
            ? settings.Text["ScrewsBothSides", right]
            : settings.Text["ScrewsBothSidesRaked", right, Told(holes[0].Mark), Told(holes[^1].Mark)];

        string Told(Length mark) => settings.Figures.Lead(work.Post.HeightFrom(work.Datum, mark));
    }

    /// <summary>All that is to be told of how a fixing's holes lie: rake, skew and places; nothing where they are square to the middle of their face.</summary>
    public static IEnumerable<string> HolesOf(Fixing fixing, PostWork work, PaperSettings settings) =>
        new[] { Of(fixing, work, settings), SkewOf(fixing, work, settings), PlacesOf(fixing, work, settings) }.OfType<string>();

    private static string Rake(double degrees, bool isUp, string toward, PaperSettings settings) =>
        settings.Text[isUp ? "RakeUpToward" : "RakeDownToward", Figures.Degrees(Math.Abs(degrees)), toward];

    /// <summary>
    /// Which way the rake is told, up where it can be; null where the bore is level. At a corner each bore looks to one neighbour only: the
    /// other stands square to it.
    /// </summary>
    internal static (bool IsUp, string Toward)? WayOf(Bore bore, PostWork work)
    {
        if (!bore.IsRaked)
            return null;
        var (higher, lower) = bore.RakeDegrees > 0 ? (work.After, work.Before) : (work.Before, work.After);
        return higher is not null && PostWays.MouthsOf(work, bore).Any(mouth => mouth.Face == new Face(FaceSight.Toward, higher)) ? (true, higher) : (false, lower!);
    }
}
