namespace CutShop.Shop;

/// <summary>Where things are in a shop's folder.</summary>
public static class ShopFolder
{
    /// <summary>The database file.</summary>
    public static string DatabaseIn(string folder) => Path.Combine(folder, "cutshop.db");

    /// <summary>The folder with a folder of paper for each job.</summary>
    public static string PaperIn(string folder) => Path.Combine(folder, "paper");

    /// <summary>The folder of backups, unless the shop names another.</summary>
    public static string BackupsIn(string folder) => Path.Combine(folder, "backups");

    /// <summary>The folder of photos from sites.</summary>
    public static string PhotosIn(string folder) => Path.Combine(folder, "photos");
}
