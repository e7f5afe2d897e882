using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>A stretch of a line that is drawn in one band of an elevation.</summary>
/// <param name="First">The index of its first post.</param>
/// <param name="Last">The index of its last post, which the next band begins with.</param>
public readonly record struct Band(int First, int Last);

/// <summary>A line's elevation as it is parted: at one scale, a long line broken into bands, the post at a break drawn in both.</summary>
public sealed class LineBands
{
    /// <summary>The smallest scale at which a whole line is drawn in one band rather than in several.</summary>
    internal const int Smallest = 48;

    /// <summary>The largest scale.</summary>
    internal const int Largest = 10;

    /// <summary>The largest scale of an overview.</summary>
    internal const int LargestOverview = 40;

    /// <summary>Width beside posts and rope, in millimetres: for the rows' marks and the ends of the ground.</summary>
    private const double Beside = 34;

    private const double LeastBetweenRows = 5;
    private const double MostHeight = 150;

    private readonly LineGround _ground;
    private readonly DrawingScale _scale;
    private readonly DrawingPage _page;

    private LineBands(Line line, LineGround ground, DrawingScale scale, IReadOnlyList<Band> bands, DrawingPage page)
    {
        (Line, Bands) = (line, bands);
        (_ground, _scale, _page) = (ground, scale, page);
    }

    /// <summary>The line.</summary>
    public Line Line { get; }

    /// <summary>Its bands in order, all of them.</summary>
    public IReadOnlyList<Band> Bands { get; }

    /// <summary>The bands of a line at its usual scale.</summary>
    public static LineBands Of(Line line) => Of(line, Smallest, Largest);

    /// <summary>The bands of a line at a scale between two, for a page; null for paper.</summary>
    internal static LineBands Of(Line line, int smallest, int largest, DrawingPage? page = null)
    {
        ArgumentNullException.ThrowIfNull(line);
        page ??= DrawingPage.Paper;
        var room = page.Width - Beside;
        var ground = LineGround.Of(line);
        var scale = ScaleOf(line, ground, room, smallest, largest);
        var bands = Break(line, ground, scale, room, mostSections: int.MaxValue);
        // The same number of bands with about as many sections each looks better than a full one and a rest.
        var even = Break(line, ground, scale, room, (line.Sections.Count + bands.Count - 1) / bands.Count);
        return new(line, ground, scale, even.Count == bands.Count ? even : bands, page);
    }

    /// <summary>Draws one of the bands.</summary>
    /// <param name="takeoff">The takeoff of the line's job.</param>
    /// <param name="band">One of <see cref="Bands"/>.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="boldRun">The run to draw bold, or null.</param>
    public Drawing Draw(JobTakeoff takeoff, Band band, PaperSettings settings, string? boldRun = null)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(settings);
        var number = Bands.Index().First(one => one.Item == band).Index + 1;
        return new ElevationBand(Line, _ground, _scale, band, [.. takeoff.Pieces.Where(piece => piece.Line == Line.Mark)], takeoff.Job.Bore, settings, boldRun, _page)
            .Draw(settings.Text[Bands.Count == 1 ? "Elevation" : "ElevationPart", Line.Mark, _scale.OneTo, number, Bands.Count]);
    }

    /// <summary>The smallest scale at which an overview is drawn in one band: rows keep room for their words between them.</summary>
    internal static int SmallestOverview(Line line)
    {
        var heights = line.Rows.Select(row => row.Height.Inches).Order().ToList();
        var closest = heights.Zip(heights.Skip(1), (low, high) => high - low).Append(double.PositiveInfinity).Min();
        return ((int[])[100, 80, 64]).FirstOrDefault(scale => new DrawingScale(scale).Mm(closest) >= LeastBetweenRows, Smallest);
    }

    private static List<Band> Break(Line line, LineGround ground, DrawingScale scale, double room, int mostSections)
    {
        var bands = new List<Band>();
        var first = 0;
        for (var last = 1; last < line.Stations; last++)
        {
            var isEnd = last == line.Stations - 1;
            if (!isEnd && last - first < mostSections && Fits(scale, line, ground, room, first, last + 1))
                continue;
            bands.Add(new(first, last));
            first = last;
        }
        return bands;
    }

    private static DrawingScale ScaleOf(Line line, LineGround ground, double room, int smallest, int largest)
    {
        var last = line.Stations - 1;
        var whole = Math.Max(
            DrawingScale.Fitting(WidthOf(line, ground, 0, last), room, largest).OneTo,
            DrawingScale.Fitting(ground.HeightOf(line, 0, last), MostHeight, largest).OneTo);
        if (whole <= smallest)
            return new(whole);
        // Too long for one band: as large as the longest and the steepest section allow, but no larger than the smallest usual scale.
        var needed = smallest;
        for (var i = 0; i < last; i++)
        {
            needed = Math.Max(needed, DrawingScale.Fitting(WidthOf(line, ground, i, i + 1), room, smallest).OneTo);
            needed = Math.Max(needed, DrawingScale.Fitting(ground.HeightOf(line, i, i + 1), MostHeight, smallest).OneTo);
        }
        return new(needed);
    }

    private static bool Fits(DrawingScale scale, Line line, LineGround ground, double room, int first, int last) =>
        scale.Mm(WidthOf(line, ground, first, last)) <= room && scale.Mm(ground.HeightOf(line, first, last)) <= MostHeight;

    private static double WidthOf(Line line, LineGround ground, int first, int last) =>
        ground.Along[last] - ground.Along[first] + (line.At(first).Across + line.At(last).Across).Inches / 2;
}
