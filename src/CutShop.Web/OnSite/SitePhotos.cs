using System.Security.Cryptography;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Web.OnSite;

/// <summary>
/// Photos of reports: files in a folder beside the database, out of reach of the web, each named by the hash of what is in
/// it. What comes in is unpacked and written anew, so nothing is kept but the picture.
/// </summary>
public sealed class SitePhotos(ShopSiteSettings settings) : IDisposable
{
    /// <summary>The largest photo that is taken, in megabytes.</summary>
    public const int MostMegabytes = 8;

    /// <summary>The most pixels that are unpacked, in millions.</summary>
    public const int MostMegapixels = CleanPhoto.MostPixels / 1_000_000;

    /// <summary>The largest photo that is taken, in bytes.</summary>
    public const int MostBytes = MostMegabytes * 1024 * 1024;

    /// <summary>The type of every stored photo.</summary>
    public const string ContentType = "image/jpeg";

    // A picture unpacked is many times its file: one at a time.
    private readonly SemaphoreSlim _one = new(1, 1);

    private string Folder => ShopFolder.PhotosIn(settings.Folder);

    /// <summary>Stores a photo as a JPEG file. The same photo again is the same file.</summary>
    /// <param name="sent">What was sent; null or empty where the installer took none.</param>
    /// <param name="cancel">Stops.</param>
    /// <returns>The file's name, null where there is no photo; or what is wrong with it as a sentence of <see cref="Words.SiteWords"/>: {0} stands for <see cref="MostMegabytes"/>, {1} for <see cref="MostMegapixels"/>.</returns>
    public async Task<Parsed<string?>> KeepAsync(IFormFile? sent, CancellationToken cancel = default)
    {
        if (sent is not { Length: > 0 })
            return Parsed.Good<string?>(null);
        if (sent.Length > MostBytes)
            return Parsed.Bad<string?>("The photo is too large: at most {0} MB.");
        using var bytes = new MemoryStream((int)sent.Length);
        await sent.CopyToAsync(bytes, cancel);
        await _one.WaitAsync(cancel);
        try
        {
            var clean = CleanPhoto.Of(bytes.ToArray());
            return clean.IsGood ? Parsed.Good<string?>(await StoreAsync(clean.Value, cancel)) : Parsed.Bad<string?>(clean.Problem!);
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>The file of a stored photo, or null where it is not there.</summary>
    public string? FileOf(string name)
    {
        var file = Path.Combine(Folder, Path.GetFileName(name));
        return File.Exists(file) ? file : null;
    }

    /// <inheritdoc/>
    public void Dispose() => _one.Dispose();

    /// <summary>Whole or not at all: a file has its name only when all of it is written.</summary>
    private async Task<string> StoreAsync(byte[] jpeg, CancellationToken cancel)
    {
        Directory.CreateDirectory(Folder);
        var name = Convert.ToHexStringLower(SHA256.HashData(jpeg)) + ".jpg";
        var file = Path.Combine(Folder, name);
        if (File.Exists(file))
            return name;
        var half = $"{file}.{Guid.NewGuid():N}.part";
        try
        {
            await File.WriteAllBytesAsync(half, jpeg, cancel);
            using (var written = File.OpenHandle(half, FileMode.Open, FileAccess.ReadWrite))
                RandomAccess.FlushToDisk(written);
            File.Move(half, file, overwrite: true);
        }
        finally
        {
            File.Delete(half);
        }
        return name;
    }
}
