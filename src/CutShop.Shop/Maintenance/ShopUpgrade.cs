using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Maintenance;

/// <summary>What an upgrade did, or would do.</summary>
/// <param name="From">The number of the newest migration that the database had.</param>
/// <param name="To">The number of the newest that it has then.</param>
/// <param name="Kept">Where the database as it was before is kept; empty for a rehearsal.</param>
/// <param name="Findings">The errors in it then.</param>
/// <param name="Different">Open jobs that the rules of this program would make different, with what would change. Their tickets stay as they are.</param>
public sealed record UpgradeReport(long From, long To, string Kept, IReadOnlyList<CheckFinding> Findings, IReadOnlyList<JobChange> Different);

/// <summary>Brings a shop's database up to date with this program, with a copy kept of what it was, or tries it on a copy.</summary>
/// <param name="place">Where the shop is.</param>
/// <param name="backups">The folder of backups.</param>
/// <param name="tables">The tables that the program brings.</param>
/// <param name="time">The clock.</param>
public sealed class ShopUpgrade(ShopPlace place, string backups, ShopTables tables, TimeProvider time)
{
    /// <summary>The number of the database's newest migration; 0 where there is no shop yet.</summary>
    public long Version
    {
        get
        {
            if (!place.IsOnServer && !File.Exists(place.DatabaseFile))
                return 0;
            using var store = place.OpenForCare(time);
            return store.Version;
        }
    }

    /// <summary>True where the database was made by an older program.</summary>
    public bool IsDue => Version is > 0 and var version && version < Migration.Newest;

    /// <summary>Keeps the database as it is, of a file as a backup and of a server as an export, and brings it up to date.</summary>
    /// <exception cref="IOException">The copy could not be made; then the database is as it was.</exception>
    public UpgradeReport Make()
    {
        var from = Version;
        var kept = place.IsOnServer ? Export() : new ShopBackups(place.DatabaseFile, backups, time).Make(keep: null).File.Path;
        using var database = place.Open(time);
        return Report(place, database, from, kept);
    }

    /// <summary>Does the same on a copy, which is gone afterwards.</summary>
    public async Task<UpgradeReport> RehearseAsync(CancellationToken cancel = default)
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-rehearsal-");
        try
        {
            var export = Path.Combine(folder.FullName, "export");
            var copy = new ShopPlace(Path.Combine(folder.FullName, "shop"));
            if (new ShopExport(place, time).Write(export) is { IsDone: false } unwritten)
                throw new IOException(unwritten.Problem);
            if (await new ShopImport(copy, time).ReadAsync(export, cancel).ConfigureAwait(false) is { IsDone: false } untaken)
                return new(Version, Migration.Newest, "", [CheckFinding.OfDatabase(untaken.Problem!)], []);
            using var database = copy.Open(time);
            return Report(copy, database, Version, "");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private UpgradeReport Report(ShopPlace of, ShopDatabase database, long from, string kept) =>
        new(from, Migration.Newest, kept, ShopCheck.Of(of, time), new JobsAgainstRules(database, tables).All());

    private string Export()
    {
        var to = Path.Combine(backups, FormattableString.Invariant($"before-upgrade-{time.GetUtcNow():yyyyMMdd'T'HHmmss'Z'}"));
        Directory.CreateDirectory(backups);
        return new ShopExport(place, time).Write(to) is { IsDone: false } answer ? throw new IOException(answer.Problem) : to;
    }
}
