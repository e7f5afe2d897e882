using CutShop.CutPlan;
using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;

namespace CutShop.Paper.Tickets;

/// <summary>A coil drawn as a bar from its free end, its pieces along it in cutting order, what is left at the end.</summary>
public static class CoilBar
{
    private const double Width = 180;
    private const double BarHeight = 9;
    private const double Letters = 3;
    private const double LeastForNumber = 4.5;
    private const double LeastForWords = 22;

    /// <summary>The bar, to scale over the page's width. Pieces carry their number in the coil's list where it fits.</summary>
    /// <param name="coil">The coil and its pieces.</param>
    /// <param name="settings">Units and words.</param>
    public static Drawing Of(CoilCuts coil, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(coil);
        ArgumentNullException.ThrowIfNull(settings);
        var shapes = new List<Shape>();
        foreach (var (index, piece) in coil.Pieces.Index())
            AddPiece(shapes, X(coil, piece.From), X(coil, piece.To), Figures.Count(index + 1));
        if (coil.Left.IsPositive)
            AddRest(shapes, X(coil, coil.Start - coil.Left), coil, settings);
        shapes.Add(new Box(0, 0, Width, BarHeight, Pen.Outline, Fill.None));
        return new Drawing(
            settings.Text["CoilBarTitle", coil.Coil],
            settings.Text["CoilBarDescription", coil.Coil, coil.Pieces.Count],
            Width,
            BarHeight,
            shapes);
    }

    private static double X(CoilCuts coil, Length mark) => Width * (mark.Inches / coil.Start.Inches);

    private static void AddPiece(List<Shape> shapes, double from, double to, string number)
    {
        shapes.Add(new Box(from, 0, to - from, BarHeight, Pen.Thin, Fill.Wood));
        if (to - from >= LeastForNumber)
            shapes.Add(new DrawnText(new((from + to) / 2, (BarHeight + Letters) / 2 - 0.4), number, Letters, TextAnchor.Middle, Bold: true));
    }

    private static void AddRest(List<Shape> shapes, double from, CoilCuts coil, PaperSettings settings)
    {
        // An offcut stays white; scrap is dark.
        shapes.Add(new Box(from, 0, Width - from, BarHeight, Pen.Thin, coil.IsKept ? Fill.None : Fill.Bore));
        if (coil.IsKept && Width - from >= LeastForWords)
            shapes.Add(new DrawnText(new((from + Width) / 2, (BarHeight + Letters) / 2 - 0.4), settings.Text["Offcut"], Letters, TextAnchor.Middle));
    }
}
