using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>What makes a job impossible once its geometry is worked out: posts too close for what is between them, runs longer than a cut may be.</summary>
internal static class ImpossibleRuns
{
    /// <summary>Reports them.</summary>
    public static void Report(Job job, Action<JobPlace, string, IReadOnlyList<object?>> report)
    {
        for (var i = 0; i < job.Lines.Count; i++)
        {
            var line = job.Lines[i];
            for (var j = 0; j < line.Rows.Count; j++)
            {
                if (NeedsALook(job, line, line.Rows[j]))
                    ReportRow(new(job, line, line.Rows[j]), new(i), new(i, LinePart.Row, j), job, report);
            }
        }
    }

    /// <summary>Reading is quick: what cannot be wrong is not worked out.</summary>
    private static bool NeedsALook(Job job, Line line, Row row) =>
        job.Longest is not null || row.Treatments[0].Kind == TreatmentKind.Eye || row.Treatments[^1].Kind == TreatmentKind.Eye
        || line.Posts.Any(post => post.Turn is not null && (post.Corner == CornerKind.Through || post.SkewDegrees != 0));

    private static void ReportRow(RowGeometry row, JobPlace line, JobPlace place, Job job, Action<JobPlace, string, IReadOnlyList<object?>> report)
    {
        var tooClose = Enumerable.Range(0, row.Line.Sections.Count).Where(section => !row.Span(section).Level.IsPositive || !row.Span(section).Clear.IsPositive).ToList();
        foreach (var section in tooClose)
            report(row.Line.Curve is null ? line["sections"][section] : line["curve"], "NoRoomBetween", [row.Row.Mark, row.Line.At(section).Mark, row.Line.At(section + 1).Mark]);
        if (tooClose.Count > 0 || job.Longest is not { } longest)
            return;
        foreach (var (first, last) in row.Runs())
        {
            if (row.Row.IsUnbroken && RunBreaks.CutOf(job, row, first, last) is var cut && cut > longest)
                report(place["unbroken"], "UnbrokenTooLong", [row.Line.At(first).Mark, LengthText.FeetInches(cut), LengthText.FeetInches(longest)]);
            else if (RunBreaks.Of(job, row, first, last).Reached is { } reached)
                report(JobPlace.Job["longest"], "LongerThanCoil", [row.Row.Mark, row.Line.At(first).Mark, row.Line.At(reached).Mark]);
        }
    }
}
