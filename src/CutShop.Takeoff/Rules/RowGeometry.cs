using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>
/// Where one row's rope is held along its line, how it hangs between, and what it takes at each post. Stations are the line's posts;
/// in a closed line the first post is the last station too.
/// </summary>
internal sealed class RowGeometry
{
    private const int LookBack = 12;

    private readonly Job _job;
    private readonly Hold[] _holds;
    private readonly SectionSpan[] _spans;
    private readonly HangingRope[] _hanging; // as far as it was asked for; a rope that was solved has a level distance

    public RowGeometry(Job job, Line line, Row row)
    {
        (_job, Line, Row) = (job, line, row);
        Rope = row.Rope ?? job.Rope;
        IsJoinedRing = line.IsClosed && row.Treatments[0].Kind == TreatmentKind.Stopped && row.Treatments[^1].Kind == TreatmentKind.Stopped;
        _holds = new Hold[line.Stations];
        for (var i = 0; i < _holds.Length; i++)
            _holds[i] = HoldAt(i);
        _spans = new SectionSpan[line.Sections.Count];
        _hanging = new HangingRope[line.Sections.Count];
        for (var i = 0; i < _spans.Length; i++)
            _spans[i] = Spans.Between(line.Sections[i].For(row.Mark), line.At(i), _holds[i], line.At(i + 1), _holds[i + 1]);
    }

    public Line Line { get; }

    public Row Row { get; }

    /// <summary>The row's rope.</summary>
    public Rope Rope { get; }

    /// <summary>True where a row's two ends meet inside the first post of a closed line.</summary>
    public bool IsJoinedRing { get; }

    /// <summary>Where the rope is held at a station.</summary>
    public Hold this[int station] => _holds[station];

    /// <summary>The space that a section spans.</summary>
    public SectionSpan Span(int section) => _spans[section];

    /// <summary>True where two runs of the row end and meet, each in a bore of its own.</summary>
    public bool IsCorner(int station) => Line.At(station).EndsRuns && (IsOuter(station) ? IsJoinedRing : Row.Treatments[station].Kind == TreatmentKind.Bored);

    /// <summary>True at the first and the last station.</summary>
    public bool IsOuter(int station) => station == 0 || station == Line.Stations - 1;

    /// <summary>True where a run may be broken: a bored post inside it that has no turn.</summary>
    public bool MayBreakAt(int station) => !IsOuter(station) && Row.Treatments[station].Kind == TreatmentKind.Bored && Line.At(station).Turn is null;

    /// <summary>
    /// The slope of the bore at a station: that of the section before or after at the end of a run, the mean of both inside one and
    /// where ends meet in a through bore; none where the bore is level.
    /// </summary>
    /// <param name="station">The station.</param>
    /// <param name="isFirst">True where the run starts there.</param>
    /// <param name="isLast">True where it ends there.</param>
    public double SlopeOfBore(int station, bool isFirst, bool isLast) => _holds[station].IsLevel ? 0 : SlopeOfRope(station, isFirst, isLast);

    /// <summary>Rope taken up at a station by a run that goes from a first to a last one.</summary>
    public AtPost AtPost(int station, int first, int last)
    {
        var (kind, length) = Taken(station, first, last);
        var height = _holds[station].Height;
        return new(Line.At(station), kind, Row.Treatments[station], length) { Height = height == Row.Height ? null : height };
    }

    /// <summary>What the rope does there, and how much of it is taken up.</summary>
    public (AtPostKind Kind, Length Length) Taken(int station, int first, int last)
    {
        var (post, treatment) = (Line.At(station), Row.Treatments[station]);
        var (w, d) = (post.Across, Rope.Across);
        return treatment.Kind switch
        {
            TreatmentKind.Stopped when IsJoinedRing && IsCorner(station) => Corner(isFirst: station != 0),
            TreatmentKind.Stopped when IsJoinedRing => Join(),
            TreatmentKind.Stopped => (AtPostKind.Stopped, RopeAtPost.Stopped(w)),
            TreatmentKind.Knot => (AtPostKind.Knot, RopeAtPost.Knot(w, d)),
            TreatmentKind.Wrap => (AtPostKind.Wrap, RopeAtPost.Wrap(post, d, treatment) + TurnedPart(station)),
            TreatmentKind.Beside => (AtPostKind.Beside, TurnedPart(station)),
            TreatmentKind.Eye => (AtPostKind.Eye, RopeAtPost.Eye(treatment.Eye!, d, Rope.IsNatural)),
            TreatmentKind.Bored when IsCorner(station) => Corner(isFirst: station == last),
            TreatmentKind.Bored when station == first || station == last => Join(),
            TreatmentKind.Bored => (AtPostKind.Through, RopeAtPost.Through(w, SlopeOfBore(station, isFirst: false, isLast: false))),
            _ => throw new InvalidOperationException($"No treatment is of kind {treatment.Kind}."),
        };

        (AtPostKind, Length) Corner(bool isFirst) => (AtPostKind.Corner, isFirst ? RopeAtPost.CornerFirst(w, post.SkewDegrees) : RopeAtPost.CornerSecond(w, d, post.SkewDegrees));
        (AtPostKind, Length) Join() => (AtPostKind.Join, RopeAtPost.Join(w, SlopeOfBore(station, isFirst: false, isLast: false)));
    }

    /// <summary>How the rope hangs in a section. Most sections are like one of the few before.</summary>
    public HangingRope Hanging(int section)
    {
        for (var before = section; before >= 0 && before > section - LookBack; before--)
        {
            if (_hanging[before].Level != 0 && _spans[before].Level == _spans[section].Level && _spans[before].Rise == _spans[section].Rise && HangIn(before) == HangIn(section))
                return _hanging[section] = _hanging[before];
        }
        return _hanging[section] = Solved(section);
    }

    private HangingRope Solved(int section)
    {
        var (span, hang) = (_spans[section], HangIn(section));
        return hang.Kind == HangKind.Sag
            ? HangingRope.FromSag(span.Level.Inches, span.Rise, hang.Amount.Inches)
            : HangingRope.FromSlack(span.Level.Inches, span.Rise, hang.Amount.Inches);
    }

    /// <summary>Sag or slack of a section.</summary>
    public Hang HangIn(int section) => Line.Sections[section].Hang ?? Row.Hang!.Value;

    /// <summary>The runs of the row, from station to station: a corner ends one and starts the next.</summary>
    public IEnumerable<(int First, int Last)> Runs()
    {
        var first = 0;
        for (var last = 1; last < Line.Stations; last++)
        {
            if (last < Line.Stations - 1 && !IsCorner(last))
                continue;
            yield return (first, last);
            first = last;
        }
    }

    /// <summary>The slope of the rope's chord at a station.</summary>
    private double SlopeOfRope(int station, bool isFirst, bool isLast)
    {
        if (IsOuter(station) && IsJoinedRing && !IsCorner(station))
            return (_spans[0].Slope + _spans[^1].Slope) / 2;
        return isFirst || station == 0 ? _spans[station].Slope
            : isLast || station == Line.Stations - 1 ? _spans[station - 1].Slope
            : (_spans[station - 1].Slope + _spans[station].Slope) / 2;
    }

    /// <summary>What a turn adds at a post that the rope goes round or by; in a closed line it is counted once, at the finish.</summary>
    private Length TurnedPart(int station)
    {
        var counts = !IsOuter(station) || (Line.IsClosed && station != 0);
        return counts ? RopeAtPost.TurnedPart(Line.At(station), Rope.Across, Row.Treatments[station].Side) : Length.Zero;
    }

    private Hold HoldAt(int station)
    {
        var (post, treatment) = (Line.At(station), Row.Treatments[station]);
        var height = Row.HeightAt(post);
        if (treatment.Kind == TreatmentKind.Eye)
            return new(HoldKind.Pin, height, treatment.Eye!.Reach, IsLevel: true, HalfTurn: 0, Skew: 0);
        if (!treatment.IsInBore)
            return new(HoldKind.Centre, height, Length.Zero, IsLevel: true, HalfTurn: 0, Skew: 0);
        var isThrough = post is { Turn: not null, Corner: CornerKind.Through } && (!IsOuter(station) || IsJoinedRing);
        var halfTurn = isThrough ? (post.Turn!.Value.Side == TurnSide.Left ? 1 : -1) * post.Turn.Value.Radians / 2 : 0;
        return new(HoldKind.Mouth, height, Length.Zero, Row.IsLevelIn(post, _job.Bore), halfTurn, IsCorner(station) ? post.SkewDegrees * Math.PI / 180 : 0);
    }
}

/// <summary>How a rope is held at a post.</summary>
internal enum HoldKind
{
    /// <summary>At the mouth of a bore.</summary>
    Mouth,

    /// <summary>At the post's centre line, by turns or beside it.</summary>
    Centre,

    /// <summary>At a pin before the face.</summary>
    Pin,
}

/// <summary>Where a rope is held at a post.</summary>
/// <param name="Kind">How.</param>
/// <param name="Height">Height of the rope there, above ground.</param>
/// <param name="Reach">From the face to the pin; zero for anything else.</param>
/// <param name="IsLevel">True where no raked bore leads the rope up or down to the mouth.</param>
/// <param name="HalfTurn">Half the line's turn in radians where a straight bore lies along the bisector, positive to the left; else 0.</param>
/// <param name="Skew">How far the bore lies off the square to its face, in radians.</param>
internal readonly record struct Hold(HoldKind Kind, Length Height, Length Reach, bool IsLevel, double HalfTurn, double Skew)
{
    /// <summary>True where a bore lies along the section and square to its face, so that lengths add up exactly.</summary>
    public bool IsPlain => HalfTurn == 0 && Skew == 0;

    /// <summary>From the post's centre to where the tape is held to it: the mouth of a bore, else the face.</summary>
    public double Mouth(Post post) => Kind == HoldKind.Mouth && Skew != 0 ? post.Across.Inches / 2 / Math.Cos(Skew) : post.Across.Inches / 2;

    /// <summary>From the post's centre to where the rope is held, in inches.</summary>
    public double FromCentre(Post post) => Kind switch
    {
        HoldKind.Centre => 0,
        HoldKind.Pin => (post.Across.Inches / 2) + Reach.Inches,
        _ => Mouth(post),
    };
}

/// <summary>The space that a rope spans between two posts.</summary>
/// <param name="Centres">Level distance from post centre to post centre: C.</param>
/// <param name="Clear">Level distance from mouth to mouth of the bores; from the face where there is none.</param>
/// <param name="Level">Level distance between the holds: a.</param>
/// <param name="Rise">Height of the second hold over the first in inches: h.</param>
/// <param name="Slope">Slope of the rope's line from post centre to post centre: D / C.</param>
internal readonly record struct SectionSpan(Length Centres, Length Clear, Length Level, double Rise, double Slope);
