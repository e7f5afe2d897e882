using SkiaSharp;
using ZXing;
using ZXing.Common;

namespace CutShop.Testing.Rendering;

/// <summary>Reads a square code from a picture, as a phone would.</summary>
internal static class CodeReader
{
    /// <summary>The byte of green in a pixel of four bytes; a grey picture has one byte.</summary>
    private const int Green = 1;

    public static string? Read(SKBitmap picture)
    {
        var pixels = picture.GetPixelSpan();
        var grey = new byte[picture.Width * picture.Height];
        for (var i = 0; i < grey.Length; i++)
            grey[i] = pixels[i / picture.Width * picture.RowBytes + i % picture.Width * picture.BytesPerPixel + Green % picture.BytesPerPixel];
        var source = new RGBLuminanceSource(grey, picture.Width, picture.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        var reader = new BarcodeReaderGeneric { Options = new DecodingOptions { PossibleFormats = [BarcodeFormat.QR_CODE], TryHarder = true } };
        return reader.Decode(source)?.Text;
    }

    /// <summary>The box of dark pixels within a part of the picture: left, top, right and bottom, the last two just past it.</summary>
    public static (int Left, int Top, int Right, int Bottom) DarkBox(SKBitmap picture, int fromX, int toX)
    {
        var (left, top, right, bottom) = (int.MaxValue, int.MaxValue, 0, 0);
        for (var y = 0; y < picture.Height; y++)
        {
            for (var x = fromX; x < toX; x++)
            {
                if (picture.GetPixel(x, y).Green >= 128)
                    continue;
                (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x + 1), Math.Max(bottom, y + 1));
            }
        }
        return (left, top, right, bottom);
    }
}
