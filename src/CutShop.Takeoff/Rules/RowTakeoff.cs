using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Walks along one row of rope and works out its pieces, their bores and their screws.</summary>
internal sealed class RowTakeoff
{
    private const int ScrewsOnAWrap = 2;
    private const int ScrewsOnALongWrap = 3;
    private const int LongWrapHalfTurns = 5;
    private const int ScrewsInAJoin = 2;

    private readonly Job _job;
    private readonly Line _line;
    private readonly Row _row;
    private readonly Rope _rope;
    private readonly ShopTables _tables;
    private readonly RowGeometry _geometry;
    private readonly double? _poundsPerFoot;
    private readonly Length _wanted;
    private readonly Length _bit;
    private readonly BitChoice _bitChoice;
    private readonly bool _isFirst;
    private readonly double _loses;
    private readonly WettingManner _manner;
    private readonly Dictionary<(FixingPurpose Purpose, int Count, Length Across, double Skew, double Slope, Length Hole), ChosenScrews> _chosen = [];
    private readonly ChosenScrews?[] _last = new ChosenScrews?[(int)FixingPurpose.Eye + 1]; // by purpose
    private (double Slope, double Degrees) _rake;
    private readonly Dictionary<(PostShape Shape, Length Across, Turn Turn, double First, double Second, Length Hole), Length> _raised = [];

    public RowTakeoff(Job job, Line line, Row row, ShopTables tables, bool isFirst = false)
    {
        (_job, _line, _row, _tables, _isFirst) = (job, line, row, tables, isFirst);
        _geometry = new(job, line, row);
        _rope = _geometry.Rope;
        _poundsPerFoot = tables.Weights.PoundsPerFoot(_rope);
        _wanted = RopeBit.DiameterFor(_rope);
        (_bit, _bitChoice) = isFirst ? FirstRules.Choose(tables.Rack, _wanted, _rope.Across) : tables.Rack.Choose(_wanted, _rope.Across);
        (_loses, _manner) = job.Allowances.WettingOfNatural();
    }

    /// <summary>The row's pieces along the line: its runs, broken where they are longer than a cut may be.</summary>
    public IEnumerable<Piece> Pieces()
    {
        var count = 0;
        foreach (var (first, last) in _geometry.Runs())
        {
            foreach (var part in RunBreaks.Of(_job, _geometry, first, last).Parts)
                yield return PieceOf(++count, part.First, part.Last);
        }
    }

    /// <summary>The row's pieces, with the bores and screws that they need.</summary>
    public RowWork Work()
    {
        var work = new RowWork([.. Pieces()], [], []);
        Bore(work.Pieces, work.Bores);
        foreach (var piece in work.Pieces)
            FixFor(piece, work.Fixings);
        return work;
    }

    /// <summary>Adds the bores that the row's pieces need, along the line; at a corner the arriving one first.</summary>
    private void Bore(List<Piece> pieces, List<Bore> bores)
    {
        var before = bores.Count;
        foreach (var piece in pieces)
        {
            for (var i = piece.First; i <= piece.Last; i++)
            {
                var at = piece.AtPosts[i - piece.First];
                // Of two ends that meet in one bore the arriving one has it.
                if (at.Kind is AtPostKind.Wrap or AtPostKind.Beside or AtPostKind.Eye || (at.Kind == AtPostKind.Join && i == piece.First && !IsStartOfRing(i)) || IsJoinAtFinishOfRing(at, i))
                    continue;
                bores.Add(BoreOf(piece, i, at.Kind == AtPostKind.Join ? AtPostKind.Through : at.Kind));
            }
        }
        if (_line.IsClosed)
            Result.Bore.ArrivingFirst(bores, before, _line.Posts[0].Mark);
    }

    /// <summary>Adds the screws that a piece needs, along the piece. A knot holds itself.</summary>
    private void FixFor(Piece piece, List<Fixing> fixings)
    {
        for (var i = piece.First; i <= piece.Last; i++)
        {
            var at = piece.AtPosts[i - piece.First];
            switch (at.Kind)
            {
                case AtPostKind.Stopped:
                    fixings.Add(FixingAt(i, piece, FixingPurpose.End, FarSide(piece, i)));
                    break;
                case AtPostKind.Corner:
                    fixings.Add(FixingAt(i, piece, i == piece.Last ? FixingPurpose.CornerFirst : FixingPurpose.CornerSecond, FarSide(piece, i)));
                    break;
                case AtPostKind.Through:
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Line, new(FaceSight.Side, _line.After(i)!)));
                    break;
                case AtPostKind.Join when i == piece.Last ? !IsJoinAtFinishOfRing(at, i) : IsStartOfRing(i):
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Join, new(FaceSight.Side, _line.After(i)!), ScrewsInAJoin));
                    break;
                case AtPostKind.Wrap:
                    var count = at.Treatment.HalfTurns >= LongWrapHalfTurns ? ScrewsOnALongWrap : ScrewsOnAWrap;
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Wrap, new(FaceSight.Around, at.Post.Mark), count));
                    break;
                case AtPostKind.Beside:
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Beside, PassedSide(at, i)));
                    break;
                case AtPostKind.Eye:
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Eye, NearSide(piece, i)));
                    break;
                case AtPostKind.Knot or AtPostKind.Join:
                    break;
                default:
                    throw new InvalidOperationException($"No rope at a post is of kind {at.Kind}.");
            }
        }
    }

    /// <summary>The side that a rope passes: the outside of a turn, or the inside if so wanted, and the left where the line goes straight on.</summary>
    private Face PassedSide(AtPost at, int station)
    {
        var isRight = at.Post.Turn is { } turn && (turn.Side == TurnSide.Left) == (at.Treatment.Side == WrapSide.Outside);
        // The right of the way is the left of who looks back.
        return new(FaceSight.Side, ((isRight ? _line.Before(station) : null) ?? _line.After(station) ?? _line.Before(station))!);
    }

    private bool IsStartOfRing(int station) => station == 0 && _geometry.IsJoinedRing;

    private bool IsJoinAtFinishOfRing(AtPost at, int station) => at.Kind == AtPostKind.Join && _geometry.IsJoinedRing && station == _line.Stations - 1;

    private Piece PieceOf(int number, int first, int last)
    {
        var sections = new PieceSection[last - first];
        var atPosts = new AtPost[last - first + 1];
        var net = Length.Zero;
        for (var i = first; i <= last; i++)
        {
            atPosts[i - first] = _geometry.AtPost(i, first, last);
            net += atPosts[i - first].Length;
        }
        for (var i = first; i < last; i++)
        {
            sections[i - first] = SectionOf(i, atPosts[i - first], atPosts[i - first + 1]);
            net += sections[i - first].Arc;
        }

        var cut = _job.Allowances.Cut(net, _rope.IsNatural);
        return new(
            $"{_line.Mark}-{_row.Mark}-{number.ToString(CultureInfo.InvariantCulture)}",
            _line.Mark,
            _row.Mark,
            _row.Height,
            _rope,
            first,
            net,
            cut,
            _poundsPerFoot * cut.Inches / 12,
            sections,
            atPosts)
        {
            Trim = _rope.IsNatural && _manner != WettingManner.Preshrunk ? Length.RoundedFromInches((cut.Inches * (1 - _loses)) - net.Inches) : Length.Zero,
            Manner = _rope.IsNatural ? _manner : null,
            IsSetOut = _line.IsSetOut,
        };
    }

    private PieceSection SectionOf(int index, AtPost atBefore, AtPost atAfter)
    {
        var section = _line.Sections[index];
        var (span, hang, rope) = (_geometry.Span(index), _geometry.HangIn(index), _geometry.Hanging(index));
        var chord = span.Rise == 0 ? span.Level : Length.RoundedFromInches(rope.Chord);
        var arc = hang.Kind == HangKind.Slack ? chord + hang.Amount : rope.IsStraight ? chord : Length.RoundedFromInches(rope.Arc);
        var sag = hang.Kind == HangKind.Sag ? hang.Amount : Length.RoundedFromInches(rope.Sag);
        // From a hold to the nearest screw the rope shrinks too.
        var toScrews = ToScrew(index, atBefore) + ToScrew(index + 1, atAfter);
        var dry = _rope.IsNatural && _manner == WettingManner.HungLong
            ? HangingRope.FromArc(span.Level.Inches, span.Rise, ((arc.Inches + toScrews) / (1 - _loses)) - toScrews)
            : null;
        return new(
            _line.At(index),
            _line.At(index + 1),
            span.Clear,
            section.Rise,
            span.Level,
            Length.RoundedFromInches(span.Rise),
            chord,
            sag,
            arc,
            rope.IsStraight ? null : rope.Parameter,
            rope.IsStraight ? null : _poundsPerFoot / 12 * rope.Parameter)
        {
            MidHeight = Length.RoundedFromInches(HeightOfHolds(index, span)) - sag,
            TautShare = (arc - chord).Inches / (arc.Inches + toScrews),
            DrySag = dry is { } longer ? Length.RoundedFromInches(longer.Sag) : null,
            Climb = section.Rise + _geometry[index + 1].Height - _geometry[index].Height,
        };
    }

    /// <summary>
    /// The mean height of a section's two holds over the straight line between the ground at its post centres, in inches. A raked bore
    /// follows the rope's line; from a level one, a pin or turns the rope's height at the post counts.
    /// </summary>
    private double HeightOfHolds(int index, SectionSpan span)
    {
        var (before, after) = (_geometry[index], _geometry[index + 1]);
        var groundSlope = _line.Sections[index].Rise.Inches / span.Centres.Inches;
        var first = before.Height.Inches + Along(before, _line.At(index));
        var second = after.Height.Inches - Along(after, _line.At(index + 1));
        return (first + second) / 2;

        // What a raked bore climbs is reckoned over half the post, as in the rise between the holds.
        double Along(Hold hold, Post post) =>
            (hold.IsLevel ? 0 : post.Across.Inches / 2 * span.Slope) - (hold.FromCentre(post) * (hold.HalfTurn == 0 ? 1 : Math.Cos(hold.HalfTurn)) * groundSlope);
    }

    /// <summary>From where the rope is held at a station to its nearest screw there, in inches.</summary>
    private double ToScrew(int station, AtPost at) => at.Kind switch
    {
        AtPostKind.Stopped or AtPostKind.Through or AtPostKind.Corner => _geometry[station].Mouth(at.Post),
        AtPostKind.Join => at.Post.Across.Inches / 4,
        AtPostKind.Knot => at.Post.Across.Inches,
        _ => 0,
    };

    private Bore BoreOf(Piece piece, int station, AtPostKind kind)
    {
        var (post, hold) = (_line.At(station), _geometry[station]);
        var slope = _geometry.SlopeOfBore(station, station == piece.First && !IsJoinedAt(piece, station), station == piece.Last && !IsJoinedAt(piece, station));
        var hole = _row.HoleIn(post);
        var bit = hole?.Across ?? _bit;
        var skew = hold.Skew == 0 ? 0 : post.SkewDegrees;
        return new(
            post,
            _row.Mark,
            piece.Run,
            kind,
            _rope,
            bit,
            hole is null ? _bitChoice : new(_bitChoice.Kind, OnRack: true),
            hold.Height,
            BoreRules.SideWall(post.Across, bit, skew),
            RakeDegrees(slope),
            hole is null ? Operations(piece, station, kind, slope, skew) : [])
        {
            Wanted = hole is null ? _wanted : bit,
            IsLevel = hold.IsLevel,
            IsExisting = hole is not null,
            BoredBy = post.Boring ?? _line.Boring ?? _job.Boring,
            SkewDegrees = skew,
            KinkDegrees = hold.HalfTurn == 0 ? 0 : (double)post.Turn!.Value.Degrees / 2,
        };
    }

    private static bool IsJoinedAt(Piece piece, int station) => piece.AtPosts[station - piece.First].Kind == AtPostKind.Join;

    private BoreOperation[] Operations(Piece piece, int station, AtPostKind kind, double slope, double skew)
    {
        var across = _line.At(station).Across;
        if (kind is AtPostKind.Stopped or AtPostKind.Corner)
            return [Operation(NearSide(piece, station), BoreRules.StoppedDepth(across, skew))];
        var depth = BoreRules.ThroughDepth(across, slope);
        return kind == AtPostKind.Knot
            ? [Operation(NearSide(piece, station), depth), Operation(FarSide(piece, station), depth)]
            : [Operation(new(FaceSight.Toward, _line.Before(station)!), depth), Operation(new(FaceSight.Toward, _line.After(station)!), depth)];

        BoreOperation Operation(Face face, Length of) => new(face, of, MarkOn(station, face, _geometry[station].Height, slope, skew), StopCollar.For(of));
    }

    /// <summary>The height of a mark on a face of a post for a hole that passes the post's middle at a height and climbs along the line by a slope.</summary>
    private Length MarkOn(int station, Face face, Length height, double slope, double skew)
    {
        var across = _line.At(station).Across;
        return FaceMark.Height(height, skew == 0 ? across : RopeAtPost.ToCentre(across, skew) * 2, RakeDegrees(slope), LooksAlong(face, station));
    }

    /// <summary>1 for a face that looks along the line, -1 for one that looks back, 0 for a side.</summary>
    private int LooksAlong(Face face, int station)
    {
        var isOfNext = face.Neighbour == _line.After(station);
        return face.Sight switch
        {
            FaceSight.Toward => isOfNext ? 1 : -1,
            FaceSight.AwayFrom => isOfNext ? -1 : 1,
            _ => 0,
        };
    }

    private double RakeDegrees(double slope)
    {
        // A bore, its drillings and its screw have one slope.
        if (slope != _rake.Slope)
            _rake = (slope, Math.Atan(slope) * 180 / Math.PI);
        return _rake.Degrees;
    }

    /// <summary>At the end of a run, the face its rope leaves by.</summary>
    private Face NearSide(Piece piece, int station) => new(FaceSight.Toward, (station == piece.First ? _line.After(station) : _line.Before(station))!);

    /// <summary>At the end of a run, the face opposite to the one its rope leaves by.</summary>
    private Face FarSide(Piece piece, int station) => NearSide(piece, station) with { Sight = FaceSight.AwayFrom };

    private Fixing FixingAt(int station, Piece piece, FixingPurpose purpose, Face face, int count = 1)
    {
        var (post, hold) = (_line.At(station), _geometry[station]);
        var skew = hold.Skew == 0 ? 0 : post.SkewDegrees;
        var isJoin = purpose == FixingPurpose.Join;
        var slope = hold.Kind == HoldKind.Mouth ? _geometry.SlopeOfBore(station, station == piece.First && !isJoin, station == piece.Last && !isJoin) : 0;
        var hole = _row.HoleIn(post)?.Across ?? _bit;
        var chosen = Chosen(purpose, count, post.Across, skew, slope, hole);
        var height = purpose == FixingPurpose.CornerSecond ? hold.Height + RaiseAt(station, chosen.Choice.Screw, skew, slope, hole) : hold.Height;
        return new(post, _row.Mark, hold.Height, piece.Run, chosen.Driven, face, height, MarkOn(station, face, height, slope, skew))
        {
            RakeDegrees = LooksAlong(face, station) == 0 ? 0 : RakeDegrees(slope),
        };
    }

    /// <summary>The screws for a purpose. Most posts of a row are like the one before.</summary>
    private ChosenScrews Chosen(FixingPurpose purpose, int count, Length across, double skew, double slope, Length hole)
    {
        var key = (purpose, count, across, skew, slope, hole);
        ref var last = ref _last[(int)purpose];
        if (last is not null && last.For == key)
            return last;
        if (!_chosen.TryGetValue(key, out var chosen))
        {
            var choice = ScrewChoice.For(purpose, across, skew, _isFirst ? 0 : slope, _rope, hole, _tables, _isFirst);
            _chosen[key] = chosen = new(key, choice, choice.Driven(purpose, count));
        }
        return last = chosen;
    }

    /// <summary>How far above the middle of its bore the second screw of a corner goes in.</summary>
    private Length RaiseAt(int station, Screw? second, double skew, double slope, Length hole)
    {
        var post = _line.At(station);
        // In a ring the rope that arrives at the first post is the last to come.
        var slopeOfFirst = _geometry.SlopeOfBore(station == 0 ? _line.Stations - 1 : station, isFirst: false, isLast: true);
        var first = Chosen(FixingPurpose.CornerFirst, 1, post.Across, skew, slopeOfFirst, hole).Choice.Screw;
        if (_isFirst || first is null || second is null)
            return ScrewWood.LeastRaise(_rope.Across);
        var key = (post.Shape, post.Across, post.Turn!.Value, slopeOfFirst, slope, hole);
        if (!_raised.TryGetValue(key, out var raise))
            _raised[key] = raise = ScrewWood.RaiseOfSecond(post, _rope.Across, (first, RakeDegrees(slopeOfFirst)), (second, RakeDegrees(slope)));
        return raise;
    }

    private sealed record ChosenScrews(
        (FixingPurpose Purpose, int Count, Length Across, double Skew, double Slope, Length Hole) For, ScrewChoice Choice, DrivenScrews Driven);
}
