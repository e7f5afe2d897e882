using CutShop.Shop.Store;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Maintenance;

/// <summary>What is looked at before a server starts on a shop's file: that it is this shop's, and whole.</summary>
public static class ShopStart
{
    /// <summary>Why no server should start on a shop's file, in words that say what to do; null where one may.</summary>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="backups">Where its backups are.</param>
    /// <param name="time">The clock.</param>
    public static string? Refusal(string folder, string backups, TimeProvider time)
    {
        var path = ShopFolder.DatabaseIn(folder);
        if (!File.Exists(path))
            return null;
        try
        {
            using var file = MaintainedFile.Open(path, time);
            // The first of what SQLite's own quick check finds: pages and rows, not what indexes hold.
            return file.Connection.Texts("PRAGMA quick_check(1)") is ["ok"] ? null : Damaged(path, backups);
        }
        catch (SqliteException e) when (StorageError.Of(e) is { IsOfFile: true })
        {
            return Damaged(path, backups);
        }
    }

    private static string Damaged(string path, string backups) => StoreReplies.Say("DamagedAtStart", path, LostDatabase.Restore(backups));
}
