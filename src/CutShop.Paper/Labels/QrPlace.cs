using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;

namespace CutShop.Paper.Labels;

/// <summary>Where a square code goes on a label: its corner and its module, all whole numbers of printer dots.</summary>
/// <param name="LeftMm">Left edge of the dark area.</param>
/// <param name="TopMm">Top edge of the dark area.</param>
/// <param name="ModuleMm">Side of one module.</param>
/// <param name="RightMm">Right edge of the quiet zone: where text may start.</param>
public readonly record struct QrPlace(double LeftMm, double TopMm, double ModuleMm, double RightMm)
{
    /// <summary>Modules of quiet zone on each side (ISO/IEC 18004).</summary>
    public const int QuietZone = 4;

    /// <summary>The smallest module that a phone reads with ease, in millimetres; common practice.</summary>
    public const double SmallestModule = 0.5;

    /// <summary>The code takes no more than this share of the label's width, so that the words have room.</summary>
    private const double WidthShare = 0.42;

    /// <summary>The largest module that fits the label.</summary>
    /// <returns>The place, or how large the label would have to be.</returns>
    public static Parsed<QrPlace> Of(QrModules code, LabelStock stock)
    {
        var dot = stock.DotMm;
        var modules = code.Side + 2 * QuietZone;
        var (widthDots, heightDots) = ((int)(stock.WidthMm / dot + 1e-6), (int)(stock.HeightMm / dot + 1e-6));
        var dots = Math.Min(heightDots, (int)(widthDots * WidthShare)) / modules;
        var fewest = (int)Math.Ceiling(SmallestModule / dot - 1e-9);
        if (dots < fewest)
        {
            var side = modules * fewest * dot;
            return Parsed.Bad<QrPlace>(PaperWords.Of("LabelTooSmall", code.Side, stock.WidthMm, stock.HeightMm, fewest, fewest * dot, side / WidthShare, side));
        }
        var top = (heightDots - modules * dots) / 2;
        return Parsed.Good(new QrPlace(
            QuietZone * dots * dot, (top + QuietZone * dots) * dot, dots * dot, modules * dots * dot));
    }
}
