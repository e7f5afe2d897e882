using System.Text;
using CutShop.Takeoff;
using Microsoft.Extensions.Time.Testing;

namespace CutShop.Shop.Tests;

/// <summary>A shop's database in a place of its own, with a clock moved by hand.</summary>
public sealed class ShopOnDisk : IDisposable
{
    private readonly TestStore _store = new();

    public ShopOnDisk() => Database = _store.Open(Time);

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2027, 2, 1, 8, 0, 0, TimeSpan.Zero));

    public ShopDatabase Database { get; }

    public string DatabaseFile => _store.DatabaseFile;

    public JobIntake Intake => new(Database, ShopTables.Standard);

    public JobShelf Jobs => new(Database, ShopTables.Standard);

    public CoilStock Stock => new(Database);

    public static Job Demo(string file) =>
        JobFileReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", file))).Job!;

    /// <summary>A job of one line with two posts and one row: one piece of a known length.</summary>
    /// <param name="number">The job's number.</param>
    /// <param name="clear">Clear width: with 5 1/2 in posts and a straight rope, the piece is 5 1/2 in longer.</param>
    /// <param name="more">Further fields of the job, as JSON with a comma behind each.</param>
    /// <param name="material">The rope.</param>
    public static Job OnePiece(string number, string clear = "72 in", string more = "", string material = "polypropylene") =>
        JobFileReader.Read(Encoding.UTF8.GetBytes($$"""
        { "number": "{{number}}", {{more}} "rope": { "material": "{{material}}", "diameter": "1 1/2 in" },
          "allowances": { "shrink": "0%" },
          "lines": [ { "mark": "A",
            "posts": [ { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                       { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "{{clear}}" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "0 in", "start": "stopped", "finish": "stopped" } ] } ] }
        """)).Job!;

    /// <summary>Opens the database once more.</summary>
    public ShopDatabase OpenAgain() => _store.Open(Time);

    public long Count(string table) => Database.Read(session => session.Value<long>($"SELECT count(*) FROM {table}"));

    public void Dispose()
    {
        Database.Dispose();
        _store.Dispose();
    }
}
