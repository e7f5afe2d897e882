using SkiaSharp;

namespace CutShop.Testing.Fuzz;

/// <summary>Good photos of three kinds with something done to them: bytes flipped, parts left out or doubled, cut off, numbers in the head made huge.</summary>
internal static class PhotoMutations
{
    private const int Head = 64;
    private const int MostChanges = 6;

    private static readonly byte[][] Good =
        [.. new[] { SKEncodedImageFormat.Jpeg, SKEncodedImageFormat.Png, SKEncodedImageFormat.Webp }.Select(Draw)];

    /// <summary>The photo of a seed: the same seed gives the same photo.</summary>
    public static byte[] Make(int seed)
    {
        var random = new Random(seed);
        var bytes = random.Of(Good).ToArray();
        for (var i = random.Next(MostChanges); i >= 0 && bytes.Length > Head; i--)
            bytes = Changed(bytes, random);
        return bytes;
    }

    private static byte[] Changed(byte[] bytes, Random random)
    {
        var (a, b) = (random.Next(bytes.Length), random.Next(bytes.Length));
        var (start, end) = (Math.Min(a, b), Math.Max(a, b));
        switch (random.Next(5))
        {
            case 0:
                bytes[a] ^= (byte)(1 << random.Next(8));
                return bytes;
            case 1:
                bytes.AsSpan(random.Next(Head), 2).Fill(0xFF);
                return bytes;
            case 2:
                return bytes[..end];
            case 3:
                return [.. bytes[..start], .. bytes[end..]];
            default:
                return [.. bytes[..end], .. bytes[start..]];
        }
    }

    private static byte[] Draw(SKEncodedImageFormat format)
    {
        using var picture = new SKBitmap(60, 40);
        using (var canvas = new SKCanvas(picture))
        using (var paint = new SKPaint { Color = SKColors.SaddleBrown })
        {
            canvas.Clear(SKColors.SkyBlue);
            canvas.DrawCircle(30, 20, 15, paint);
        }
        using var data = picture.Encode(format, quality: 80);
        return data.ToArray();
    }
}
