using System.Globalization;

namespace CutShop.Shop.Tests.Maintenance;

public sealed class BackupTimeTests
{
    [Theory]
    [InlineData("2027-02-03 02:29", "2027-02-02 02:30", false)]
    [InlineData("2027-02-03 02:30", "2027-02-02 02:30", true)]
    [InlineData("2027-02-03 17:00", "2027-02-02 02:30", true)]
    [InlineData("2027-02-03 17:00", "2027-02-03 02:31", false)]
    [InlineData("2027-02-03 17:00", "2027-02-03 09:00", false)]
    [InlineData("2027-02-03 17:00", "", true)]
    [InlineData("2027-02-03 17:00", "2099-01-01 00:00", true)]
    public void It_is_due_once_a_day_or_when_the_machine_is_on_again(string now, string made, bool isDue) =>
        Assert.Equal(isDue, new BackupTime(new(2, 30)).IsDue(At(now), TimeZoneInfo.Utc, made.Length == 0 ? [] : [At(made)]));

    [Fact]
    public void The_time_is_the_shops()
    {
        var zone = TimeZoneInfo.CreateCustomTimeZone("west", TimeSpan.FromHours(-8), "west", "west");
        var time = new BackupTime(new(2, 30));
        Assert.False(time.IsDue(At("2027-02-03 10:29"), zone, [At("2027-02-02 10:30")]));
        Assert.True(time.IsDue(At("2027-02-03 10:30"), zone, [At("2027-02-02 10:30")]));
    }

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
}
