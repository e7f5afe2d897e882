using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>A shop's database opened for its care: never made where there is none, never brought up to date unasked.</summary>
internal abstract class MaintainedStore : IDisposable
{
    /// <summary>The number of its newest migration; 0 where it holds no shop.</summary>
    public abstract long Version { get; }

    /// <summary>Reads, all of it as of one moment.</summary>
    public abstract T Read<T>(Func<ShopSession, T> work);

    /// <summary>What the database itself finds off, and tables that are not as the migrations make them.</summary>
    public abstract IEnumerable<CheckFinding> OwnFindings(ShopSession session);

    /// <inheritdoc/>
    public abstract void Dispose();
}
