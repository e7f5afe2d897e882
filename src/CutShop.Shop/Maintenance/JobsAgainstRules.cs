using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Which open jobs would be different under today's rules and rack of bits. That is not an error: their tickets stay as they are
/// until somebody accepts the difference as a change.
/// </summary>
public sealed class JobsAgainstRules(ShopDatabase database, ShopTables brought)
{
    private const string OpenJobs = "SELECT number FROM jobs WHERE cancelled_at IS NULL AND (released_at IS NULL OR work_left > 0) ORDER BY number";

    /// <summary>What today's rules would change in each open job that would come out differently.</summary>
    public IReadOnlyList<JobChange> All() => database.Read(session => Of(session, brought));

    /// <summary>The same of what a transaction sees.</summary>
    internal static IReadOnlyList<JobChange> Of(ShopSession session, ShopTables brought)
    {
        var tables = ShopTablesShelf.Current(session, brought);
        return [.. session.All<string>(OpenJobs).Select(number => JobChanging.CompareWithRules(session, number, tables)).OfType<JobChange>().Where(change => change.TouchesWork)];
    }
}
