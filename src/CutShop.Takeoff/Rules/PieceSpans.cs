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

    /// <summary>From one column of rope to the next, in sixteenths: between them rope changes evenly with the span, within 1 % of what a sixteenth of sag takes.</summary>
    private const int ColumnStep = 32;

    private static readonly Length Sixteenth = Length.FromSixtyFourths(4);

    /// <summary>A figure so little below a mark of the tape stands on the mark.</summary>
    private static readonly Length Hair = Length.RoundedFromInches(0.001);

    private readonly Piece _piece;
    private readonly IReadOnlyList<(Length Least, Length Most)> _limits;
    private readonly IReadOnlyList<(double Level, double Rise)> _supports;
    private readonly (long Least, long Most) _sharedSags;
    private readonly IReadOnlyList<long> _firsts;
    private readonly long _rope;

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
        _firsts = [.. piece.Sections.Select(section => Sixteenths(Length.Max(section.Clear - TableReach, section.Clear / 2).RoundUpTo(Sixteenth)))];
        // One thousandth more: figures are rounded.
        _rope = piece.Sections.Sum(section => Thousandths(section.Arc.Inches)) + 1;
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
        var shared = SharedSag([.. _firsts.Select((_, i) => clear.TryGetValue(i, out var span) && span != _piece.Sections[i].Clear ? Sixteenths(span) : (long?)null)]);
        return new(
            sections,
            over,
            sections.TrueForAll(section => section.IsSound),
            shared < 0 ? null : Sixteenth * shared,
            over.IsNegative && -over <= KnotsGive ? -over : null);
    }

    /// <summary>The tables of the sections, in order, and what they have in common; sections that are alike have the same table. None where too many differ.</summary>
    public SpanTables Tables()
    {
        var kinds = _piece.Sections.Select((section, i) => (section.Clear, section.Level, section.Rise, section.Sag, section.Arc, _limits[i])).ToList();
        var firsts = kinds.Select(kind => kinds.IndexOf(kind)).ToList();
        if (firsts.Distinct().Count() > MostTables)
            return new([], LeastShared: 0, Rope: 0);
        var sags = SagsToShare();
        var tables = firsts.Distinct().ToDictionary(first => first, first => TableOf(first, sags));
        return new([.. firsts.Select(first => tables[first])], (int)_sharedSags.Least, (int)_rope);
    }

    /// <summary>
    /// The sags that may be shared, in sixteenths, up to one that no spans of the tables leave rope for: the narrowest take the least. None where
    /// none can be shared.
    /// </summary>
    private IReadOnlyList<long> SagsToShare()
    {
        var (least, most) = _sharedSags;
        IReadOnlyList<long?> narrowest = [.. _firsts];
        if (_piece.Sections.Count == 1 || most <= least || !IsEnough(narrowest, least))
            return [];
        var last = SharedSag(narrowest) is var deepest && deepest < 0 ? most : deepest + 1;
        return [.. Enumerable.Range((int)least, (int)(last - least + 1)).Select(sag => (long)sag)];
    }

    private SpanTable TableOf(int index, IReadOnlyList<long> sags)
    {
        var planned = _piece.Sections[index].Clear;
        var (first, last) = (_firsts[index], Sixteenths(Length.Min(planned + TableReach, planned * 2).RoundDownTo(Sixteenth)));
        var sections = Enumerable.Range(0, (int)(last - first + 1)).Select(step => SectionOf(index, Sixteenth * (first + step))).ToList();
        var columns = Enumerable.Range(0, (sections.Count + ColumnStep - 2) / ColumnStep + 1);
        return new(
            (int)first,
            [.. sections.Select(section => (int)Sixteenths(section.Over))],
            [.. sections.Select(section => (int)Sixteenths(section.Sag))],
            sections.FindIndex(section => section.IsSound) is var sound && sound < 0 ? 1 : sound,
            Math.Max(sections.FindLastIndex(section => section.IsSound), 0),
            [.. sags.Select(sag => (IReadOnlyList<int>)[(int)PlannedArc(index, sag), .. columns.Select(column => (int)ColumnArc(index, column, sag))])]);
    }

    private SectionAdvice SectionOf(int index, Length clear)
    {
        var span = MeasuredSpan.Of(_piece, index, clear);
        var sag = OnTape(span.Sag ?? -span.Lacks);
        return new(index, clear, OnTape(span.Over), sag, sag >= _limits[index].Least && sag <= _limits[index].Most);
    }

    /// <summary>
    /// The deepest sag in sixteenths that the rope as cut gives to all sections at once; -1 where even the shallowest takes more rope, the
    /// deepest leaves some, or there is but one section. Rope is counted in whole numbers, as a phone counts it that has the tables alone.
    /// </summary>
    /// <param name="clear">The span of each section in sixteenths; null for one that is as planned.</param>
    private long SharedSag(IReadOnlyList<long?> clear)
    {
        var (below, above) = (_sharedSags.Least, _sharedSags.Most);
        if (_piece.Sections.Count == 1 || above <= below || !IsEnough(clear, below) || IsEnough(clear, above))
            return -1;
        while (above - below > 1)
        {
            var middle = (below + above) / 2;
            if (IsEnough(clear, middle))
                below = middle;
            else
                above = middle;
        }
        return below;
    }

    private bool IsEnough(IReadOnlyList<long?> clear, long sag) => clear.Select((span, i) => ArcOf(i, span, sag)).Sum() <= ColumnStep * _rope;

    /// <summary>A section's rope at a sag in sixteenths, in thousandths of an inch times <see cref="ColumnStep"/>.</summary>
    private long ArcOf(int index, long? clear, long sag)
    {
        if (clear is not { } span)
            return ColumnStep * PlannedArc(index, sag);
        var (column, part) = Math.DivRem(span - _firsts[index], ColumnStep);
        if (part < 0)
            (column, part) = (column - 1, part + ColumnStep);
        var arc = ColumnStep * ColumnArc(index, column, sag);
        return part == 0 ? arc : arc + (part * (ColumnArc(index, column + 1, sag) - ColumnArc(index, column, sag)));
    }

    private long PlannedArc(int index, long sag) => Thousandths(ArcAt(_supports[index], Inches(sag)));

    private long ColumnArc(int index, long column, long sag) =>
        Thousandths(ArcAt(MeasuredSpan.Supports(_piece, index, Sixteenth * (_firsts[index] + (ColumnStep * column))), Inches(sag)));

    private static long Thousandths(double inches) => (long)Math.Round(inches * 1000);

    private static double ArcAt((double Level, double Rise) supports, double sag) => HangingRope.FromSag(supports.Level, supports.Rise, sag).Arc;

    private static Length OnTape(Length exact) => (exact + Hair).RoundDownTo(Sixteenth);

    private static long Sixteenths(Length length) => length.Nanometres / Sixteenth.Nanometres;

    private static double Inches(long sixteenths) => sixteenths / 16.0;
}
