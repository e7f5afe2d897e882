namespace CutShop.Shop;

/// <summary>What a migration does beyond its SQL, in the same transaction right after it.</summary>
internal static class MigrationSteps
{
    private static readonly Dictionary<string, Action<ShopSession>> Steps = new()
    {
        ["0012_parts.sql"] = PartsOfStoredJobs.Fill,
    };

    /// <summary>Does what goes with a migration, if anything does.</summary>
    public static void After(Migration migration, ShopSession session)
    {
        if (Steps.GetValueOrDefault(migration.FileName) is { } step)
            step(session);
    }
}
