using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// A piece compared with the spans measured on site. The rope of a section is the arc that was planned for it: what was added to the
/// cut length for shrinkage and rounding is not counted on.
/// </summary>
public sealed class PieceSpans
{
    /// <summary>A table covers spans so much wider and narrower than planned.</summary>
    public static Length TableReach { get; } = Length.FromInches(12);

    /// <summary>The most sections of one piece that differ from each other for which tables are made.</summary>
    private const int MostTables = 16;

    /// <summary>No rope of a railing hangs deeper: it keeps the search short.</summary>
    private static readonly Length DeepestShared = Length.FromInches(96);

    private static readonly Length Sixteenth = Length.FromSixtyFourths(4);

    /// <summary>A figure so little below a mark of the tape stands on the mark.</summary>
    private static readonly Length Hair = Length.RoundedFromInches(0.001);

    private readonly Piece _piece;
    private readonly IReadOnlyList<(Length Least, Length Most)> _limits;
    private readonly IReadOnlyList<(double Level, double Rise)> _supports;
    private readonly (long Least, long Most) _sharedSags;
    private readonly double _rope;

    /// <summary>A piece with the pieces that hang beside it.</summary>
    /// <param name="takeoff">The piece's job, or as much of it as hangs beside the piece.</param>
    /// <param name="piece">A piece of it.</param>
    public PieceSpans(JobTakeoff takeoff, Piece piece)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(piece);
        _piece = piece;
        _limits = [.. piece.Sections.Select((section, i) => (SagLimit.Least(section.Sag), SagLimit.Most(takeoff.Pieces, piece, i)))];
        _supports = [.. piece.Sections.Select((section, i) => (section.Level.Inches, section.Rise.Inches))];
        _sharedSags = (
            Sixteenths(_limits.Max(limit => limit.Least).RoundUpTo(Sixteenth)),
            Sixteenths(Length.Min(_limits.Min(limit => limit.Most), DeepestShared).RoundDownTo(Sixteenth)));
        _rope = piece.Sections.Sum(section => section.Arc.Inches);
    }

    /// <summary>What the knots at the piece's ends can give together: <see cref="RopeAtPost.FromKnotTail"/> for each.</summary>
    public Length KnotsGive => Ends.Count(end => end.Kind == AtPostKind.Knot) * RopeAtPost.FromKnotTail(_piece.Rope.Across);

    private IEnumerable<AtPost> Ends => [_piece.AtPosts[0], _piece.AtPosts[^1]];

    /// <summary>True for a span that a section can have: from half as wide as planned to twice as wide. Anything else was mistyped or belongs elsewhere.</summary>
    public static bool IsLikely(PieceSection planned, Length clear)
    {
        ArgumentNullException.ThrowIfNull(planned);
        return clear * 2 >= planned.Clear && clear <= planned.Clear * 2;
    }

    /// <summary>What can be done where sections were measured; the others are as planned.</summary>
    /// <param name="clear">The level distance from post face to post face by the section's index, at least one, each likely; one that is not as planned counts as on the tape's next sixteenth.</param>
    public SpanAdvice Of(IReadOnlyDictionary<int, Length> clear)
    {
        ArgumentNullException.ThrowIfNull(clear);
        clear = clear.ToDictionary(span => span.Key, span => span.Value == _piece.Sections[span.Key].Clear ? span.Value : span.Value.RoundUpTo(Sixteenth));
        var sections = clear.OrderBy(span => span.Key).Select(span => SectionOf(span.Key, span.Value)).ToList();
        var over = sections.Aggregate(Length.Zero, (sum, section) => sum + section.Over);
        var supports = _supports.Select((planned, i) => clear.TryGetValue(i, out var span) ? MeasuredSpan.Supports(_piece, i, span) : planned).ToList();
        var shared = SharedSag(sag => supports.Sum(at => HangingRope.FromSag(at.Level, at.Rise, sag).Arc));
        return new(
            sections,
            over,
            sections.TrueForAll(section => section.IsSound),
            shared < 0 ? null : Sixteenth * shared,
            over.IsNegative && -over <= KnotsGive ? -over : null);
    }

    /// <summary>The tables of the sections, in order; sections that are alike have the same one. None where too many differ.</summary>
    public IReadOnlyList<SpanTable> Tables()
    {
        var kinds = _piece.Sections.Select((section, i) => (section.Clear, section.Level, section.Rise, section.Sag, section.Arc, _limits[i])).ToList();
        var firsts = kinds.Select(kind => kinds.IndexOf(kind)).ToList();
        if (firsts.Distinct().Count() > MostTables)
            return [];
        // The rope of each section as planned, and of all together, by the sag that all have.
        var sags = Enumerable.Range(0, (int)_sharedSags.Most + 1).Select(sag => Inches(sag)).ToList();
        var arcs = firsts.Distinct().ToDictionary(first => first, first => sags.ConvertAll(sag => ArcAt(_supports[first], sag)));
        var whole = sags.Select((_, sag) => firsts.Sum(first => arcs[first][sag])).ToList();
        var tables = arcs.ToDictionary(kind => kind.Key, kind => TableOf(kind.Key, [.. whole.Zip(kind.Value, (all, one) => all - one)]));
        return [.. firsts.Select(first => tables[first])];
    }

    /// <summary>The table of a section, with the rope of all others by the sag that all have, in sixteenths.</summary>
    private SpanTable TableOf(int index, IReadOnlyList<double> others)
    {
        var planned = _piece.Sections[index].Clear;
        var (first, last) = (Sixteenths(Length.Max(planned - TableReach, planned / 2).RoundUpTo(Sixteenth)), Sixteenths(Length.Min(planned + TableReach, planned * 2).RoundDownTo(Sixteenth)));
        var sections = Enumerable.Range(0, (int)(last - first + 1)).Select(step => SectionOf(index, Sixteenth * (first + step))).ToList();
        return new(
            (int)first,
            [.. sections.Select(section => (int)Sixteenths(section.Over))],
            [.. sections.Select(section => (int)Sixteenths(section.Sag))],
            [.. sections.Select(section => (int)SharedSag(With(section)))],
            sections.FindIndex(section => section.IsSound) is var sound && sound < 0 ? 1 : sound,
            Math.Max(sections.FindLastIndex(section => section.IsSound), 0));

        Func<double, double> With(SectionAdvice section)
        {
            var measured = MeasuredSpan.Supports(_piece, index, section.Clear);
            return sag => others[(int)(sag * 16)] + ArcAt(measured, sag);
        }
    }

    private SectionAdvice SectionOf(int index, Length clear)
    {
        var span = MeasuredSpan.Of(_piece, index, clear);
        var sag = OnTape(span.Sag ?? -span.Lacks);
        return new(index, clear, OnTape(span.Over), sag, sag >= _limits[index].Least && sag <= _limits[index].Most);
    }

    /// <summary>
    /// The deepest sag in sixteenths that the rope as cut gives to all sections at once; -1 where even the shallowest takes more rope, the
    /// deepest leaves some, or there is but one section.
    /// </summary>
    /// <param name="arcs">The arcs of all sections together at a sag, in inches.</param>
    private long SharedSag(Func<double, double> arcs)
    {
        var rope = _rope + Hair.Inches;
        var (below, above) = (_sharedSags.Least, _sharedSags.Most);
        if (_piece.Sections.Count == 1 || above <= below || arcs(Inches(below)) > rope || arcs(Inches(above)) <= rope)
            return -1;
        while (above - below > 1)
        {
            var middle = (below + above) / 2;
            if (arcs(Inches(middle)) <= rope)
                below = middle;
            else
                above = middle;
        }
        return below;
    }

    private static double ArcAt((double Level, double Rise) supports, double sag) => HangingRope.FromSag(supports.Level, supports.Rise, sag).Arc;

    private static Length OnTape(Length exact) => (exact + Hair).RoundDownTo(Sixteenth);

    private static long Sixteenths(Length length) => length.Nanometres / Sixteenth.Nanometres;

    private static double Inches(long sixteenths) => sixteenths / 16.0;
}
