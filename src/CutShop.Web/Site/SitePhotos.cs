using System.Security.Cryptography;
using CutShop.Shop.Store;
using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Site;

/// <summary>The result for a photo that was sent.</summary>
/// <param name="Photo">The photo; null where none was sent or it is refused.</param>
/// <param name="Status">The status to refuse it with.</param>
/// <param name="Problem">What is wrong, or null.</param>
public sealed record PhotoRead(NewPhoto? Photo, int Status = StatusCodes.Status200OK, Sentence? Problem = null);

/// <summary>
/// Photos of reports: files in a folder beside the database, out of reach of the web, each named by the hash of what is in
/// it. What comes in is unpacked and written again, so nothing is kept but the picture.
/// </summary>
public sealed class SitePhotos(ShopSiteSettings settings) : IDisposable
{
    /// <summary>The largest photo that is taken, in megabytes.</summary>
    public const int MostMegabytes = 8;

    /// <summary>The largest photo that is taken, in bytes.</summary>
    public const int MostBytes = MostMegabytes * 1024 * 1024;

    /// <summary>The type of every stored photo.</summary>
    public const string ContentType = "image/jpeg";

    /// <summary>How many photos may wait while one is unpacked; whoever comes then is asked to come again.</summary>
    public const int MostWaiting = 4;

    /// <summary>When to come again, in seconds.</summary>
    public const int ComeAgainSeconds = 10;

    // A picture unpacked is many times its file: one at a time.
    private readonly SemaphoreSlim _one = new(1, 1);
    private int _here;

    private string Folder => ShopFolder.PhotosIn(settings.Folder);

    /// <summary>Reads a photo and makes a JPEG file of it, which is not kept yet. The same photo again is the same file.</summary>
    /// <param name="sent">What was sent; null or empty where the installer took none.</param>
    /// <param name="cancel">Stops.</param>
    public async Task<PhotoRead> ReadAsync(IFormFile? sent, CancellationToken cancel = default)
    {
        if (sent is not { Length: > 0 })
            return new(null);
        if (sent.Length > MostBytes)
            return Refused(SiteWords.Of("PhotoTooLarge", MostMegabytes));
        try
        {
            if (Interlocked.Increment(ref _here) > MostWaiting + 1)
                return new(null, StatusCodes.Status503ServiceUnavailable, SiteWords.Of("ManyPhotos"));
            await _one.WaitAsync(cancel);
            try
            {
                using var bytes = new MemoryStream((int)sent.Length);
                await sent.CopyToAsync(bytes, cancel);
                var clean = CleanPhoto.Of(bytes.ToArray());
                return clean.Jpeg is { } jpeg ? new(await WriteAsync(jpeg, cancel)) : Refused(clean.Problem!);
            }
            finally
            {
                _one.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref _here);
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

    private static PhotoRead Refused(Sentence problem) => new(null, StatusCodes.Status422UnprocessableEntity, problem);

    /// <summary>Whole and on the disk before it gets its name.</summary>
    private async Task<NewPhoto> WriteAsync(byte[] jpeg, CancellationToken cancel)
    {
        Directory.CreateDirectory(Folder);
        var file = Path.Combine(Folder, Convert.ToHexStringLower(SHA256.HashData(jpeg)) + ".jpg");
        var half = $"{file}.{Guid.NewGuid():N}.part";
        try
        {
            await File.WriteAllBytesAsync(half, jpeg, cancel);
            using var written = File.OpenHandle(half, FileMode.Open, FileAccess.ReadWrite);
            RandomAccess.FlushToDisk(written);
            return new(half, file);
        }
        catch
        {
            File.Delete(half);
            throw;
        }
    }
}
