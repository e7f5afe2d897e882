namespace CutShop.Shop.Tests.Maintenance;

public sealed class KeepRuleTests
{
    private static readonly TimeZoneInfo Utc = TimeZoneInfo.Utc;

    /// <summary>A backup a night, from 1 January 2025 to 30 June 2027, a Wednesday.</summary>
    private static readonly IReadOnlyList<DateTimeOffset> Nights =
        [.. Enumerable.Range(0, 911).Select(day => new DateTimeOffset(2025, 1, 1, 2, 30, 0, TimeSpan.Zero).AddDays(day))];

    [Fact]
    public void Of_a_backup_a_night_seven_days_five_weeks_and_twelve_months_are_kept()
    {
        var kept = KeepRule.Default.Keep(Nights, Utc).Order().Select(moment => moment.ToString("yyyy-MM-dd", null));
        Assert.Equal(
            [
                // The last day of each month, then of each week, then each day, counted on a calendar.
                "2026-07-31", "2026-08-31", "2026-09-30", "2026-10-31", "2026-11-30", "2026-12-31", "2027-01-31", "2027-02-28", "2027-03-31", "2027-04-30", "2027-05-31",
                "2027-06-06", "2027-06-13", "2027-06-20",
                "2027-06-24", "2027-06-25", "2027-06-26", "2027-06-27", "2027-06-28", "2027-06-29", "2027-06-30",
            ],
            kept);
    }

    [Fact]
    public void The_newest_of_a_day_is_kept()
    {
        var morning = new DateTimeOffset(2027, 6, 30, 2, 30, 0, TimeSpan.Zero);
        Assert.Equal([morning.AddHours(9)], new KeepRule(1, 0, 0).Keep([morning, morning.AddHours(9), morning.AddHours(3)], Utc));
    }

    [Fact]
    public void A_rule_of_nothing_keeps_the_newest() => Assert.Equal([Nights[^1]], new KeepRule(0, 0, 0).Keep(Nights, Utc));

    [Fact]
    public void A_shop_that_is_shut_for_long_keeps_what_it_has()
    {
        DateTimeOffset[] few = [Nights[0], Nights[200], Nights[400]];
        Assert.Equal(few, KeepRule.Default.Keep(few, Utc).Order());
    }

    [Fact]
    public void Days_are_the_shops()
    {
        var zone = TimeZoneInfo.CreateCustomTimeZone("west", TimeSpan.FromHours(-8), "west", "west");
        var evening = new DateTimeOffset(2027, 6, 30, 20, 0, 0, TimeSpan.FromHours(-8));
        Assert.Equal([evening.AddHours(3)], new KeepRule(1, 0, 0).Keep([evening, evening.AddHours(3)], zone));
        Assert.Equal(2, new KeepRule(2, 0, 0).Keep([evening, evening.AddHours(5)], zone).Count);
    }

    [Fact]
    public void What_is_kept_tonight_was_kept_last_night_or_is_new() => Assert.All(Enumerable.Range(1, Nights.Count - 1), night =>
    {
        var last = KeepRule.Default.Keep(Nights.Take(night), Utc);
        Assert.Subset(last.Append(Nights[night]).ToHashSet(), KeepRule.Default.Keep(Nights.Take(night + 1), Utc).ToHashSet());
    });
}
