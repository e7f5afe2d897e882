namespace CutShop.Shop.Store;

/// <summary>Where things are in a shop's folder.</summary>
public static class ShopFolder
{
    private const string CookieKeys = "cookie-keys";
    private const string Paper = "paper";
    private const string Photos = "photos";
    private const string Backups = "backups";

    /// <summary>The file that a server holds while it runs.</summary>
    public const string LockFile = "in-use.lock";

    /// <summary>The folders that the program makes in it.</summary>
    public static IReadOnlyList<string> Inside { get; } = [CookieKeys, Paper, Photos, Backups];

    /// <summary>The folder of the keys that cookies are sealed with.</summary>
    public static string CookieKeysIn(string folder) => Path.Combine(folder, CookieKeys);

    /// <summary>The database file.</summary>
    public static string DatabaseIn(string folder) => Path.Combine(folder, "cutshop.db");

    /// <summary>The folder with a folder of paper for each job.</summary>
    public static string PaperIn(string folder) => Path.Combine(folder, Paper);

    /// <summary>The folder of backups, unless the shop names another.</summary>
    public static string BackupsIn(string folder) => Path.Combine(folder, Backups);

    /// <summary>The folder of photos from sites.</summary>
    public static string PhotosIn(string folder) => Path.Combine(folder, Photos);
}
