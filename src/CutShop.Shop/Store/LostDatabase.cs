using System.Globalization;

namespace CutShop.Shop.Store;

/// <summary>Tells a lost database from a new shop, and which backup to restore.</summary>
internal static class LostDatabase
{
    /// <summary>
    /// Why a file without tables is not taken for a new shop's: its folder holds what a shop leaves there, so the database was lost, or
    /// is on a server that was not named. Null where the folder is new.
    /// </summary>
    internal static string? NotNew(string path)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var found = ShopFolder.Inside.Where(name => Directory.Exists(Path.Combine(folder, name)) && Directory.EnumerateFileSystemEntries(Path.Combine(folder, name)).Any()).ToList();
        return found.Count == 0 ? null
            : StoreReplies.Say(File.Exists(path) ? "NotNewEmpty" : "NotNewMissing", path, string.Join(", ", found), Restore(ShopFolder.BackupsIn(folder)));
    }

    /// <summary>Which backup to restore, in words.</summary>
    internal static string Restore(string backups) => BackupFile.In(backups).FirstOrDefault(backup => backup.IsSound) is { } last
        ? StoreReplies.Say("RestoreLast", last.MadeAt.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture), last.Path)
        : StoreReplies.Say("RestoreAny");
}
