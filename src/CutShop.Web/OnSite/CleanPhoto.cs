using CutShop.Takeoff;
using SkiaSharp;

namespace CutShop.Web.OnSite;

/// <summary>Makes of a photo that somebody sent a JPEG that holds the picture alone: upright, no larger than is needed, and without what the camera wrote into it.</summary>
internal static class CleanPhoto
{
    /// <summary>The longest side of what is kept, in pixels.</summary>
    public const int LongestSide = 1600;

    /// <summary>The most pixels that are unpacked: four bytes each.</summary>
    public const int MostPixels = 40_000_000;

    private const int Quality = 82;

    /// <summary>The clean photo.</summary>
    /// <param name="bytes">What was sent.</param>
    /// <returns>The bytes of a JPEG file, or what is wrong.</returns>
    public static Parsed<byte[]> Of(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        if (!HasKnownStart(bytes))
            return Parsed.Bad<byte[]>("The photo is no JPEG, PNG or WebP picture.");
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null)
            return Parsed.Bad<byte[]>("The photo cannot be read: it is damaged.");
        if ((long)codec.Info.Width * codec.Info.Height > MostPixels)
            return Parsed.Bad<byte[]>("The photo has too many pixels: at most {1} million.");
        using var picture = new SKBitmap(new SKImageInfo(codec.Info.Width, codec.Info.Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        if (codec.GetPixels(picture.Info, picture.GetPixels()) != SKCodecResult.Success)
            return Parsed.Bad<byte[]>("The photo cannot be read: it is damaged.");
        return Parsed.Good(Upright(picture, codec.EncodedOrigin));
    }

    /// <summary>The first bytes of the three kinds of file: JPEG's start of image, PNG's signature, RIFF with WEBP.</summary>
    private static bool HasKnownStart(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])
        || bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A])
        || (bytes.StartsWith("RIFF"u8) && bytes.Length > 12 && bytes[8..].StartsWith("WEBP"u8));

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
