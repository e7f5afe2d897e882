using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>A piece as it would have been planned, had its spans been ordered as they were measured on site.</summary>
public static class AsMeasured
{
    /// <summary>
    /// Works the piece out by the takeoff's own rules, with the spans of some sections replaced; sags or slacks are as ordered. Of a piece that was
    /// cut for measured spans before, those hold where they were not measured again.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="planned">The piece as planned.</param>
    /// <param name="clear">The level distance from post face to post face by the section's index in the piece.</param>
    /// <param name="tables">Rope weights.</param>
    public static Piece Of(Job job, Piece planned, IReadOnlyDictionary<int, Length> clear, ShopTables tables)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(clear);
        ArgumentNullException.ThrowIfNull(tables);
        var line = job.Lines.Single(one => one.Mark == planned.Line);
        var geometry = new RowGeometry(job, line, line.Rows.Single(one => one.Mark == planned.Row));
        var measured = line with
        {
            Sections =
            [
                .. line.Sections.Select((section, i) => SpanOf(i) is { } span && span != geometry.Span(i).Clear
                    ? section with { Spacing = SpacingKind.Clear, Width = span, ClearAt = null }
                    : section),
            ],
        };
        var row = measured.Rows.Single(one => one.Mark == planned.Row);
        return new RowTakeoff(job, measured, row, tables).Pieces().Single(piece => piece.Run == planned.Run) with { IsAsMeasured = true };

        Length? SpanOf(int section)
        {
            var index = section - planned.First;
            return clear.TryGetValue(index, out var span) ? span
                : index >= 0 && index < planned.Sections.Count ? planned.Sections[index].Clear
                : null;
        }
    }
}
