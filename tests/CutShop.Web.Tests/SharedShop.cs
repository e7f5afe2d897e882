namespace CutShop.Web.Tests;

/// <summary>A running shop for all the tests of a class that only look at it.</summary>
public abstract class SharedShop : IAsyncLifetime
{
    public RunningShop Shop { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Shop = await RunningShop.StartAsync();
        await FillAsync(Shop);
    }

    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await Shop.DisposeAsync();
    }

    /// <summary>Puts in what there is to look at.</summary>
    protected abstract Task FillAsync(RunningShop shop);
}
