using CutShop.Testing.Stores;
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

    public ShopPlace Place => new(_store.Folder, TestStore.IsOnServer ? _store.Connection : null);

    public JobIntake Intake => new(Database, ShopTables.Standard);

    public JobShelf Jobs => new(Database);

    public CoilShelf Stock => new(Database);

    public static Job Demo(string file) =>
        JobFileReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "demo", file))).Job!;

    /// <summary>Opens the database once more.</summary>
    public ShopDatabase OpenAgain() => _store.Open(Time);

    public long Count(string table) => Database.Read(session => session.Value<long>($"SELECT count(*) FROM {table}"));

    public void Dispose()
    {
        Database.Dispose();
        _store.Dispose();
    }
}
