using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

namespace CutShop.Paper.Drawings;

/// <summary>Side views of a line: posts to scale on the ground's slope, the hanging ropes in their true curves, widths and sags.</summary>
public static class Elevation
{
    /// <summary>Width of every drawing on a sheet, in millimetres.</summary>
    public static double PaperWidth => DrawingPage.Paper.Width;

    /// <summary>The most bands of one line that are drawn.</summary>
    public const int MostBands = 40;

    /// <summary>One drawing for each band of the line, in order; at most <see cref="MostBands"/>. Each is drawn when it is asked for.</summary>
    /// <param name="takeoff">The job's takeoff.</param>
    /// <param name="line">A line of the job.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="boldRun">The run to draw bold, or null.</param>
    public static IEnumerable<Drawing> Of(JobTakeoff takeoff, Line line, PaperSettings settings, string? boldRun = null) =>
        Draw(takeoff, line, settings, boldRun, (_, number) => number <= MostBands);

    /// <summary>The same in fewer bands, drawn smaller, for a reader who wants the whole line at a glance.</summary>
    internal static IEnumerable<Drawing> Overview(JobTakeoff takeoff, Line line, PaperSettings settings) =>
        Draw(takeoff, line, settings, boldRun: null, (_, number) => number <= MostBands, LineBands.SmallestOverview(line), LineBands.LargestOverview);

    /// <summary>The bands of a line in which a run hangs, the run bold.</summary>
    /// <param name="takeoff">The job's takeoff.</param>
    /// <param name="piece">The run.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="page">What they are drawn for; null for paper.</param>
    public static IEnumerable<Drawing> OfRun(JobTakeoff takeoff, Piece piece, PaperSettings settings, DrawingPage? page = null)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(takeoff);
        return Draw(
            takeoff, takeoff.Job.Lines.First(line => line.Mark == piece.Line), settings, piece.Run, (band, _) => band.First < piece.Last && band.Last > piece.First, page: page);
    }

    /// <summary>How many of a line's posts stand past the last band that is drawn.</summary>
    public static int PostsNotDrawn(Line line)
    {
        var bands = LineBands.Of(line).Bands;
        return bands.Count <= MostBands ? 0 : line.Stations - 1 - bands[MostBands - 1].Last;
    }

    private static IEnumerable<Drawing> Draw(
        JobTakeoff takeoff, Line line, PaperSettings settings, string? boldRun, Func<Band, int, bool> isWanted, int smallest = LineBands.Smallest, int largest = LineBands.Largest, DrawingPage? page = null)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(settings);
        var bands = LineBands.Of(line, smallest, largest, page);
        return bands.Bands.Index().Where(band => isWanted(band.Item, band.Index + 1)).Select(band => bands.Draw(takeoff, band.Item, settings, boldRun));
    }
}
