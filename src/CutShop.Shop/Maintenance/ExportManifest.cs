using System.Text.Json;
using System.Text.Json.Serialization;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>What an export says of itself, in manifest.json.</summary>
/// <param name="Format">Always <see cref="FormatName"/>.</param>
/// <param name="Version">The export's form; this program writes and reads <see cref="CurrentVersion"/>.</param>
/// <param name="Migration">The number of the database's newest migration.</param>
/// <param name="MadeAt">When it was made, UTC.</param>
/// <param name="Digest">The digest of the database.</param>
/// <param name="Tables">Each table.</param>
/// <param name="Photos">Each photo.</param>
internal sealed record ExportManifest(
    [property: JsonRequired] string Format,
    [property: JsonRequired] int Version,
    [property: JsonRequired] long Migration,
    [property: JsonRequired] DateTimeOffset MadeAt,
    [property: JsonRequired] string Digest,
    [property: JsonRequired] IReadOnlyList<ExportedTable> Tables,
    [property: JsonRequired] IReadOnlyList<ExportedPhoto> Photos)
{
    public const string FileName = "manifest.json";
    public const string FormatName = "cutshop export";
    public const int CurrentVersion = 1;

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Where a table's rows are, a JSON object a line.</summary>
    public static string TableFile(string table) => Path.Combine("tables", table + ".jsonl");

    /// <summary>Where the same rows are for a spreadsheet.</summary>
    public static string SheetFile(string table) => Path.Combine("sheets", table + ".csv");

    /// <summary>Where photos are.</summary>
    public static string PhotoFile(string path) => Path.Combine("photos", path);

    public void Write(string folder) => File.WriteAllText(Path.Combine(folder, FileName), JsonSerializer.Serialize(this, Options));

    /// <summary>Reads a manifest, or says why it is none.</summary>
    public static (ExportManifest? Manifest, string? Problem) Read(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
            return (null, StoreReplies.Say("NotAnExport", path, folder));
        try
        {
            var manifest = JsonSerializer.Deserialize<ExportManifest>(File.ReadAllText(path), Options)!;
            return manifest.Format != FormatName ? (null, StoreReplies.Say("OtherExport", path, manifest.Format, FormatName))
                : manifest.Version != CurrentVersion ? (null, StoreReplies.Say("OtherExportVersion", path, manifest.Version, CurrentVersion))
                : manifest.Migration > Shop.Store.Migration.Newest ? (null, StoreReplies.Say("NewerExport", manifest.Migration, Shop.Store.Migration.Newest))
                : (manifest, null);
        }
        catch (JsonException e)
        {
            return (null, StoreReplies.Say("NotAManifest", path, e.Message));
        }
    }
}

/// <summary>A table in an export.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Rows">How many rows it has.</param>
/// <param name="Hash">The hash of its lines.</param>
internal sealed record ExportedTable([property: JsonRequired] string Name, [property: JsonRequired] long Rows, [property: JsonRequired] string Hash);

/// <summary>A photo in an export.</summary>
/// <param name="Path">Its path in the folder of photos, with slashes.</param>
/// <param name="Hash">The hash of its bytes.</param>
internal sealed record ExportedPhoto([property: JsonRequired] string Path, [property: JsonRequired] string Hash);
