using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
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
    /// <param name="takeoff">The takeoff of a job.</param>
    /// <param name="settings">Words.</param>
    /// <param name="bold">A piece whose run is drawn bold; only its line is drawn then. Null draws all lines alike.</param>
    /// <param name="tallest">How tall a drawing may be, in millimetres.</param>
    /// <param name="page">What they are drawn for; null for paper.</param>
    public static IReadOnlyList<Drawing> Of(JobTakeoff takeoff, PaperSettings settings, Piece? bold = null, double tallest = Tallest, DrawingPage? page = null)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(settings);
        var lines = bold is null ? takeoff.Job.Lines : takeoff.Job.Lines.Where(line => line.Mark == bold.Line);
        var works = PostWork.Of(takeoff).ToDictionary(work => work.Post.Mark, StringComparer.Ordinal);
        var pieces = takeoff.Pieces.ToLookup(piece => piece.Line);
        return
        [
            .. Parted(lines.Select(LinePath.Of)).Select(paths => DrawingOf(
                [.. paths.Select(path => new PlanLine(path, [.. path.Line.Posts.Select(post => works[post.Mark])], [.. pieces[path.Line.Mark]], bold))], settings, bold, tallest, page ?? DrawingPage.Paper)),
        ];
    }

    /// <summary>Lines that share a drawing and its scale: a curve or a ring, which is set out from its plan, has one of its own.</summary>
    private static IEnumerable<IReadOnlyList<LinePath>> Parted(IEnumerable<LinePath> paths)
    {
        var together = new List<LinePath>();
        foreach (var path in paths)
        {
            if (together.Count > 0 && (path.Line.IsSetOut || together[^1].Line.IsSetOut || together.Count == LinesOnADrawing))
            {
                yield return together;
                together = [];
            }
            together.Add(path);
        }
        if (together.Count > 0)
            yield return together;
    }

    private static Drawing DrawingOf(IReadOnlyList<PlanLine> lines, PaperSettings settings, Piece? bold, double tallest, DrawingPage page)
    {
        var (text, paths) = (settings.Text, lines.Select(line => line.Path).ToList());
        var head = page.HasTitle ? 8 : 0;
        var tall = tallest - head - paths.Count * (Gap + Below) - Margin;
        var scale = DrawingScale.Fitting(paths.Max(p => p.Width), page.Width - 2 * Margin, 20);
        var byHeight = DrawingScale.Fitting(Math.Max(paths.Sum(p => p.Height), 1), Math.Max(tall, 10), 20);
        if (byHeight.OneTo > scale.OneTo)
            scale = byHeight;

        var shapes = new List<Shape>();
        if (page.HasTitle)
            shapes.Add(new DrawnText(new(0, 5), text["PlanTitle", scale.OneTo], 3.4, Bold: true));
        double y = head;
        foreach (var line in lines)
        {
            var path = line.Path;
            shapes.Add(new DrawnText(new(0, y + 4), NameOf(path.Line, settings), 3, Bold: true));
            y += Gap;
            line.Draw(shapes, new Point(Margin, y), scale);
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

    private static string NameOf(Line line, PaperSettings settings) => line.Curve is { } curve
        ? settings.Text["LineOnCurve", line.Mark, settings.Figures.Both(Length.RoundedFromInches(curve.RadiusInches))]
        : settings.Text["LineName", line.Mark];
}
