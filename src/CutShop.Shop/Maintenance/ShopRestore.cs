using System.Diagnostics;
using CutShop.Shop.Store;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Maintenance;

/// <summary>What a database holds, to tell one from another.</summary>
/// <param name="Jobs">Jobs.</param>
/// <param name="Coils">Coils and offcuts.</param>
/// <param name="Lines">Lines of history.</param>
/// <param name="LastLine">The number of the last of them, which followers of the changes may have; 0 where there is none.</param>
/// <param name="LastChange">When it was written, UTC, or null.</param>
public sealed record ShopFacts(long Jobs, long Coils, long Lines, long LastLine, DateTimeOffset? LastChange);

/// <summary>A restore, looked at before it is made or when it is done.</summary>
/// <param name="Findings">The errors in the backup; empty where there are none.</param>
/// <param name="Backup">What the backup holds; null where it cannot be used.</param>
/// <param name="Present">What the shop holds before; null where it has no database or it cannot be read.</param>
/// <param name="Problem">Why nothing was restored, or null.</param>
/// <param name="Aside">Where what was there before is now, or null.</param>
/// <param name="Kept">What was revoked since the backup and stays revoked; null where the shop's own database cannot be read.</param>
public sealed record RestoreAnswer(IReadOnlyList<CheckFinding> Findings, ShopFacts? Backup, ShopFacts? Present, string? Problem, string? Aside, IReadOnlyList<string>? Kept = null)
{
    /// <summary>True where the backup could be put in place, or is.</summary>
    public bool IsGood => Problem is null;
}

/// <summary>
/// Puts a backup in place of a shop's database. All work is done on a copy beside it, and the last step is one transaction of the
/// database itself: a server that runs on it sees the shop before or after, and a power cut leaves one or the other.
/// </summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="time">The clock.</param>
public sealed class ShopRestore(string folder, TimeProvider time)
{
    private static readonly TimeSpan LongestTry = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan BetweenTries = TimeSpan.FromMilliseconds(20);

    private readonly string _database = ShopFolder.DatabaseIn(folder);

    private string Copy => _database + ".restoring";

    /// <summary>Says what restoring a backup would do; changes nothing.</summary>
    public RestoreAnswer Look(string backup, bool force) => OnCopy(backup, force, found => found);

    /// <summary>Restores a backup. What was there before is kept among the backups.</summary>
    /// <param name="backup">The backup.</param>
    /// <param name="force">True to restore it although there are errors in it.</param>
    public RestoreAnswer Restore(string backup, bool force) => OnCopy(backup, force, PutInPlace);

    private RestoreAnswer OnCopy(string backup, bool force, Func<RestoreAnswer, RestoreAnswer> then)
    {
        Directory.CreateDirectory(folder);
        try
        {
            if (UpgradedCopy.BringUpToDate(backup, Copy, time) is { } unusable)
                return new([unusable], Backup: null, FactsOf(_database), StoreReplies.Say("CannotRestore", backup, unusable.Text), Aside: null);
            var findings = ShopCheck.OfFile(Copy, time);
            var found = new RestoreAnswer(findings, FactsOf(Copy), FactsOf(_database), Problem: null, Aside: null);
            return findings.Count == 0 || force
                ? then(Prepare(found))
                : found with { Problem = StoreReplies.Say("BackupIsOff", backup) };
        }
        finally
        {
            MaintainedFile.Delete(Copy);
        }
    }

    private RestoreAnswer PutInPlace(RestoreAnswer found)
    {
        if (!File.Exists(_database))
        {
            File.Move(Copy, _database);
            return found;
        }
        if (found.Present is null)
            return ReplaceDamaged(found);
        var aside = new ShopBackups(_database, ShopFolder.BackupsIn(folder), time).Make(keep: null);
        // Once more, for what was shut while that backup was made.
        found = KeepShut(found);
        using var copy = MaintainedFile.Open(Copy, time);
        using var present = MaintainedFile.Open(_database, time);
        PutOver(copy.Connection, present.Connection);
        return found with { Aside = aside.File.Path };
    }

    /// <summary>Readies the copy: cursors of before are known as such, and what was shut since stays shut.</summary>
    private RestoreAnswer Prepare(RestoreAnswer found)
    {
        using (var copy = MaintainedFile.Open(Copy, time))
            copy.Write(HistoryEpoch.DrawAgain);
        return KeepShut(found);
    }

    private RestoreAnswer KeepShut(RestoreAnswer found)
    {
        var upToDate = Copy + ".present";
        try
        {
            if (found.Present is null || UpgradedCopy.BringUpToDate(_database, upToDate, time) is not null)
                return found;
            using var copy = MaintainedFile.Open(Copy, time);
            using var present = MaintainedFile.Open(upToDate, time);
            IReadOnlyList<string> kept = [];
            copy.Write(restored => kept = present.Read(session => Revocations.Keep(session, restored)));
            return found with { Kept = [.. (found.Kept ?? []).Union(kept)] };
        }
        finally
        {
            MaintainedFile.Delete(upToDate);
        }
    }

    /// <summary>A busy server may win every turn for a while: each try is the whole transaction or nothing, so it is tried again.</summary>
    private static void PutOver(SqliteConnection copy, SqliteConnection present)
    {
        for (var start = Stopwatch.GetTimestamp(); ; Thread.Sleep(BetweenTries))
        {
            try
            {
                copy.BackupDatabase(present);
                return;
            }
            catch (SqliteException e) when (StorageError.Of(e) is { IsOfOthers: true } && Stopwatch.GetElapsedTime(start) < LongestTry)
            {
            }
        }
    }

    /// <summary>A database that cannot be read takes no transaction: its files are put aside, which no running server may see.</summary>
    private RestoreAnswer ReplaceDamaged(RestoreAnswer found)
    {
        using var alone = ShopInUse.TryTakeAlone(folder);
        if (alone is null)
            return found with { Problem = StoreReplies.Say("DamagedAndInUse") };
        var aside = $"{_database}.damaged-{time.GetUtcNow().UtcDateTime:yyyyMMdd'T'HHmmss'Z'}";
        foreach (var part in MaintainedFile.PartsOf(_database).Where(File.Exists))
            File.Move(part, aside + part[_database.Length..]);
        File.Move(Copy, _database);
        return found with { Aside = aside };
    }

    private ShopFacts? FactsOf(string path)
    {
        try
        {
            using var file = MaintainedFile.Open(path, time);
            return file.Read(session => new ShopFacts(
                session.Value<long>("SELECT count(*) FROM jobs"),
                session.Value<long>("SELECT count(*) FROM coils"),
                session.Value<long>("SELECT count(*) FROM history"),
                session.Value<long>("SELECT coalesce(max(id), 0) FROM history"),
                session.FirstOrDefault<DateTimeOffset?>("SELECT at FROM history ORDER BY id DESC LIMIT 1")));
        }
        catch (FileNotFoundException)
        {
            return null;
        }
        catch (SqliteException e) when (StorageError.Of(e) is null or { IsOfFile: true })
        {
            return null;
        }
    }
}
