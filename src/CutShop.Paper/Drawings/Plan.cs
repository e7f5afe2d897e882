using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Plans of a job's lines from above, from their sections and turns. Where lines stand to one another is not known, so each has its own place.</summary>
public static class Plan
{
    private const double Gap = 12;
    private const double Below = 5;
    private const double Margin = 12;
    private const double Tallest = 150;
    private const int LinesOnADrawing = 8;

    /// <summary>How tall a smaller plan may be, in millimetres, from the largest.</summary>
    internal static IReadOnlyList<double> SmallerHeights { get; } = [110, 80, 60];

    /// <summary>Plans of all lines, some lines to a drawing.</summary>
    /// <param name="job">The job.</param>
    /// <param name="settings">Words.</param>
    /// <param name="bold">A piece whose run is drawn bold; only its line is drawn then. Null draws all lines alike.</param>
    /// <param name="tallest">How tall a drawing may be, in millimetres.</param>
    /// <param name="page">What they are drawn for; null for paper.</param>
    public static IReadOnlyList<Drawing> Of(Job job, PaperSettings settings, Piece? bold = null, double tallest = Tallest, DrawingPage? page = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(settings);
        var lines = bold is null ? job.Lines : job.Lines.Where(line => line.Mark == bold.Line);
        return [.. lines.Select(LinePath.Of).Chunk(LinesOnADrawing).Select(paths => DrawingOf(paths, settings.Text, bold, tallest, page ?? DrawingPage.Paper))];
    }

    private static Drawing DrawingOf(LinePath[] paths, PaperText text, Piece? bold, double tallest, DrawingPage page)
    {
        var head = page.HasTitle ? 8 : 0;
        var tall = tallest - head - paths.Length * (Gap + Below) - Margin;
        var scale = DrawingScale.Fitting(paths.Max(p => p.Width), page.Width - 2 * Margin, 20);
        var byHeight = DrawingScale.Fitting(Math.Max(paths.Sum(p => p.Height), 1), Math.Max(tall, 10), 20);
        if (byHeight.OneTo > scale.OneTo)
            scale = byHeight;

        var shapes = new List<Shape>();
        if (page.HasTitle)
            shapes.Add(new DrawnText(new(0, 5), text["PlanTitle", scale.OneTo], 3.4, Bold: true));
        double y = head;
        foreach (var path in paths)
        {
            shapes.Add(new DrawnText(new(0, y + 4), text["LineName", path.Line.Mark], 3, Bold: true));
            y += Gap;
            PlanLine.Draw(shapes, path, new Point(Margin, y), scale, bold);
            y += scale.Mm(path.Height) + Below;
        }
        var description = text["PlanDescription", string.Join(", ", paths.Select(p => p.Line.Mark))];
        return new(
            text["PlanTitle", scale.OneTo],
            bold is null ? description : text["PlanWithRun", description, bold.Run],
            page.Width,
            y + 2,
            shapes);
    }
}
