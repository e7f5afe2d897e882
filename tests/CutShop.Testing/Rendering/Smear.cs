using SkiaSharp;

namespace CutShop.Testing.Rendering;

/// <summary>
/// A smear of mud, a scratch or a wet thumb: one longish patch, dark, light or grey, that covers a given share of a code's
/// data area. It leaves out the three corners: without those no reader finds the code, whatever its level.
/// </summary>
internal sealed class Smear
{
    private const float LongToWide = 3;
    private const int SamplesAModule = 4;

    private static readonly byte[] Shades = [30, 128, 235];

    private readonly CodeSquare _code;
    private readonly SKPoint _centre; // in modules
    private readonly float _angle;
    private readonly byte _shade;

    public Smear(CodeSquare code, Random random)
    {
        _code = code;
        _centre = new((float)(random.NextDouble() * code.Side), (float)(random.NextDouble() * code.Side));
        _angle = (float)(random.NextDouble() * 180);
        _shade = Shades[random.Next(Shades.Length)];
    }

    /// <summary>Puts the smear on the label, as large as the share asks.</summary>
    public void PutOn(SKCanvas label, double share)
    {
        var data = (from row in Enumerable.Range(0, _code.Side)
                    from column in Enumerable.Range(0, _code.Side)
                    where _code.IsData(column, row)
                    select (column, row)).ToList();
        var (small, large) = (0f, (float)_code.Side * 4);
        for (var i = 0; i < 24; i++)
        {
            var size = (small + large) / 2;
            if (Covered(data, size) < share)
                small = size;
            else
                large = size;
        }
        Draw(label, large);
    }

    private double Covered(List<(int Column, int Row)> data, float size)
    {
        using var patch = Patch(size);
        var hits = 0;
        foreach (var (column, row) in data)
        {
            for (var i = 0; i < SamplesAModule * SamplesAModule; i++)
            {
                var (x, y) = (column + (i % SamplesAModule + 0.5f) / SamplesAModule, row + (i / SamplesAModule + 0.5f) / SamplesAModule);
                if (patch.Contains(x, y))
                    hits++;
            }
        }
        return (double)hits / (data.Count * SamplesAModule * SamplesAModule);
    }

    private void Draw(SKCanvas label, float size)
    {
        using var patch = Patch(size);
        using var paint = new SKPaint { Color = new(_shade, _shade, _shade), IsAntialias = true };
        label.Save();
        label.Translate(_code.Left, _code.Top);
        label.Scale(_code.Module);
        foreach (var (left, top, width, height) in _code.Corners)
            label.ClipRect(SKRect.Create(left, top, width, height), SKClipOperation.Difference);
        label.ClipRect(SKRect.Create(0, 0, _code.Side, _code.Side));
        label.DrawPath(patch, paint);
        label.Restore();
    }

    private SKPath Patch(float size)
    {
        var (length, width) = (size * LongToWide / 2, size / 2);
        using var builder = new SKPathBuilder();
        builder.AddOval(new SKRect(_centre.X - length, _centre.Y - width, _centre.X + length, _centre.Y + width));
        var patch = builder.Detach();
        patch.Transform(SKMatrix.CreateRotationDegrees(_angle, _centre.X, _centre.Y));
        return patch;
    }
}
