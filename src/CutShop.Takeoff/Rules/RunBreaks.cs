using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Rules;

/// <summary>Where a run is broken because it is longer than a cut may be.</summary>
/// <param name="Parts">The parts along the line, from station to station.</param>
/// <param name="Reached">The furthest station that a part can reach which is too long; null where no part is too long.</param>
internal readonly record struct RunBreaks(IReadOnlyList<(int First, int Last)> Parts, int? Reached)
{
    /// <summary>
    /// Breaks a run at bored posts inside it that have no turn: each part goes to the last such post at which its cut, rounding included, is
    /// at most the longest (common practice, no source).
    /// </summary>
    public static RunBreaks Of(Job job, RowGeometry row, int first, int last)
    {
        if (job.Longest is not { } longest || row.Row.IsUnbroken)
            return new([(first, last)], Reached: null);
        var parts = new List<(int First, int Last)>();
        for (var from = first; from < last;)
        {
            var (to, reached) = Furthest(job, row, from, last, longest);
            if (to is null)
                return new([(first, last)], reached);
            parts.Add((from, to.Value));
            from = to.Value;
        }
        return new(parts, Reached: null);
    }

    /// <summary>The length to cut for a run.</summary>
    public static Length CutOf(Job job, RowGeometry row, int first, int last)
    {
        var net = Length.Zero;
        for (var i = first; i <= last; i++)
            net += row.Taken(i, first, last).Length;
        for (var i = first; i < last; i++)
            net += ArcOf(row, i);
        return job.Allowances.Cut(net, row.Rope.IsNatural);
    }

    private static (int? To, int Reached) Furthest(Job job, RowGeometry row, int from, int last, Length longest)
    {
        var (to, reached) = ((int?)null, from);
        var inside = row.Taken(from, from, last).Length; // what the first post takes; arcs, and what the posts between take
        for (var i = from + 1; i <= last; i++)
        {
            inside += ArcOf(row, i - 1);
            var isEnd = i == last || row.MayBreakAt(i);
            var net = inside + row.Taken(i, from, i).Length;
            if (job.Allowances.Cut(net, row.Rope.IsNatural) > longest)
                break;
            reached = i;
            if (isEnd)
                to = i;
            inside += row.Taken(i, from, last).Length;
        }
        return (to, reached);
    }

    private static Length ArcOf(RowGeometry row, int section)
    {
        var (hang, rope) = (row.HangIn(section), row.Hanging(section));
        var span = row.Span(section);
        var chord = span.Rise == 0 ? span.Level : Length.RoundedFromInches(rope.Chord);
        return hang.Kind == HangKind.Slack ? chord + hang.Amount : rope.IsStraight ? chord : Length.RoundedFromInches(rope.Arc);
    }
}
