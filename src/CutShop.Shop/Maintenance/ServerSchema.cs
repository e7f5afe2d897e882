using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Whether a database on a server has the tables, views, indexes and triggers of the migrations, which have the same names as in
/// a file, and its triggers are awake. Foreign keys hold there by themselves.
/// </summary>
internal static class ServerSchema
{
    // The index of jobs' text is a table with triggers in a file, and a server may be without it.
    private const string Made =
        "SELECT type || ' ' || name FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' AND name NOT LIKE 'jobs_text%' ORDER BY 1";

    private const string Here =
        """
        SELECT 'table ' || tablename FROM pg_tables WHERE schemaname = 'public'
        UNION ALL SELECT 'view ' || viewname FROM pg_views WHERE schemaname = 'public'
        UNION ALL SELECT 'index ' || relname FROM pg_index JOIN pg_class ON pg_class.oid = indexrelid WHERE indisvalid
        UNION ALL SELECT 'trigger ' || tgname FROM pg_trigger WHERE tgenabled = 'O' AND NOT tgisinternal
        """;

    public static IEnumerable<CheckFinding> Of(ShopSession session)
    {
        using var made = SqliteMigrations.InMemory(Migration.Newest);
        return [.. made.Texts(Made).Except(session.All<string>(Here)).Select(name => CheckFinding.Of(name, "MissingOnServer"))];
    }
}
