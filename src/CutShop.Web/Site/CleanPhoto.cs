using CutShop.Takeoff.Words;
using SkiaSharp;

namespace CutShop.Web.Site;

/// <summary>Makes of a photo that somebody sent a JPEG that holds the picture alone: upright, no larger than is needed, and without what the camera wrote into it.</summary>
internal static class CleanPhoto
{
    /// <summary>The longest side of what is kept, in pixels.</summary>
    public const int LongestSide = 1600;

    /// <summary>The most pixels of a JPEG or WebP photo, which is unpacked at a reduced size.</summary>
    public const int MostPixels = 40_000_000;

    /// <summary>The most pixels of a PNG picture, which is unpacked whole: four bytes each. A telephone's screen has a third of it.</summary>
    private const int MostPixelsOfPng = 16_000_000;

    /// <summary>A picture up to this is unpacked however little it was packed from.</summary>
    private const int FewPixels = 4_000_000;

    /// <summary>
    /// Pixels for each byte of a file. A JPEG of one even colour has some 170 at most: 256 pixels in six blocks of two bits each. A PNG of
    /// one has over 300: its packing makes at most 1032 bytes of one (RFC 1951). What has more is made to fill a machine's memory.
    /// </summary>
    private const int MostPixelsAByte = 250;

    /// <summary>A JPEG may come in many passes over the whole picture; cameras and programs make some ten.</summary>
    private const int MostScans = 32;

    private const int Quality = 82;

    /// <summary>The clean photo.</summary>
    /// <param name="bytes">What was sent.</param>
    /// <returns>The bytes of a JPEG file, or what is wrong.</returns>
    public static (byte[]? Jpeg, Sentence? Problem) Of(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        if (!HasKnownStart(bytes))
            return Bad("NotAPicture");
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null)
            return Bad("PhotoDamaged");
        var pixels = (long)codec.Info.Width * codec.Info.Height;
        if (pixels > MostPixels)
            return Bad("TooManyPixels", MostPixels / 1_000_000);
        if (codec.EncodedFormat == SKEncodedImageFormat.Png && pixels > MostPixelsOfPng)
            return Bad("PngTooLarge");
        if ((pixels > FewPixels && pixels / bytes.Length > MostPixelsAByte) || HasTooManyScans(bytes))
            return Bad("NotFromCamera");
        var size = SizeToUnpack(codec);
        using var picture = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        if (codec.GetPixels(picture.Info, picture.GetPixels()) != SKCodecResult.Success)
            return Bad("PhotoDamaged");
        return (Upright(picture, codec.EncodedOrigin), null);

        static (byte[]?, Sentence?) Bad(string key, params object?[] values) => (null, SiteWords.Of(key, values));
    }

    /// <summary>The first bytes of the three kinds of file: JPEG's start of image, PNG's signature, RIFF with WEBP.</summary>
    private static bool HasKnownStart(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])
        || bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A])
        || (bytes.StartsWith("RIFF"u8) && bytes.Length > 12 && bytes[8..].StartsWith("WEBP"u8));

    /// <summary>The least size that the file can be unpacked at without losing what is kept: a JPEG in eighths, a PNG only whole.</summary>
    private static SKSizeI SizeToUnpack(SKCodec codec)
    {
        var least = codec.GetScaledDimensions(Math.Min(1f, (float)LongestSide / Math.Max(codec.Info.Width, codec.Info.Height)));
        if (Math.Max(least.Width, least.Height) >= Math.Min(LongestSide, Math.Max(codec.Info.Width, codec.Info.Height)))
            return least;
        // The nearest eighth may lie below: then the one above it.
        return codec.GetScaledDimensions(Math.Min(1f, ((float)LongestSide / Math.Max(codec.Info.Width, codec.Info.Height)) + (1f / 8)));
    }

    /// <summary>A pass begins with the mark FF DA, which stands nowhere else in packed data (ITU-T T.81, B.1.1.5).</summary>
    private static bool HasTooManyScans(ReadOnlySpan<byte> bytes) =>
        bytes is [0xFF, 0xD8, ..] && bytes.Count((ReadOnlySpan<byte>)[0xFF, 0xDA]) > MostScans;

    private static byte[] Upright(SKBitmap picture, SKEncodedOrigin origin)
    {
        var (width, height) = (picture.Width, picture.Height);
        var isOnItsSide = origin is SKEncodedOrigin.LeftTop or SKEncodedOrigin.RightTop or SKEncodedOrigin.RightBottom or SKEncodedOrigin.LeftBottom;
        var (wide, tall) = isOnItsSide ? (height, width) : (width, height);
        var scale = Math.Min(1f, (float)LongestSide / Math.Max(wide, tall));
        using var surface = SKSurface.Create(new SKImageInfo(Math.Max(1, (int)(wide * scale)), Math.Max(1, (int)(tall * scale)), SKColorType.Rgba8888, SKAlphaType.Opaque));
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.Scale(scale);
        canvas.Concat(Turned(origin, width, height));
        using var image = SKImage.FromBitmap(picture);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var drawn = surface.Snapshot();
        using var jpeg = drawn.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return jpeg.ToArray();
    }

    /// <summary>The eight ways in which a camera may have been held, as EXIF numbers them from 1 at the top left.</summary>
    private static SKMatrix Turned(SKEncodedOrigin origin, float w, float h) => origin switch
    {
        SKEncodedOrigin.TopRight => new(-1, 0, w, 0, 1, 0, 0, 0, 1),
        SKEncodedOrigin.BottomRight => new(-1, 0, w, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.BottomLeft => new(1, 0, 0, 0, -1, h, 0, 0, 1),
        SKEncodedOrigin.LeftTop => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightTop => new(0, -1, h, 1, 0, 0, 0, 0, 1),
        SKEncodedOrigin.RightBottom => new(0, -1, h, -1, 0, w, 0, 0, 1),
        SKEncodedOrigin.LeftBottom => new(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };
}
