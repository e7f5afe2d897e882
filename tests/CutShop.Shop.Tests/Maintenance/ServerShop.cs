using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Maintenance;

/// <summary>The shop of <see cref="BrokenShop"/>, moved to a server once.</summary>
public sealed class ServerShop : IAsyncLifetime
{
    private readonly TestStore _store = TestStore.OnServer();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Changes rows behind the program's back, looks at them as the check does, and takes the change back.</summary>
    internal async Task<IReadOnlyList<CheckFinding>> BrokenAsync(string sql)
    {
        using var database = _store.Open();
        IReadOnlyList<CheckFinding> findings = [];
        await Assert.ThrowsAsync<TakenBackException>(() => database.WriteAsync<int>(
            session =>
            {
                Assert.Empty(ShopCheck.OfRows(session));
                foreach (var statement in session.All<string>(session.Dialect.DisableConstraints))
                    session.Execute(statement);
                session.Execute(sql);
                findings = [.. ShopCheck.OfRows(session)];
                throw new TakenBackException();
            },
            Cancel));
        return findings;
    }

    public async ValueTask InitializeAsync()
    {
        using var shop = await BrokenShop.MakeAsync();
        var export = Path.Combine(shop.Folder, "export");
        Assert.Null(new ShopExport(new ShopPlace(shop.Folder), TimeProvider.System).Write(export).Problem);
        Assert.Null((await new ShopImport(new ShopPlace(_store.Folder, _store.Connection), TimeProvider.System).ReadAsync(export, Cancel)).Problem);
    }

    public ValueTask DisposeAsync()
    {
        _store.Dispose();
        return ValueTask.CompletedTask;
    }

    private sealed class TakenBackException : Exception;
}
