using System.Data.Common;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Reports what is wrong in a shop's database, in a file or on a server: the database itself, the rope of every coil, the states
/// against the history, the tickets against their stored parts. Changes nothing.
/// </summary>
public static class ShopCheck
{
    /// <summary>Checks a shop: its database as of one moment, on which others may go on writing, and files that belong to nothing.</summary>
    /// <param name="place">Where the shop is.</param>
    /// <param name="time">The clock.</param>
    /// <returns>What is off; empty where all is well.</returns>
    /// <exception cref="IOException">The server does not answer, or does not let this program in.</exception>
    public static IReadOnlyList<CheckFinding> Of(ShopPlace place, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(place);
        return Opened(() => place.OpenForCare(time), store => [.. Of(store), .. OrphanFiles.In(place.Folder, store)]);
    }

    /// <summary>Checks a database file alone, such as a backup.</summary>
    public static IReadOnlyList<CheckFinding> OfFile(string path, TimeProvider time) => Opened(() => MaintainedFile.Open(path, time), Of);

    private static IReadOnlyList<CheckFinding> Opened(Func<MaintainedStore> open, Func<MaintainedStore, IReadOnlyList<CheckFinding>> check)
    {
        try
        {
            using var store = open();
            return check(store);
        }
        catch (FileNotFoundException e)
        {
            return [CheckFinding.OfDatabase(e.Message)];
        }
        catch (DbException e)
        {
            return [CheckFinding.OfDatabase(StoreReplies.Say("CannotBeRead", StorageError.Of(e)?.Text ?? e.Message))];
        }
    }

    private static List<CheckFinding> Of(MaintainedStore store)
    {
        var version = store.Version;
        if (version != Migration.Newest)
            return [CheckFinding.OfDatabase(StoreReplies.Say(version < Migration.Newest ? "OlderMigration" : "NewerMigration", version, Migration.Newest))];
        return store.Read(session => Of(store, session));
    }

    private static List<CheckFinding> Of(MaintainedStore store, ShopSession session)
    {
        var findings = store.OwnFindings(session).ToList();
        try
        {
            findings.AddRange(OfRows(session));
        }
        catch (DbException e) when (findings.Count > 0)
        {
            findings.Add(CheckFinding.OfDatabase(StoreReplies.Say("RestUnchecked", e.Message)));
        }
        return findings;
    }

    /// <summary>What is off in the rows that a transaction sees, by the shop's own rules.</summary>
    internal static IEnumerable<CheckFinding> OfRows(ShopSession session) =>
        [.. StockBalance.Of(session), .. StatesAgainstHistory.Of(session), .. TicketsAgainstParts.Of(session), .. StoredCounts.Of(session)];
}
