using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>Says whether a server runs on a shop's folder: it holds a lock file while it runs, however it ends. Servers of one database on a server share it.</summary>
public static class ShopInUse
{
    /// <summary>Holds a share while a server runs.</summary>
    public static IDisposable Share(string folder) => Open(folder, FileShare.Read);

    /// <summary>Takes the folder alone, as a server of a database file and a restore of a damaged one do; null where a server runs on it.</summary>
    public static IDisposable? TryTakeAlone(string folder)
    {
        try
        {
            return Open(folder, FileShare.None);
        }
        catch (IOException e) when (StorageError.Of(e) is null)
        {
            return null;
        }
    }

    private static FileStream Open(string folder, FileShare share)
    {
        Directory.CreateDirectory(folder);
        return new FileStream(Path.Combine(folder, ShopFolder.LockFile), FileMode.OpenOrCreate, FileAccess.Read, share);
    }
}
