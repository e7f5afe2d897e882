using System.Reflection;

namespace CutShop.Shop.Store;

/// <summary>Marks what a migration does beyond its SQL: a static method that takes the session.</summary>
/// <param name="fileName">The migration's file.</param>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class AfterMigrationAttribute(string fileName) : Attribute
{
    /// <summary>The migration's file, such as <c>0012_parts.sql</c>.</summary>
    public string FileName { get; } = fileName;
}

/// <summary>What migrations do beyond their SQL, in the same transaction right after it.</summary>
internal static class MigrationSteps
{
    private static readonly Dictionary<string, Action<ShopSession>> Steps = typeof(MigrationSteps).Assembly.GetTypes()
        .SelectMany(type => type.GetMethods(BindingFlags.Static | BindingFlags.Public))
        .Select(method => (Method: method, Mark: method.GetCustomAttribute<AfterMigrationAttribute>()))
        .Where(step => step.Mark is not null)
        .ToDictionary(step => step.Mark!.FileName, step => step.Method.CreateDelegate<Action<ShopSession>>());

    /// <summary>Does what goes with a migration, if anything does.</summary>
    public static void After(Migration migration, ShopSession session)
    {
        if (Steps.GetValueOrDefault(migration.FileName) is { } step)
            step(session);
    }
}
