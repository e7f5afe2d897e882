using CutShop.Paper.Drawings;

namespace CutShop.Paper.Labels;

/// <summary>Draws a square code as dark rectangles, each run of dark modules in a row in one.</summary>
internal static class QrDrawing
{
    /// <summary>The rectangles.</summary>
    public static IEnumerable<Shape> Of(QrModules code, QrPlace place)
    {
        for (var row = 0; row < code.Side; row++)
        {
            for (var column = 0; column < code.Side; column++)
            {
                if (!code.IsDark(column, row))
                    continue;
                var start = column;
                while (column + 1 < code.Side && code.IsDark(column + 1, row))
                    column++;
                yield return new Box(
                    place.LeftMm + start * place.ModuleMm,
                    place.TopMm + row * place.ModuleMm,
                    (column - start + 1) * place.ModuleMm,
                    place.ModuleMm,
                    Pen.None,
                    Fill.Ink);
            }
        }
    }
}
