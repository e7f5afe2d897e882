using CutShop.Takeoff.JobFile;

namespace CutShop.Takeoff.Rules;

/// <summary>A place on the ground from above, in inches.</summary>
/// <param name="X">Along the line's first section.</param>
/// <param name="Y">To its left.</param>
public readonly record struct GroundPoint(double X, double Y)
{
    /// <summary>The level distance to another place.</summary>
    public double To(GroundPoint other) => double.Hypot(other.X - X, other.Y - Y);
}

/// <summary>
/// Where the posts of a line stand: from the first one, section by section, turned at each corner. Source: plane geometry.
/// </summary>
/// <param name="Centres">The post's centre at each station; in a closed line the last is where its last section leads to.</param>
/// <param name="Headings">The line's direction in degrees as it comes to each station, positive to the left of the first section.</param>
public sealed record PostPlaces(IReadOnlyList<GroundPoint> Centres, IReadOnlyList<double> Headings)
{
    /// <summary>The places of a line's posts, by what its first row makes of the tape.</summary>
    public static PostPlaces Of(Job job, Line line)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(line);
        var row = new RowGeometry(job, line, line.Rows[0]);
        var (centres, headings) = (new GroundPoint[line.Stations], new double[line.Stations]);
        var heading = 0.0;
        for (var i = 1; i < centres.Length; i++)
        {
            var (step, radians) = (row.Span(i - 1).Centres.Inches, heading * Math.PI / 180);
            centres[i] = new(centres[i - 1].X + (step * Math.Cos(radians)), centres[i - 1].Y + (step * Math.Sin(radians)));
            headings[i] = heading;
            if (line.At(i).Turn is { } turn)
                heading += (turn.Side == TurnSide.Left ? 1 : -1) * (double)turn.Degrees;
        }
        return new(centres, headings);
    }
}
