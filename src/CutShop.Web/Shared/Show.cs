using System.Globalization;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;

using static CutShop.Web.Shared.HostWords;

namespace CutShop.Web.Shared;

/// <summary>How the pages write dates, lengths and weights.</summary>
public static class Show
{
    /// <summary>A date as year-month-day, or a dash where there is none.</summary>
    public static string Date(DateOnly? date) => date is { } day ? IsoDate.Text(day) : "–";

    /// <summary>A moment in the shop's own time.</summary>
    public static string Moment(DateTimeOffset moment, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        return TimeZoneInfo.ConvertTime(moment, time.LocalTimeZone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }

    /// <summary>A wait, rounded up: seconds below two minutes, else minutes.</summary>
    public static string Wait(TimeSpan wait) =>
        wait <= TimeSpan.FromSeconds(1) ? FrontWords.T["OneSecond"]
        : wait < TimeSpan.FromMinutes(2) ? FrontWords.T["SomeSeconds", Math.Ceiling(wait.TotalSeconds)]
        : FrontWords.T["SomeMinutes", Math.Ceiling(wait.TotalMinutes)];

    /// <summary>The day of a moment in the shop's own time.</summary>
    public static string Day(DateTimeOffset moment, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        return IsoDate.Text(DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, time.LocalTimeZone).DateTime));
    }

    /// <summary>A length in the given unit alone. A line does not break within it.</summary>
    public static string Lead(Length length, UnitsFirst first) =>
        LengthText.Unbroken(first == UnitsFirst.FeetInches ? LengthText.FeetInches(length, 16) : LengthText.Millimetres(length));

    /// <summary>A length both ways: feet and inches, and millimetres. A line may break between the two, not within one.</summary>
    public static string Both(Length length) => Both(length, UnitsFirst.FeetInches);

    /// <summary>A length both ways, the given unit first.</summary>
    public static string Both(Length length, UnitsFirst first) => $"{Lead(length, first)} ({Other(length, first)})";

    /// <summary>A length both ways on two lines, first the unit that whoever asks has chosen: for columns of a class stacked.</summary>
    public static string Stacked(HttpContext context, Length length)
    {
        var first = PersonUnits.UnitsOf(context);
        return $"{Lead(length, first)}\n{Other(length, first)}";
    }

    /// <summary>A length both ways, first the unit that whoever asks has chosen.</summary>
    public static string Both(HttpContext context, Length length) => Both(length, PersonUnits.UnitsOf(context));

    /// <summary>A weight in pounds, or that it is not known.</summary>
    public static string Pounds(double? pounds) => pounds is { } known ? T["Pounds", known.ToString("0.0", CultureInfo.InvariantCulture)] : T["NotKnown"];

    private static string Other(Length length, UnitsFirst first) =>
        Lead(length, first == UnitsFirst.FeetInches ? UnitsFirst.Millimetres : UnitsFirst.FeetInches);
}
