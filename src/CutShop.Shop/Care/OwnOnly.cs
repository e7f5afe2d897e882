using System.Runtime.InteropServices;

namespace CutShop.Shop;

/// <summary>
/// Keeps what the program writes for its own user: files with mode 600, folders with 700. The database holds customers and hashes, and
/// so do its backups and exports; paper and photos name customers too.
/// </summary>
public static class OwnOnly
{
    private const UnixFileMode Others =
        UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    /// <summary>Has everything that this process makes from now on made so, whatever the usual way of the machine is.</summary>
    public static void FromNowOn()
    {
        if (!OperatingSystem.IsWindows())
            _ = Umask((uint)Others);
    }

    /// <summary>Takes from others what they may do with a folder and all that is in it, as older programs left it; what belongs to another user stays.</summary>
    public static void Close(string folder)
    {
        if (OperatingSystem.IsWindows() || !Directory.Exists(folder))
            return;
        var inside = Directory.EnumerateFileSystemEntries(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.ReparsePoint });
        foreach (var path in inside.Prepend(folder))
            CloseOne(path);
    }

    /// <summary>The same for a single file.</summary>
    public static void CloseOne(string path)
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
