using System.Globalization;

namespace CutShop.Shop.Store;

/// <summary>A backup: one database file whose name says when it was made.</summary>
/// <param name="Path">Where it is.</param>
/// <param name="MadeAt">When it was made, UTC, to the second.</param>
/// <param name="IsSound">False where the check found something off when it was made.</param>
public sealed record BackupFile(string Path, DateTimeOffset MadeAt, bool IsSound)
{
    private const string Start = "cutshop-";
    private const string TimeFormat = "yyyyMMdd'T'HHmmss'Z'";
    private const string Sound = ".db";
    private const string Unsound = ".off.db";

    /// <summary>The backup that is made at a moment in a folder.</summary>
    public static BackupFile At(string folder, DateTimeOffset moment, bool isSound) => new(
        System.IO.Path.Combine(folder, Start + moment.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture) + (isSound ? Sound : Unsound)),
        moment,
        isSound);

    /// <summary>The backups in a folder, the newest first; files with other names are none.</summary>
    public static IReadOnlyList<BackupFile> In(string folder) => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder, Start + "*" + Sound).Select(Read).OfType<BackupFile>().OrderByDescending(backup => backup.MadeAt)]
        : [];

    private static BackupFile? Read(string path)
    {
        var name = System.IO.Path.GetFileName(path)[Start.Length..];
        var isSound = !name.EndsWith(Unsound, StringComparison.Ordinal);
        return DateTimeOffset.TryParseExact(
            name[..^(isSound ? Sound : Unsound).Length], TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var made)
            ? new(path, made, isSound)
            : null;
    }
}
