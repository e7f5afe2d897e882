using CutShop.CutPlan;
using CutShop.Paper.Drawings;
using CutShop.Paper.Words;

namespace CutShop.Paper.Tickets;

/// <summary>A whole cut plan as one picture: its coils as bars, one under the other.</summary>
public static class CutPlanPicture
{
    private const double Letters = 3.2;
    private const double BarTop = 6;
    private const double Pitch = 20;
    private const double Margin = 4;

    /// <summary>The picture.</summary>
    /// <param name="coils">What is cut from each coil.</param>
    /// <param name="settings">Units and words.</param>
    public static Drawing Of(IReadOnlyList<CoilCuts> coils, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(coils);
        ArgumentNullException.ThrowIfNull(settings);
        var text = settings.Text;
        var shapes = new List<Shape>();
        var width = 0.0;
        foreach (var (index, coil) in coils.Index())
        {
            var top = Margin + (index * Pitch);
            var bar = CoilBar.Of(coil, settings);
            shapes.Add(new DrawnText(new(Margin, top + Letters), CutPlanSheet.NameOf(coil, settings), Letters, Bold: true));
            shapes.AddRange(bar.Shapes.Select(shape => Moved(shape, Margin, top + BarTop)));
            width = Math.Max(width, bar.Width);
        }
        return new(text["CutPlanTitle"], text["PlanPictureDescription", coils.Count], width + (2 * Margin), (2 * Margin) + (coils.Count * Pitch), shapes);
    }

    private static Shape Moved(Shape shape, double right, double down) => shape switch
    {
        Box box => box with { X = box.X + right, Y = box.Y + down },
        DrawnText words => words with { At = words.At.Moved(right, down) },
        _ => throw new InvalidOperationException($"A coil's bar holds no {shape.GetType().Name}."),
    };
}
