using CutShop.Paper.Drawings;
using CutShop.Paper.Labels;
using CutShop.Paper.Words;

namespace CutShop.Paper.Tickets;

/// <summary>The square code on a packing list that leads to the job's site pack.</summary>
internal static class SitePackCode
{
    private const double ModuleMm = 1;
    private const double TextSize = 4;
    private const double WidthMm = 130;

    public static Drawing Of(string address, PaperSettings settings)
    {
        var text = settings.Text;
        var code = QrModules.Of(address, QrCorrection.Quarter);
        var edge = QrPlace.QuietZone * ModuleMm;
        var side = code.Side * ModuleMm + 2 * edge;
        var shapes = QrDrawing.Of(code, new(edge, edge, ModuleMm, side)).ToList();
        foreach (var (i, line) in text.Parts("SitePackCodeLines").Index())
            shapes.Add(new DrawnText(new(side, edge + (i + 1) * TextSize * 1.5), line, TextSize, Bold: i == 0));
        return new(text["SitePackCode"], text["SitePackCodeDescription", address], WidthMm, side, shapes);
    }
}
