using System.Globalization;

namespace CutShop.Shop.Maintenance;

/// <summary>Which backups are kept: the newest of each of the last days, weeks and months that have one.</summary>
/// <param name="Days">How many days.</param>
/// <param name="Weeks">How many weeks, Monday to Sunday.</param>
/// <param name="Months">How many months.</param>
public sealed record KeepRule(int Days, int Weeks, int Months)
{
    /// <summary>7 days, 5 weeks and 12 months (common practice, no source).</summary>
    public static KeepRule Default { get; } = new(7, 5, 12);

    /// <summary>Which of some backups are kept. The newest always is.</summary>
    /// <param name="made">When each was made.</param>
    /// <param name="zone">Where days begin and end.</param>
    public IReadOnlySet<DateTimeOffset> Keep(IEnumerable<DateTimeOffset> made, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(made);
        var newestFirst = made.OrderDescending().ToList();
        return newestFirst.Take(1)
            .Concat(Newest(Days, day => day.DayNumber))
            .Concat(Newest(Weeks, day => ISOWeek.GetYear(day) * 100 + ISOWeek.GetWeekOfYear(day)))
            .Concat(Newest(Months, day => day.Year * 100 + day.Month))
            .ToHashSet();

        IEnumerable<DateTimeOffset> Newest(int count, Func<DateOnly, int> span) =>
            newestFirst.DistinctBy(moment => span(DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, zone).DateTime))).Take(count);
    }
}
