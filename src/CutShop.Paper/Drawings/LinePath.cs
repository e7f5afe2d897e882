using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Drawings;

/// <summary>A line from above: where each post stands, in inches, x to the right and y downward, all zero or more.</summary>
/// <param name="Line">The line.</param>
/// <param name="Posts">Centres of its posts.</param>
/// <param name="Headings">Direction of the line in degrees at each post, as it arrives there; left is negative.</param>
/// <param name="Width">Greatest x.</param>
/// <param name="Height">Greatest y.</param>
internal sealed record LinePath(Line Line, IReadOnlyList<Point> Posts, IReadOnlyList<double> Headings, double Width, double Height)
{
    /// <summary>Walks along a line, turning at its corners.</summary>
    public static LinePath Of(Line line)
    {
        var posts = new Point[line.Stations];
        var headings = new double[line.Stations];
        var heading = 0.0;
        if (line is { IsClosed: true } && line.At(0).Turn is { } atFirst)
            headings[0] = Signed(atFirst);
        for (var i = 0; i < posts.Length; i++)
        {
            if (i > 0)
            {
                var step = Spans.Centres(line.Sections[i - 1], line.At(i - 1), line.At(i)).Inches;
                posts[i] = posts[i - 1].Moved(step * Math.Cos(heading * Math.PI / 180), step * Math.Sin(heading * Math.PI / 180));
            }
            if (i == 0)
                continue;
            headings[i] = heading;
            if (line.At(i).Turn is { } turn)
                heading -= Signed(turn);
        }
        // A ring is drawn closed: a gap that is left over has its warning.
        if (line.IsClosed)
            posts[^1] = posts[0];
        var (left, top) = (posts.Min(p => p.X), posts.Min(p => p.Y));
        var moved = posts.Select(p => p.Moved(-left, -top)).ToArray();
        return new(line, moved, headings, moved.Max(p => p.X), moved.Max(p => p.Y));

        static double Signed(Turn turn) => (double)turn.Degrees * (turn.Side == TurnSide.Left ? 1 : -1);
    }
}
