using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>Files in a shop's folder that belong to nothing.</summary>
internal static class StrayFiles
{
    private static readonly string[] Unfinished = ["*.part", "*.restoring", "*.importing"];

    public static IEnumerable<CheckFinding> In(string folder, TimeProvider time) => Directory.Exists(folder)
        ? [.. Halves(folder), .. PaperOfNoJob(folder, time)]
        : [];

    private static IEnumerable<CheckFinding> Halves(string folder) => Unfinished
        .SelectMany(pattern => Directory.EnumerateFileSystemEntries(folder, pattern, SearchOption.AllDirectories))
        .Order(StringComparer.Ordinal)
        .Select(path => new CheckFinding(Path.GetRelativePath(folder, path), "is half of a file: a program writes it just now, or ended while it did, and then nothing needs it"));

    private static IEnumerable<CheckFinding> PaperOfNoJob(string folder, TimeProvider time)
    {
        var paper = ShopFolder.PaperIn(folder);
        if (!Directory.Exists(paper) || Numbers(folder, time) is not { } numbers)
            return [];
        return Directory.EnumerateDirectories(paper).Order(StringComparer.Ordinal).Where(job => !numbers.Contains(Path.GetFileName(job)))
            .Select(job => new CheckFinding(Path.GetRelativePath(folder, job), "is the paper of a job that is not in the database"));
    }

    private static HashSet<string>? Numbers(string folder, TimeProvider time)
    {
        try
        {
            using var file = CareFile.Open(ShopFolder.DatabaseIn(folder), time);
            return [.. file.Read(session => session.All<string>("SELECT number FROM jobs"))];
        }
        catch (Exception e) when (e is SqliteException or FileNotFoundException)
        {
            // The database's own findings say so.
            return null;
        }
    }
}
