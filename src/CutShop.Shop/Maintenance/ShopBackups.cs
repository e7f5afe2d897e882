using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>How a backup went.</summary>
/// <param name="File">The backup.</param>
/// <param name="Findings">What is off in it; empty where it is sound.</param>
/// <param name="Removed">Older backups that the rule no longer keeps, removed.</param>
public sealed record BackupAnswer(BackupFile File, IReadOnlyList<CheckFinding> Findings, IReadOnlyList<BackupFile> Removed);

/// <summary>Makes backups of a shop's database while it is worked on, and keeps them by rule.</summary>
/// <param name="database">The database file.</param>
/// <param name="folder">Where backups are kept.</param>
/// <param name="time">The clock.</param>
public sealed class ShopBackups(string database, string folder, TimeProvider time)
{
    private static readonly TimeSpan LongestBackup = TimeSpan.FromDays(1);

    /// <summary>The backups, the newest first.</summary>
    public IReadOnlyList<BackupFile> All => BackupFile.In(folder);

    /// <summary>
    /// Copies the database as of one moment, checks the copy, and only then gives it a backup's name. Where something is off the
    /// copy is kept under a name that says so, and no older backup is removed.
    /// </summary>
    /// <param name="keep">Which older backups stay; null keeps all.</param>
    /// <exception cref="FileNotFoundException">There is no database.</exception>
    public BackupAnswer Make(KeepRule? keep)
    {
        Directory.CreateDirectory(folder);
        RemoveHalves();
        var now = time.GetUtcNow();
        var part = BackupFile.At(folder, now, isSound: true).Path + ".part";
        try
        {
            Copy(part);
            var findings = UpgradedCopy.Of(part, time);
            var made = BackupFile.At(folder, now, findings.Count == 0);
            File.Move(part, made.Path, overwrite: true);
            return new(made, findings, made.IsSound && keep is not null ? Remove(keep) : []);
        }
        finally
        {
            MaintainedFile.Delete(part);
        }
    }

    /// <summary>What a program left that ended while it made a backup.</summary>
    private void RemoveHalves()
    {
        var old = time.GetUtcNow().UtcDateTime - LongestBackup;
        foreach (var half in Directory.EnumerateFiles(folder, "cutshop-*.part*").Where(half => File.GetLastWriteTimeUtc(half) < old))
            File.Delete(half);
    }

    private void Copy(string part)
    {
        using var source = MaintainedFile.Open(database, time);
        using var target = MaintainedFile.Create(part, time);
        source.Connection.BackupDatabase(target.Connection);
        target.MakeOnePiece();
    }

    private List<BackupFile> Remove(KeepRule keep)
    {
        var sound = All.Where(backup => backup.IsSound).ToList();
        var kept = keep.Keep(sound.Select(backup => backup.MadeAt), time.LocalTimeZone);
        var old = sound.Where(backup => !kept.Contains(backup.MadeAt)).ToList();
        foreach (var backup in old)
            File.Delete(backup.Path);
        return old;
    }
}
