using System.Data.Common;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>Files in a shop's folder that belong to nothing, and photos of reports that are not there.</summary>
internal static class OrphanFiles
{
    private const string Half = ".part";

    private static readonly string[] Unfinished = ["*" + Half, "*.restoring", "*.restoring.present", "*.importing"];

    public static IEnumerable<CheckFinding> In(string folder, MaintainedStore store) =>
        Directory.Exists(folder) ? [.. Halves(folder), .. PaperOfNoJob(folder, store), .. Photos(folder, store)] : [];

    private static IEnumerable<CheckFinding> Halves(string folder) => Unfinished
        .SelectMany(pattern => Directory.EnumerateFileSystemEntries(folder, pattern, SearchOption.AllDirectories))
        .Order(StringComparer.Ordinal)
        .Select(path => CheckFinding.Of(Path.GetRelativePath(folder, path), "HalfFile"));

    private static IEnumerable<CheckFinding> PaperOfNoJob(string folder, MaintainedStore store)
    {
        var paper = ShopFolder.PaperIn(folder);
        if (!Directory.Exists(paper) || Known(store, "SELECT number FROM jobs") is not { } numbers)
            return [];
        return Directory.EnumerateDirectories(paper).Order(StringComparer.Ordinal).Where(job => !numbers.Contains(Path.GetFileName(job)))
            .Select(job => CheckFinding.Of(Path.GetRelativePath(folder, job), "PaperOfNoJob"));
    }

    /// <summary>A photo gets its name just before its report is stored, so the files are looked up first: a report that comes in meanwhile has its photo.</summary>
    private static IEnumerable<CheckFinding> Photos(string folder, MaintainedStore store)
    {
        var photos = ShopFolder.PhotosIn(folder);
        List<string> there = Directory.Exists(photos)
            ? [.. Directory.EnumerateFiles(photos, "*", SearchOption.AllDirectories).Where(path => !path.EndsWith(Half, StringComparison.Ordinal)).Select(path => Path.GetRelativePath(photos, path))]
            : [];
        if (Known(store, "SELECT DISTINCT photo FROM site_reports WHERE photo IS NOT NULL") is not { } wanted)
            return [];
        return
        [
            .. there.Where(photo => !wanted.Contains(photo)).Order(StringComparer.Ordinal)
                .Select(photo => CheckFinding.Of(Path.Combine("photos", photo), "PhotoOfNoReport")),
            .. wanted.Where(photo => !File.Exists(Path.Combine(photos, photo))).Order(StringComparer.Ordinal)
                .Select(photo => CheckFinding.Of(Path.Combine("photos", photo), "PhotoMissing")),
        ];
    }

    /// <summary>What a query gives, or null where the database cannot tell, which its own findings say.</summary>
    private static HashSet<string>? Known(MaintainedStore store, string sql)
    {
        try
        {
            return [.. store.Read(session => session.All<string>(sql))];
        }
        catch (DbException)
        {
            return null;
        }
    }
}
