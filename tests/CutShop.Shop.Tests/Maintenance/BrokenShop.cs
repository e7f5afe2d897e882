using CutShop.Testing.Trust;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Tests.Maintenance;

/// <summary>A shop in which a piece was cut, so that its coil's rest is an offcut, and whose database is broken by hand.</summary>
internal sealed class BrokenShop : IDisposable
{
    private readonly FaultShop _shop;

    private BrokenShop(FaultShop shop) => _shop = shop;

    public string Path => _shop.Database.Path;

    public string Folder => System.IO.Path.GetDirectoryName(Path)!;

    public string Code => _shop.Code.ToString();

    public static async Task<BrokenShop> MakeAsync()
    {
        var shop = await FaultShop.MakeAsync();
        await shop.FinishCutAsync();
        await shop.Drill.TakeAsync(("LQ-1", "A1"), "Dov", shop.Key());
        return new(shop);
    }

    /// <summary>What the check says of the whole folder.</summary>
    public IReadOnlyList<string> Findings() => [.. ShopCheck.Of(new ShopPlace(Folder), TimeProvider.System).Select(finding => finding.ToString())];

    /// <summary>Changes rows behind the program's back: no foreign keys, no triggers.</summary>
    public void Break(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Path};Foreign Keys=False;Pooling=False");
        connection.Open();
        var triggers = Query(connection, "SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
        foreach (var name in Query(connection, "SELECT name FROM sqlite_schema WHERE type = 'trigger'"))
            Run(connection, $"DROP TRIGGER {name}");
        Run(connection, sql);
        foreach (var trigger in triggers)
            Run(connection, trigger);
    }

    /// <summary>Changes tables, indices or triggers.</summary>
    public void BreakSchema(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Path};Foreign Keys=False;Pooling=False");
        connection.Open();
        Run(connection, sql);
    }

    /// <summary>The file as one piece, to write bytes into.</summary>
    public string OnePiece()
    {
        _shop.Database.Dispose();
        BreakSchema("PRAGMA journal_mode = DELETE");
        return Path;
    }

    public void Dispose() => _shop.Dispose();

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The text is a test's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    private static List<string> Query(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The text is this class's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
            rows.Add(reader.GetString(0));
        return rows;
    }
}
