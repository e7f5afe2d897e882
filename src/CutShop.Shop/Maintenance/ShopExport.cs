using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CsvHelper;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>How an export or an import went.</summary>
/// <param name="Tables">Tables.</param>
/// <param name="Rows">Rows in them.</param>
/// <param name="Photos">Photos.</param>
/// <param name="Problem">Why nothing was made, or null.</param>
public sealed record TransferAnswer(int Tables, long Rows, int Photos, string? Problem)
{
    /// <summary>True where it is done.</summary>
    public bool IsDone => Problem is null;

    internal static TransferAnswer Refused(string problem) => new(0, 0, 0, problem);
}

/// <summary>
/// Writes everything a shop holds in open formats: each table as JSON, a row a line, and as CSV for a spreadsheet, the photos as
/// they are, and a manifest with hashes. It can be imported into an empty shop.
/// </summary>
/// <param name="place">Where the shop is.</param>
/// <param name="time">The clock.</param>
public sealed class ShopExport(ShopPlace place, TimeProvider time)
{
    private const string Unfinished = ".part";

    /// <summary>Writes the export, as of one moment; the shop may be worked on. The folder is whole or not there.</summary>
    /// <param name="to">A folder that is not there yet.</param>
    public TransferAnswer Write(string to)
    {
        var target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(to));
        if (Directory.Exists(target) || File.Exists(target))
            return TransferAnswer.Refused(StoreReplies.Say("FolderThere", target));
        if (!place.IsOnServer && !File.Exists(place.DatabaseFile))
            return TransferAnswer.Refused(StoreReplies.Say("NoDatabaseAt", place));
        using var store = place.OpenForCare(time);
        var migration = store.Version;
        if (migration is 0 || migration > Migration.Newest)
            return TransferAnswer.Refused(StoreReplies.Say("UnknownMigration", place, migration, Migration.Newest));
        var part = target + Unfinished;
        DeleteFolder(part);
        try
        {
            var manifest = store.Read(session => WriteInto(part, session, migration));
            Directory.Move(part, target);
            return new(manifest.Tables.Count, manifest.Tables.Sum(table => table.Rows), manifest.Photos.Count, Problem: null);
        }
        finally
        {
            DeleteFolder(part);
        }
    }

    private ExportManifest WriteInto(string part, ShopSession session, long migration)
    {
        foreach (var name in new[] { ExportManifest.TableFile(""), ExportManifest.SheetFile("") })
            Directory.CreateDirectory(Path.Combine(part, Path.GetDirectoryName(name)!));
        var tables = TableText.All(migration).Select(table => WriteTable(part, table, table.Lines(session))).ToList();
        var photos = WritePhotos(part);
        var manifest = new ExportManifest(
            ExportManifest.FormatName,
            ExportManifest.CurrentVersion,
            migration,
            time.GetUtcNow(),
            ShopDigest.Of(tables.Select(table => (table.Name, table.Hash))),
            tables,
            photos);
        manifest.Write(part);
        return manifest;
    }

    private static ExportedTable WriteTable(string part, TableText table, IEnumerable<string> lines)
    {
        using var rows = new StreamWriter(Path.Combine(part, ExportManifest.TableFile(table.Name)), append: false, new UTF8Encoding(false)) { NewLine = "\n" };
        using var sheet = CsvWriter.ToFile(Path.Combine(part, ExportManifest.SheetFile(table.Name)), SafeCsv.Options);
        // What opens a door stays out of spreadsheets.
        var shown = table.Columns.Where(column => !column.Name.EndsWith("_hash", StringComparison.Ordinal) && column.Name != "stamp").Select(column => column.Name).ToList();
        sheet.WriteHeader([.. shown]);
        var count = 0L;
        var hash = ShopDigest.HashOf(lines.Select(line =>
        {
            count++;
            rows.WriteLine(line);
            using var json = JsonDocument.Parse(line);
            foreach (var name in shown)
                WriteField(sheet, json.RootElement.GetProperty(name));
            sheet.EndRecord();
            return line;
        }));
        return new(table.Name, count, hash);
    }

    private static void WriteField(CsvWriter sheet, JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Number)
            sheet.WriteField(value.GetInt64(), default, CultureInfo.InvariantCulture);
        else
            sheet.WriteField(value.ToString());
    }

    private List<ExportedPhoto> WritePhotos(string part)
    {
        var from = ShopFolder.PhotosIn(place.Folder);
        if (!Directory.Exists(from))
            return [];
        var photos = new List<ExportedPhoto>();
        foreach (var path in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            var name = Path.GetRelativePath(from, path).Replace(Path.DirectorySeparatorChar, '/');
            var bytes = File.ReadAllBytes(path);
            var copy = Path.Combine(part, ExportManifest.PhotoFile(name));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.WriteAllBytes(copy, bytes);
            photos.Add(new(name, Convert.ToHexStringLower(SHA256.HashData(bytes))));
        }
        return photos;
    }

    private static void DeleteFolder(string path)
    {
        if (Directory.Exists(path))
            Directory.Delete(path, recursive: true);
    }
}
