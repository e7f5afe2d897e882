namespace CutShop.Museum;

/// <summary>A clock that is moved by hand, in UTC on any machine.</summary>
internal sealed class MuseumClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => Now;
}
