using SkiaSharp;

namespace CutShop.Testing.Rendering;

/// <summary>
/// Takes a picture of a printed label as a phone would: the label lies on a grey bench, turned and leaning, in uneven light,
/// out of focus, with the noise of a small camera. The same seed takes the same picture.
/// </summary>
internal static class LabelPhoto
{
    /// <summary>Pixels that a module gets in each picture: a phone takes many while it is moved.</summary>
    private static readonly float[] Looks = [6, 5, 4];

    /// <summary>How far the camera is away, in widths of the label.</summary>
    private const float Distance = 2.5f;

    private const int Noise = 8;
    private const double DarkestCorner = 0.65;

    private static readonly SKColor Bench = new(120, 120, 120);

    /// <summary>True where the code is read in one of three pictures, as a phone that is held over a label takes many.</summary>
    /// <param name="label">The label as printed, just its page.</param>
    /// <param name="code">Where the code is on it.</param>
    /// <param name="seen">How it is seen.</param>
    /// <param name="seed">Draws everything that is left to chance.</param>
    /// <param name="text">What the code says.</param>
    public static bool IsRead(SKBitmap label, CodeSquare code, PhotoOf seen, int seed, string text)
    {
        var random = new Random(seed);
        using var worn = label.Copy();
        if (seen.Smear > 0)
        {
            using var canvas = new SKCanvas(worn);
            new Smear(code, random).PutOn(canvas, seen.Smear);
        }
        return Looks.Any(pixels =>
        {
            using var picture = Take(worn, code, seen, pixels, random);
            return CodeReader.Read(picture) == text;
        });
    }

    private static SKBitmap Take(SKBitmap label, CodeSquare code, PhotoOf seen, float pixelsAModule, Random random)
    {
        var scale = pixelsAModule / code.Module;
        var side = (int)(Math.Sqrt(label.Width * label.Width + label.Height * label.Height) * scale * 1.15);
        using var flat = Seen(label, scale, side, seen, random);
        return Lit(flat, seen.Blur * pixelsAModule, random);
    }

    /// <summary>The label from where the camera is.</summary>
    private static SKBitmap Seen(SKBitmap label, float scale, int side, PhotoOf seen, Random random)
    {
        var picture = new SKBitmap(side, side, SKColorType.Bgra8888, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(picture);
        canvas.Clear(Bench);
        canvas.Translate(side / 2f, side / 2f);
        canvas.RotateDegrees((float)seen.Turn * (random.Next(2) == 0 ? 1 : -1));
        canvas.Scale(scale);
        canvas.Concat(Leaning(seen.Lean, random.NextDouble() * 2 * Math.PI, label.Width * Distance));
        canvas.Translate(-label.Width / 2f, -label.Height / 2f);
        using var image = SKImage.FromBitmap(label);
        canvas.DrawImage(image, 0, 0, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        return picture;
    }

    /// <summary>The plane of the label leaning by an angle about a line through its middle, seen from a distance in perspective.</summary>
    private static SKMatrix Leaning(double degrees, double about, float distance)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var (across, along) = Math.SinCos(about);
        // The part of a point that is square to the line is shortened, and comes nearer or goes away.
        return new SKMatrix
        {
            ScaleX = (float)(1 - across * across * (1 - cos)),
            SkewX = (float)(across * along * (1 - cos)),
            SkewY = (float)(across * along * (1 - cos)),
            ScaleY = (float)(1 - along * along * (1 - cos)),
            Persp0 = (float)(-across * sin / distance),
            Persp1 = (float)(along * sin / distance),
            Persp2 = 1,
        };
    }

    /// <summary>Out of focus, darker towards one side, with noise.</summary>
    private static SKBitmap Lit(SKBitmap flat, double blur, Random random)
    {
        using var image = SKImage.FromBitmap(flat);
        var picture = new SKBitmap(flat.Info);
        using (var canvas = new SKCanvas(picture))
        using (var paint = new SKPaint { ImageFilter = blur > 0 ? SKImageFilter.CreateBlur((float)blur, (float)blur) : null })
            canvas.DrawImage(image, 0, 0, SKSamplingOptions.Default, paint);
        var fromLeft = random.Next(2) == 0;
        var pixels = picture.GetPixelSpan();
        for (var i = 0; i < pixels.Length; i += picture.BytesPerPixel)
        {
            var across = (double)(i % picture.RowBytes) / picture.RowBytes;
            var light = DarkestCorner + (1 - DarkestCorner) * (fromLeft ? across : 1 - across);
            var grey = (byte)Math.Clamp(pixels[i] * light + random.Next(-Noise, Noise + 1), 0, 255);
            pixels.Slice(i, 3).Fill(grey);
        }
        return picture;
    }
}
