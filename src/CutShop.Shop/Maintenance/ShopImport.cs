using System.Data.Common;
using System.Security.Cryptography;
using CutShop.Shop.Store;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Makes a shop from an export, in a folder or on a server. All is made in a file beside the shop's place and checked; then it is
/// there at once, or not at all. What an import leaves that was ended in the middle is no shop, and the same import may be made again.
/// </summary>
/// <param name="place">Where the shop is to be; there must be no shop.</param>
/// <param name="time">The clock.</param>
public sealed class ShopImport(ShopPlace place, TimeProvider time)
{
    private string ShopAlready => StoreReplies.Say("ShopAlready", place);

    private string Making => place.DatabaseFile + ".importing";

    private string Photos => ShopFolder.PhotosIn(place.Folder);

    private string PhotosMaking => Photos + ".importing";

    /// <summary>Imports an export.</summary>
    /// <param name="from">The export's folder.</param>
    /// <param name="cancel">Stops before the shop is there.</param>
    /// <exception cref="IOException">The server does not answer, or does not let this program in.</exception>
    public async Task<TransferAnswer> ReadAsync(string from, CancellationToken cancel = default)
    {
        if (IsShopAlready())
            return TransferAnswer.Refused(ShopAlready);
        var (manifest, problem) = ExportManifest.Read(from);
        if (manifest is null)
            return TransferAnswer.Refused(problem!);
        if (StrangePhoto(manifest) is { } strange)
            return TransferAnswer.Refused(StoreReplies.Say("StrangePhoto", strange));
        Directory.CreateDirectory(place.Folder);
        try
        {
            Make(manifest, from);
            if (ShopCheck.OfFile(Making, time) is [var finding, ..])
                return TransferAnswer.Refused(StoreReplies.Say("ExportIsOff", finding));
            return await PutInPlaceAsync(cancel) is { } refusal
                ? TransferAnswer.Refused(refusal)
                : new(manifest.Tables.Count, manifest.Tables.Sum(table => table.Rows), manifest.Photos.Count, Problem: null);
        }
        catch (InvalidDataException e)
        {
            return TransferAnswer.Refused(StoreReplies.Say("CannotImport", e.Message));
        }
        catch (DbException e) when (StorageError.Of(e) is null)
        {
            return TransferAnswer.Refused(StoreReplies.Say("CannotImport", e.Message));
        }
        finally
        {
            MaintainedFile.Delete(Making);
            DeletePhotosMaking();
        }
    }

    private bool IsShopAlready()
    {
        if (!place.IsOnServer)
            return File.Exists(place.DatabaseFile);
        using var store = place.OpenForCare(time);
        var migration = store.Version;
        return migration > 0 && !store.Read(session => IsNew(session, migration));
    }

    private static bool IsNew(ShopSession session, long migration) => ShopDigest.Of(session, migration) == ShopDigest.OfNew(migration);

    private void Make(ExportManifest manifest, string from)
    {
        using var file = MaintainedFile.Create(Making, time);
        SqliteMigrations.Apply(file.Connection, manifest.Migration);
        file.Write(session =>
        {
            Fill(session, manifest.Migration, [.. Exported(manifest, from)]);
            if (ShopDigest.Of(session, manifest.Migration) != manifest.Digest)
                throw new InvalidDataException(StoreReplies.Say("StoredIsNotManifest"));
        });
        SqliteMigrations.Apply(file.Connection);
        file.MakeOnePiece();
        DeletePhotosMaking();
        foreach (var photo in manifest.Photos)
            CopyPhoto(photo, from);
    }

    /// <summary>Rows come in as they were, into all tables in the order of their names.</summary>
    private static void Fill(ShopSession session, long migration, IReadOnlyList<IEnumerable<string>> lines)
    {
        var (free, bind) = (session.All<string>(session.Dialect.DisableConstraints), session.All<string>(session.Dialect.EnableConstraints));
        foreach (var statement in free)
            session.Execute(statement);
        foreach (var (table, rows) in TableText.All(migration).Zip(lines))
            table.Fill(session, rows);
        foreach (var statement in bind)
            session.Execute(statement);
    }

    private static IEnumerable<IEnumerable<string>> Exported(ExportManifest manifest, string from)
    {
        if (!TableText.All(manifest.Migration).Select(table => table.Name).SequenceEqual(manifest.Tables.Select(table => table.Name)))
            throw new InvalidDataException(StoreReplies.Say("OtherTables"));
        foreach (var told in manifest.Tables)
        {
            var path = Path.Combine(from, ExportManifest.TableFile(told.Name));
            if (!File.Exists(path))
                throw new InvalidDataException(StoreReplies.Say("FileMissing", path));
            if (ShopDigest.HashOf(File.ReadLines(path)) != told.Hash || File.ReadLines(path).LongCount() != told.Rows)
                throw new InvalidDataException(StoreReplies.Say("FileChanged", path));
            yield return File.ReadLines(path);
        }
    }

    private void CopyPhoto(ExportedPhoto photo, string from)
    {
        var target = Path.GetFullPath(Path.Combine(PhotosMaking, photo.Path));
        if (!target.StartsWith(Path.GetFullPath(PhotosMaking) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw new InvalidDataException(StoreReplies.Say("PhotoOutside", photo.Path));
        var path = Path.Combine(from, ExportManifest.PhotoFile(photo.Path));
        if (!File.Exists(path))
            throw new InvalidDataException(StoreReplies.Say("FileMissing", path));
        var bytes = File.ReadAllBytes(path);
        if (HashOf(bytes) != photo.Hash)
            throw new InvalidDataException(StoreReplies.Say("FileChanged", path));
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.WriteAllBytes(target, bytes);
    }

    /// <summary>A photo in the shop's folder that the export does not have: it is another shop's. One that it has is of an import that was ended.</summary>
    private string? StrangePhoto(ExportManifest manifest)
    {
        if (!Directory.Exists(Photos))
            return null;
        var known = manifest.Photos.ToDictionary(photo => Path.GetFullPath(Path.Combine(Photos, photo.Path)), photo => photo.Hash);
        return Directory.EnumerateFiles(Path.GetFullPath(Photos), "*", SearchOption.AllDirectories)
            .FirstOrDefault(path => known.GetValueOrDefault(path) != HashOf(File.ReadAllBytes(path)));
    }

    /// <summary>The database comes last: without it there is no shop yet.</summary>
    /// <returns>Why it cannot be there, or null.</returns>
    private async Task<string?> PutInPlaceAsync(CancellationToken cancel)
    {
        if (Directory.Exists(PhotosMaking))
        {
            if (Directory.Exists(Photos))
                Directory.Delete(Photos, recursive: true);
            Directory.Move(PhotosMaking, Photos);
        }
        if (place.IsOnServer)
            return await PutOnServerAsync(cancel);
        File.Move(Making, place.DatabaseFile);
        return null;
    }

    /// <summary>All in one change of the server's database, held against the file that was checked.</summary>
    private async Task<string?> PutOnServerAsync(CancellationToken cancel)
    {
        using var made = MaintainedFile.Open(Making, time);
        using var database = place.Open(time);
        return await database.WriteAsync<string?>(
            session =>
            {
                if (!IsNew(session, Migration.Newest))
                    return ShopAlready;
                var digest = made.Read(source =>
                {
                    Fill(session, Migration.Newest, [.. TableText.All(Migration.Newest).Select(table => table.Lines(source))]);
                    return ShopDigest.Of(source, Migration.Newest);
                });
                return ShopDigest.Of(session, Migration.Newest) == digest
                    ? null
                    : throw new InvalidDataException(StoreReplies.Say("ServerIsNotExport"));
            },
            cancel);
    }

    private void DeletePhotosMaking()
    {
        if (Directory.Exists(PhotosMaking))
            Directory.Delete(PhotosMaking, recursive: true);
    }

    private static string HashOf(byte[] photo) => Convert.ToHexStringLower(SHA256.HashData(photo));
}
