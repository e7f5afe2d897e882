namespace CutShop.Shop.Store;

/// <summary>The time of day at which a backup is made. A machine that was off at that time makes it when it is on again.</summary>
/// <param name="At">The shop's time.</param>
public sealed record BackupTime(TimeOnly At)
{
    /// <summary>True where none was made since the last time this time of day came round.</summary>
    /// <param name="now">Now.</param>
    /// <param name="zone">The shop's zone.</param>
    /// <param name="made">When backups were made; what a clock gone wrong has dated after now does not count.</param>
    public bool IsDue(DateTimeOffset now, TimeZoneInfo zone, IEnumerable<DateTimeOffset> made)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var local = TimeZoneInfo.ConvertTime(now, zone).DateTime;
        var last = DateOnly.FromDateTime(local).ToDateTime(At);
        if (last > local)
            last = last.AddDays(-1);
        var since = new DateTimeOffset(last, zone.GetUtcOffset(last));
        return !made.Any(moment => moment >= since && moment <= now);
    }
}
