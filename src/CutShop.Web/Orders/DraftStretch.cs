using CutShop.Paper.Drawings;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;

using static CutShop.Web.Orders.OrderWords;

namespace CutShop.Web.Orders;

/// <summary>A stretch of a draft's line that its page draws at a time: the one in which somebody types.</summary>
/// <param name="LineIndex">The line's place among the draft's lines.</param>
/// <param name="Bands">The line's elevation.</param>
/// <param name="Band">The posts it goes from and to.</param>
public sealed record DraftStretch(int LineIndex, LineBands Bands, Band Band)
{
    /// <summary>Its first post as a field of the draft's form, which stands for the stretch in addresses and choices.</summary>
    public string Field => new JobPlace(LineIndex, LinePart.Post, Band.First).Name;

    /// <summary>The stretch in words.</summary>
    public string Name => T["StretchName", Line.Mark, Line.At(Band.First).Mark, Line.At(Band.Last).Mark];

    private Line Line => Bands.Line;

    /// <summary>All stretches of a job in order; at least one.</summary>
    public static IReadOnlyList<DraftStretch> Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return [.. job.Lines.Select(LineBands.Of).Index().SelectMany(line => line.Item.Bands.Select(band => new DraftStretch(line.Index, line.Item, band)))];
    }

    /// <summary>The stretch that a field speaks of: that of its post or section, else the first of its line, else the first of all.</summary>
    /// <param name="all">All stretches of the job.</param>
    /// <param name="field">A field of the form, or a part such as <c>lines[0].posts[12]</c>; null for none.</param>
    public static DraftStretch At(IReadOnlyList<DraftStretch> all, string? field)
    {
        ArgumentNullException.ThrowIfNull(all);
        var place = JobPlace.Find(field) ?? JobPlace.Job;
        var index = place.Part is LinePart.Post or LinePart.Section ? place.Index : 0;
        return all.LastOrDefault(stretch => stretch.LineIndex == (place.Line ?? 0) && stretch.Band.First <= index && index <= stretch.Band.Last)
            ?? all.FirstOrDefault(stretch => stretch.LineIndex == place.Line)
            ?? all[0];
    }

    /// <summary>What hangs in the stretch: each piece with its sections there, row by row.</summary>
    public IEnumerable<(Piece Piece, PieceSection Section)> Hanging(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        return takeoff.Pieces
            .Where(piece => piece.Line == Line.Mark && piece.First < Band.Last && piece.Last > Band.First)
            .SelectMany(piece => piece.Sections
                .Take(Band.Last - piece.First)
                .Skip(Band.First - piece.First)
                .Select(section => (piece, section)));
    }
}
