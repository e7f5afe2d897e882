using System.Net;
using CutShop.Testing.Stores;
using Microsoft.AspNetCore.Http;
using Microsoft.Data.Sqlite;
using SkiaSharp;

namespace CutShop.Web.Tests.Site;

/// <summary>Whoever has a label may send photos: a refused one leaves nothing, and none keeps the machine from others.</summary>
public sealed class ReportPhotosTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_report_that_the_shop_refuses_leaves_no_photo()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes[0].Plain;
        var (taken, statuses) = (0, new HashSet<HttpStatusCode>());
        for (var i = 0; i < SiteReports.MostOpenOfAPiece + 5; i++)
        {
            using var answer = await ReportAsync(shop, code, Picture(60, 40, SKEncodedImageFormat.Png, shade: 8 * i));
            taken += answer.StatusCode == HttpStatusCode.OK ? 1 : 0;
            statuses.Add(answer.StatusCode);
        }
        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.UnprocessableEntity], statuses.Order());
        Assert.Equal(SiteReports.MostOpenOfAPiece, taken);
        Assert.Equal(taken, Directory.EnumerateFiles(ShopFolder.PhotosIn(shop.Database.Folder)).Count());
    }

    [Fact]
    public async Task A_report_that_cannot_be_stored_leaves_no_photo_and_the_same_photo_of_another_report_stays()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var codes = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes;
        var photo = Picture(60, 40, SKEncodedImageFormat.Jpeg, shade: 3);
        foreach (var isThere in new[] { false, true })
        {
            Run(shop, "CREATE TRIGGER broken BEFORE INSERT ON site_reports BEGIN SELECT RAISE(ABORT, 'broken'); END");
            using (var broken = await ReportAsync(shop, codes[0].Plain, photo))
                Assert.Equal(HttpStatusCode.InternalServerError, broken.StatusCode);
            Run(shop, "DROP TRIGGER broken");
            Assert.Equal(isThere ? 1 : 0, Directory.EnumerateFiles(ShopFolder.PhotosIn(shop.Database.Folder)).Count());
            using var good = await ReportAsync(shop, codes[1].Plain, photo);
            Assert.Equal(HttpStatusCode.OK, good.StatusCode);
        }
    }

    [Fact]
    public async Task A_report_sent_again_is_answered_before_its_photo_is_looked_at()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes[0].Plain;
        var key = SiteShop.NewKey();
        using var first = await ReportAsync(shop, code, Picture(60, 40, SKEncodedImageFormat.Png, shade: 1), key);
        using var again = await ReportAsync(shop, code, [1, 2, 3], key);
        Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Equal(await first.TextAsync(), await again.TextAsync());
    }

    [Theory]
    [InlineData(6300, 6300, SKEncodedImageFormat.Png, "too many pixels for a PNG")]
    [InlineData(3900, 3900, SKEncodedImageFormat.Png, "compressed in a way that no camera uses")]
    [InlineData(6600, 6600, SKEncodedImageFormat.Jpeg, "too many pixels: at most 40 million")]
    public async Task A_picture_that_is_made_to_fill_the_memory_is_refused_before_it_is_unpacked(int width, int height, SKEncodedImageFormat format, string said)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes[0].Plain;
        using var answer = await ReportAsync(shop, code, Picture(width, height, format, shade: 0));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(said, await answer.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_JPEG_in_very_many_passes_is_refused()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes[0].Plain;
        var photo = Picture(60, 40, SKEncodedImageFormat.Jpeg, shade: 0);
        // ITU-T T.81, B.2.3: each pass begins with FF DA.
        byte[] passes = [.. Enumerable.Repeat<byte[]>([0xFF, 0xDA], 40).SelectMany(mark => mark)];
        using var answer = await ReportAsync(shop, code, [.. photo[..^2], .. passes, .. photo[^2..]]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Theory]
    [InlineData(4000, 3000)]
    [InlineData(3000, 4000)]
    [InlineData(1601, 1200)]
    [InlineData(1600, 900)]
    [InlineData(200, 100)]
    public async Task A_photo_of_any_size_keeps_its_picture_and_is_no_larger_than_is_needed(int width, int height)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes[0].Plain;
        using (var answer = await ReportAsync(shop, code, Picture(width, height, SKEncodedImageFormat.Jpeg, shade: 0)))
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        using var kept = SKBitmap.Decode(Assert.Single(Directory.EnumerateFiles(ShopFolder.PhotosIn(shop.Database.Folder))));
        Assert.Equal(Math.Min(1600, Math.Max(width, height)), Math.Max(kept.Width, kept.Height));
        Assert.Equal((double)width / height, (double)kept.Width / kept.Height, 0.01);
        // The left third is red, the rest is noise round grey.
        Assert.InRange(kept.GetPixel(kept.Width / 10, kept.Height / 2).Red - kept.GetPixel(kept.Width / 10, kept.Height / 2).Blue, 120, 255);
        Assert.InRange(kept.GetPixel(kept.Width * 9 / 10, kept.Height / 2).Red - kept.GetPixel(kept.Width * 9 / 10, kept.Height / 2).Blue, -90, 90);
    }

    [Fact]
    public async Task While_one_photo_is_unpacked_four_wait_and_whoever_comes_then_is_asked_to_come_again()
    {
        using var store = new TestStore();
        using var database = store.Open();
        using var photos = new SitePhotos(new(database, ShopTables.Standard, PaperSettings.Default, new Uri("https://shop.example")));
        var photo = Picture(60, 40, SKEncodedImageFormat.Jpeg, shade: 0);
        var gate = new TaskCompletionSource();
        var here = Enumerable.Range(0, SitePhotos.MostWaiting + 1).Select(_ => photos.ReadAsync(new SlowFile(photo, gate.Task), Cancel)).ToList();
        var refused = await photos.ReadAsync(new SlowFile(photo, Task.CompletedTask), Cancel);
        Assert.Equal(StatusCodes.Status503ServiceUnavailable, refused.Status);
        gate.SetResult();
        foreach (var read in await Task.WhenAll(here))
        {
            Assert.Null(read.Problem);
            read.Photo!.Dispose();
        }
        Assert.Equal(StatusCodes.Status200OK, (await photos.ReadAsync(new SlowFile([], Task.CompletedTask), Cancel)).Status);
        Assert.Empty(Directory.EnumerateFiles(ShopFolder.PhotosIn(store.Folder)));
    }

    [Fact]
    public async Task So_many_photos_a_minute_come_from_one_address_and_an_IPv6_customer_counts_as_one()
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var codes = (await shop.TakeInDemoAsync("lq-1042-north-walk.json")).Codes;
        var photo = Picture(60, 40, SKEncodedImageFormat.Jpeg, shade: 0);
        for (var i = 0; i < GuessLimits.PhotosAMinute; i++)
        {
            using var taken = await ReportAsync(shop, codes[i % codes.Count].Plain, photo, from: $"2001:db8:0:1::{i + 1:x}");
            Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
        }
        using var one = await ReportAsync(shop, codes[0].Plain, photo, from: "2001:db8:0:1:ffff:ffff:ffff:ffff");
        Assert.Equal(HttpStatusCode.TooManyRequests, one.StatusCode);
        Assert.NotNull(one.Headers.RetryAfter);
        using var other = await ReportAsync(shop, codes[0].Plain, photo, from: "2001:db8:0:2::1");
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
        using var without = await ReportAsync(shop, codes[0].Plain, photo: null, from: "2001:db8:0:1::1");
        Assert.Equal(HttpStatusCode.OK, without.StatusCode);
    }

    private static void Run(RunningShop shop, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={shop.Database.Path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The texts are this file's own.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    private static async Task<HttpResponseMessage> ReportAsync(RunningShop shop, string code, byte[]? photo, string? key = null, string? from = null)
    {
        using var client = shop.NewClient();
        if (from is not null)
            client.DefaultRequestHeaders.Add("X-Forwarded-For", from);
        return await client.TapAsync($"/p/{code}/report", json: true, photo, ("kind", "damaged"), ("key", key ?? SiteShop.NewKey()));
    }

    /// <summary>A picture whose left third is red; a JPEG has grain as of a camera's beside it, anything else is flat and packs to little.</summary>
    private static byte[] Picture(int width, int height, SKEncodedImageFormat format, int shade)
    {
        using var picture = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        using (var canvas = new SKCanvas(picture))
        {
            canvas.Clear(new SKColor(128, 128, (byte)(128 + shade)));
            if (format == SKEncodedImageFormat.Jpeg)
            {
                using var grain = new SKPaint { Shader = SKShader.CreatePerlinNoiseTurbulence(0.2f, 0.2f, 2, shade), BlendMode = SKBlendMode.SoftLight };
                canvas.DrawRect(0, 0, width, height, grain);
            }
            using var red = new SKPaint { Color = new SKColor(220, 20, 20) };
            canvas.DrawRect(0, 0, width / 3f, height, red);
        }
        using var data = picture.Encode(format, quality: 80);
        return data.ToArray();
    }

    /// <summary>A file that comes only once a gate is open.</summary>
    private sealed class SlowFile(byte[] bytes, Task gate) : IFormFile
    {
        public string ContentType => "image/jpeg";

        public string ContentDisposition => "";

        public IHeaderDictionary Headers { get; } = new HeaderDictionary();

        public long Length => bytes.Length;

        public string Name => "photo";

        public string FileName => "photo.jpg";

        public void CopyTo(Stream target) => target.Write(bytes);

        public async Task CopyToAsync(Stream target, CancellationToken cancellationToken = default)
        {
            await gate.WaitAsync(cancellationToken);
            await target.WriteAsync(bytes, cancellationToken);
        }

        public Stream OpenReadStream() => new MemoryStream(bytes);
    }
}
