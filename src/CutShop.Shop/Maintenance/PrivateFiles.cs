using System.Runtime.InteropServices;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Keeps what the program writes for its own user: files with mode 600, folders with 700. The database holds customers and hashes, and
/// so do its backups and exports; paper and photos name customers too.
/// </summary>
public static class PrivateFiles
{
    private const UnixFileMode Others =
        UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    /// <summary>Has everything that this process makes from now on made so, whatever the usual way of the machine is.</summary>
    public static void FromNowOn()
    {
        if (!OperatingSystem.IsWindows())
            _ = Umask((uint)Others);
    }

    /// <summary>
    /// Takes from others what they may do with a shop's folder and what the program has put there, as older versions left it. What
    /// somebody else put there stays as it is, and so does what belongs to another user.
    /// </summary>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="backups">Where its backups are.</param>
    public static void Close(string folder, string backups)
    {
        if (OperatingSystem.IsWindows() || !Directory.Exists(folder))
            return;
        var inside = ShopFolder.Inside.Select(name => Path.Combine(folder, name)).Where(Directory.Exists).SelectMany(one => Within(one).Prepend(one));
        foreach (var path in inside.Concat(Directory.EnumerateFiles(folder, "cutshop.db*")).Concat(Directory.EnumerateFiles(folder, ShopFolder.LockFile)).Concat(BackupFile.In(backups).Select(backup => backup.Path)).Prepend(folder))
            CloseOne(path);
    }

    private static IEnumerable<string> Within(string folder) => Directory.EnumerateFileSystemEntries(
        folder, "*", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.ReparsePoint });

    private static void CloseOne(string path)
    {
        try
        {
            if (!OperatingSystem.IsWindows() && File.GetUnixFileMode(path) is var mode && (mode & Others) != UnixFileMode.None)
                File.SetUnixFileMode(path, mode & ~Others);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException)
        {
            // Another user's, or gone meanwhile.
        }
    }

    [DllImport("libc", EntryPoint = "umask")]
    private static extern uint Umask(uint mask);
}
