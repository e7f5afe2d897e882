using CutShop.Shop.Store;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop.Maintenance;

/// <summary>Checks a database file as it would be in use: one of an older program is brought up to date in a copy first.</summary>
internal static class UpgradedCopy
{
    public static IReadOnlyList<CheckFinding> Of(string path, TimeProvider time)
    {
        if (!IsOlder(path, time))
            return ShopCheck.OfFile(path, time);
        var trial = path + ".trial.part";
        try
        {
            return BringUpToDate(path, trial, time) is { } problem ? [problem] : ShopCheck.OfFile(trial, time);
        }
        finally
        {
            MaintainedFile.Delete(trial);
        }
    }

    /// <summary>Copies a database and brings the copy up to date.</summary>
    /// <returns>Why that cannot be, or null.</returns>
    public static CheckFinding? BringUpToDate(string path, string copy, TimeProvider time)
    {
        try
        {
            using var source = MaintainedFile.Open(path, time);
            using var target = MaintainedFile.Create(copy, time);
            source.Connection.BackupDatabase(target.Connection);
            if (target.Version == 0)
                return CheckFinding.OfDatabase(StoreReplies.Say("NotAShop"));
            SqliteMigrations.Apply(target.Connection);
            target.MakeOnePiece();
            return null;
        }
        catch (SqliteException e) when (StorageError.Of(e) is null or { IsOfFile: true })
        {
            return CheckFinding.OfDatabase(StoreReplies.Say("CannotBeUsed", e.Message));
        }
        catch (Exception e) when (e is InvalidDataException or FileNotFoundException)
        {
            return CheckFinding.OfDatabase(e.Message);
        }
    }

    private static bool IsOlder(string path, TimeProvider time)
    {
        try
        {
            using var file = MaintainedFile.Open(path, time);
            return file.Version < Migration.Newest;
        }
        catch (SqliteException)
        {
            // The check says what is wrong with it.
            return false;
        }
    }
}
