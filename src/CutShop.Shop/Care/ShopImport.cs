using System.Security.Cryptography;
using CutShop.Takeoff;
using Microsoft.Data.Sqlite;

namespace CutShop.Shop;

/// <summary>Makes a shop from an export. All is made beside the shop's place and checked; then it is there at once, or not at all.</summary>
/// <param name="folder">The shop's folder; it must have no database.</param>
/// <param name="tables">The tables that the program brings.</param>
/// <param name="time">The clock.</param>
public sealed class ShopImport(string folder, ShopTables tables, TimeProvider time)
{
    private string Database => ShopFolder.DatabaseIn(folder);

    private string Making => Database + ".importing";

    private string PhotosMaking => ShopFolder.PhotosIn(folder) + ".importing";

    /// <summary>Imports an export.</summary>
    /// <param name="from">The export's folder.</param>
    public TransferAnswer Read(string from)
    {
        if (File.Exists(Database) || Directory.Exists(ShopFolder.PhotosIn(folder)))
            return TransferAnswer.Refused($"{folder} is a shop already; accepted: a folder without a database and photos.");
        var (manifest, problem) = ExportManifest.Read(from);
        if (manifest is null)
            return TransferAnswer.Refused(problem!);
        Directory.CreateDirectory(folder);
        try
        {
            Fill(manifest, from);
            if (ShopCheck.OfFile(Making, tables, time) is [var finding, ..])
                return TransferAnswer.Refused($"Something is off in the export. {finding}");
            PutInPlace(manifest.Photos.Count > 0);
            return new(manifest.Tables.Count, manifest.Tables.Sum(table => table.Rows), manifest.Photos.Count, Problem: null);
        }
        catch (InvalidDataException e)
        {
            return TransferAnswer.Refused($"The export is damaged: {e.Message}");
        }
        catch (SqliteException e) when (StoreTrouble.Of(e) is null)
        {
            return TransferAnswer.Refused($"The export is damaged: {e.Message}");
        }
        finally
        {
            CareFile.Delete(Making);
            if (Directory.Exists(PhotosMaking))
                Directory.Delete(PhotosMaking, recursive: true);
        }
    }

    private void Fill(ExportManifest manifest, string from)
    {
        using var file = CareFile.Create(Making, time);
        SqliteMigrations.Apply(file.Connection, manifest.Migration);
        FillTables(file.Connection, manifest, from);
        if (ShopDigest.Of(file.Connection) != manifest.Digest)
            throw new InvalidDataException("what was stored is not what the manifest tells of.");
        SqliteMigrations.Apply(file.Connection);
        file.MakeOnePiece();
        foreach (var photo in manifest.Photos)
            CopyPhoto(photo, from);
    }

    /// <summary>Triggers rest while rows come in as they were, and rows may come before those they belong to.</summary>
    private static void FillTables(SqliteConnection connection, ExportManifest manifest, string from)
    {
        var known = TableText.All(connection);
        if (!known.Select(table => table.Name).SequenceEqual(manifest.Tables.Select(table => table.Name)))
            throw new InvalidDataException("its tables are not those of its migration.");
        using var transaction = connection.BeginTransaction();
        connection.Run("PRAGMA defer_foreign_keys = ON");
        var triggers = connection.Texts("SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
        foreach (var name in connection.Texts("SELECT name FROM sqlite_schema WHERE type = 'trigger'"))
            connection.Run($"DROP TRIGGER {TableText.Quoted(name)}");
        foreach (var (table, told) in known.Zip(manifest.Tables))
        {
            connection.Run($"DELETE FROM {TableText.Quoted(table.Name)}");
            var path = Path.Combine(from, ExportManifest.TableFile(table.Name));
            if (!File.Exists(path))
                throw new InvalidDataException($"{path} is not there.");
            if (ShopDigest.HashOf(File.ReadLines(path)) != told.Hash)
                throw new InvalidDataException($"{path} is not as it was written.");
            if (table.Insert(connection, File.ReadLines(path)) != told.Rows)
                throw new InvalidDataException($"{path} does not have the {told.Rows} rows that the manifest tells of.");
        }
        foreach (var index in connection.Texts("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'virtual'"))
            connection.Run($"INSERT INTO {TableText.Quoted(index)} ({TableText.Quoted(index)}) VALUES ('rebuild')");
        foreach (var trigger in triggers)
            connection.Run(trigger);
        transaction.Commit();
    }

    private void CopyPhoto(ExportedPhoto photo, string from)
    {
        var target = Path.GetFullPath(Path.Combine(PhotosMaking, photo.Path));
        if (!target.StartsWith(Path.GetFullPath(PhotosMaking) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw new InvalidDataException($"the photo \"{photo.Path}\" would lie outside the folder of photos.");
        var path = Path.Combine(from, ExportManifest.PhotoFile(photo.Path));
        if (!File.Exists(path))
            throw new InvalidDataException($"{path} is not there.");
        var bytes = File.ReadAllBytes(path);
        if (Convert.ToHexStringLower(SHA256.HashData(bytes)) != photo.Hash)
            throw new InvalidDataException($"{path} is not as it was written.");
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.WriteAllBytes(target, bytes);
    }

    /// <summary>The database comes last: without it the folder is no shop yet.</summary>
    private void PutInPlace(bool hasPhotos)
    {
        if (hasPhotos)
            Directory.Move(PhotosMaking, ShopFolder.PhotosIn(folder));
        File.Move(Making, Database);
    }
}
