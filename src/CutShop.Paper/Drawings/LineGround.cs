using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Drawings;

/// <summary>Where the posts of a line stand, unrolled into one plane: inches along the line and up from the first post's foot.</summary>
/// <param name="Along">Each station's post centre, inches from the first.</param>
/// <param name="Ground">Height of the ground at each post in inches.</param>
internal sealed record LineGround(IReadOnlyList<double> Along, IReadOnlyList<double> Ground)
{
    /// <summary>The ground of a line.</summary>
    public static LineGround Of(Line line)
    {
        var along = new double[line.Stations];
        var ground = new double[line.Stations];
        for (var i = 1; i < line.Stations; i++)
        {
            var section = line.Sections[i - 1];
            along[i] = along[i - 1] + Spans.Centres(section, line.At(i - 1), line.At(i)).Inches;
            ground[i] = ground[i - 1] + section.Rise.Inches;
        }
        return new(along, ground);
    }

    /// <summary>Highest post top minus lowest ground from one post to another, in inches.</summary>
    public double HeightOf(Line line, int first, int last)
    {
        var (top, bottom) = (double.MinValue, double.MaxValue);
        for (var i = first; i <= last; i++)
        {
            top = Math.Max(top, Ground[i] + line.At(i).Height.Inches);
            bottom = Math.Min(bottom, Ground[i]);
        }
        return top - bottom;
    }
}
