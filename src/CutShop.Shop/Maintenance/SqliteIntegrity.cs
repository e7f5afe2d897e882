using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>Whether the file is whole by the database's own checks, and its tables are those that the migrations make.</summary>
internal static class SqliteIntegrity
{
    private const string Schema = "SELECT type || ' ' || name AS name, coalesce(sql, '') AS sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY 1";

    public static IEnumerable<CheckFinding> Of(ShopSession session) =>
    [
        .. session.All<string>("PRAGMA integrity_check").Where(line => line != "ok").Select(line => new CheckFinding(StoreReplies.Say("File"), line)),
        .. session.All<(string Table, long? Row, string Parent)>("SELECT \"table\", rowid, parent FROM pragma_foreign_key_check")
            .Select(orphan => CheckFinding.Of(orphan.Table, "RowWithoutParent", orphan.Row, orphan.Parent)),
        .. DiffersFromMigrations(session),
    ];

    private static IEnumerable<CheckFinding> DiffersFromMigrations(ShopSession session)
    {
        var here = Read(session.All<(string, string)>(Schema));
        var made = Made();
        foreach (var (name, sql) in made)
        {
            if (!here.TryGetValue(name, out var found))
                yield return CheckFinding.Of(name, "MissingTable");
            else if (found != sql)
                yield return CheckFinding.Of(name, "OtherTable");
        }
        foreach (var name in here.Keys.Except(made.Keys))
            yield return CheckFinding.Of(name, "StrangeTable");
    }

    private static Dictionary<string, string> Made()
    {
        using var connection = SqliteMigrations.InMemory(Migration.Newest);
        using var transaction = connection.BeginTransaction();
        return Read(new ShopSession(connection, transaction, Dialect.Sqlite, TimeProvider.System).All<(string, string)>(Schema));
    }

    private static Dictionary<string, string> Read(IEnumerable<(string Name, string Sql)> schema) => schema.ToDictionary(part => part.Name, part => part.Sql);
}
