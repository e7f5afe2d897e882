using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Rules;

/// <summary>Walks along one row of rope and works out its runs, their bores and their screws.</summary>
internal sealed class RowTakeoff
{
    private const int ScrewsOnAWrap = 2;
    private const int ScrewsOnALongWrap = 3;
    private const int LongWrapHalfTurns = 5;

    private readonly Job _job;
    private readonly Line _line;
    private readonly Row _row;
    private readonly Rope _rope;
    private readonly ShopTables _tables;
    private readonly double? _poundsPerFoot;
    private readonly Length _bit;
    private readonly BitChoice _bitChoice;
    private readonly double[] _slopes;
    private readonly Dictionary<(FixingPurpose Purpose, Length Across), ScrewChoice> _chosen = [];

    public RowTakeoff(Job job, Line line, Row row, ShopTables tables)
    {
        (_job, _line, _row, _tables) = (job, line, row, tables);
        _rope = row.Rope ?? job.Rope;
        _poundsPerFoot = tables.Weights.PoundsPerFoot(_rope);
        _bit = RopeBit.DiameterFor(_rope);
        _bitChoice = tables.Rack.Choose(_bit, _rope.Across);
        _slopes = [.. line.Sections.Select((section, i) => Spans.Slope(section, line.Posts[i], line.Posts[i + 1]))];
    }

    /// <summary>The row's runs: a bored corner ends one and starts the next.</summary>
    public IEnumerable<Piece> Pieces()
    {
        var (first, count) = (0, 0);
        for (var last = 1; last < _line.Posts.Count; last++)
        {
            if (last < _line.Posts.Count - 1 && !IsBoredCorner(last))
                continue;
            yield return PieceOf(++count, first, last);
            first = last;
        }
    }

    /// <summary>Adds the bores that a piece needs, along the piece.</summary>
    public void BoreFor(Piece piece, List<Bore> bores)
    {
        for (var i = piece.First; i <= piece.Last; i++)
        {
            var kind = piece.AtPosts[i - piece.First].Kind;
            if (kind == AtPostKind.Wrap)
                continue;
            var post = _line.Posts[i];
            var slope = SlopeAt(i, piece);
            bores.Add(new(
                post,
                _row.Mark,
                piece.Run,
                kind,
                _rope,
                _bit,
                _bitChoice,
                _row.Height,
                BoreRules.SideWall(post.Across, _bit),
                RakeDegrees(slope),
                Operations(piece, i, kind, slope)));
        }
    }

    /// <summary>Adds the screws that a piece needs, along the piece. A knot holds itself.</summary>
    public void FixFor(Piece piece, List<Fixing> fixings)
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
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Line, new(FaceSight.Side, _line.Posts[i + 1].Mark)));
                    break;
                case AtPostKind.Wrap:
                    var count = at.Treatment.HalfTurns >= LongWrapHalfTurns ? ScrewsOnALongWrap : ScrewsOnAWrap;
                    fixings.Add(FixingAt(i, piece, FixingPurpose.Wrap, new(FaceSight.Around, at.Post.Mark), count));
                    break;
                case AtPostKind.Knot:
                    break;
                default:
                    throw new InvalidOperationException($"No rope at a post is of kind {at.Kind}.");
            }
        }
    }

    private bool IsBoredCorner(int post) =>
        _line.Posts[post].Turn is not null && _row.Treatments[post].Kind == TreatmentKind.Bored;

    private Piece PieceOf(int number, int first, int last)
    {
        var sections = new PieceSection[last - first];
        var atPosts = new AtPost[last - first + 1];
        var net = Length.Zero;
        for (var i = first; i < last; i++)
        {
            sections[i - first] = SectionOf(i);
            net += sections[i - first].Arc;
        }
        for (var i = first; i <= last; i++)
        {
            atPosts[i - first] = AtPostOf(i, first, last);
            net += atPosts[i - first].Length;
        }

        var allowances = _job.Allowances;
        var grown = _rope.IsNatural ? allowances.Shrink.Grow(net) : net;
        var cut = (grown + allowances.PerPiece).RoundUpTo(allowances.RoundUp);
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
            atPosts);
    }

    private PieceSection SectionOf(int index)
    {
        var section = _line.Sections[index];
        var (before, after) = (_line.Posts[index], _line.Posts[index + 1]);
        var level = Spans.BetweenSupports(section, before, _row.Treatments[index], after, _row.Treatments[index + 1]);
        var rise = _slopes[index] * level.Inches;
        var hang = section.Hang ?? _row.Hang!.Value;
        var rope = hang.Kind == HangKind.Sag
            ? HangingRope.FromSag(level.Inches, rise, hang.Amount.Inches)
            : HangingRope.FromSlack(level.Inches, rise, hang.Amount.Inches);
        var chord = rise == 0 ? level : Length.RoundedFromInches(rope.Chord);
        return new(
            before,
            after,
            Spans.Clear(section, before, after),
            section.Rise,
            level,
            Length.RoundedFromInches(rise),
            chord,
            hang.Kind == HangKind.Sag ? hang.Amount : Length.RoundedFromInches(rope.Sag),
            hang.Kind == HangKind.Slack ? chord + hang.Amount : rope.IsStraight ? chord : Length.RoundedFromInches(rope.Arc),
            rope.IsStraight ? null : rope.Parameter,
            rope.IsStraight ? null : _poundsPerFoot / 12 * rope.Parameter);
    }

    private AtPost AtPostOf(int index, int first, int last)
    {
        var (post, treatment) = (_line.Posts[index], _row.Treatments[index]);
        var (w, d) = (post.Across, _rope.Across);
        var isOuterEnd = index == 0 || index == _line.Posts.Count - 1;
        var (kind, length) = treatment.Kind switch
        {
            TreatmentKind.Stopped => (AtPostKind.Stopped, RopeAtPost.Stopped(w)),
            TreatmentKind.Knot => (AtPostKind.Knot, RopeAtPost.Knot(w, d)),
            TreatmentKind.Wrap when isOuterEnd => (AtPostKind.Wrap, RopeAtPost.Wrap(post, d, treatment)),
            TreatmentKind.Wrap => (AtPostKind.Wrap, RopeAtPost.Wrap(post, d, treatment) + RopeAtPost.CornerArc(post, d, treatment.Side)),
            TreatmentKind.Bored when index == last => (AtPostKind.Corner, RopeAtPost.CornerFirst(w)),
            TreatmentKind.Bored when index == first => (AtPostKind.Corner, RopeAtPost.CornerSecond(w, d)),
            TreatmentKind.Bored => (AtPostKind.Through, RopeAtPost.Through(w, LineSlope(index))),
            _ => throw new InvalidOperationException($"No treatment is of kind {treatment.Kind}."),
        };
        return new(post, kind, treatment, length);
    }

    /// <summary>Slope of a through bore at a line post: the mean of the sections before and after.</summary>
    private double LineSlope(int index) => (_slopes[index - 1] + _slopes[index]) / 2;

    private double SlopeAt(int index, Piece piece) =>
        index == piece.First ? _slopes[index]
        : index == piece.Last ? _slopes[index - 1]
        : LineSlope(index);

    private BoreOperation[] Operations(Piece piece, int index, AtPostKind kind, double slope)
    {
        var across = _line.Posts[index].Across;
        if (kind is AtPostKind.Stopped or AtPostKind.Corner)
            return [Operation(NearSide(piece, index), BoreRules.StoppedDepth(across))];
        var depth = BoreRules.ThroughDepth(across, slope);
        return kind == AtPostKind.Knot
            ? [Operation(NearSide(piece, index), depth), Operation(FarSide(piece, index), depth)]
            : [Operation(Toward(index - 1), depth), Operation(Toward(index + 1), depth)];

        BoreOperation Operation(Face face, Length of) => new(face, of, MarkOn(index, face, _row.Height, slope), StopCollar.For(of));
    }

    /// <summary>The height of a mark on a face of a post for a hole that passes the post's middle at a height and climbs along the line by a slope.</summary>
    private Length MarkOn(int index, Face face, Length height, double slope) =>
        FaceMark.Height(height, _line.Posts[index].Across, RakeDegrees(slope), LooksAlong(face, index));

    /// <summary>1 for a face that looks along the line, -1 for one that looks back, 0 for a side.</summary>
    private int LooksAlong(Face face, int index)
    {
        var isOfNext = index < _line.Posts.Count - 1 && face.Neighbour == _line.Posts[index + 1].Mark;
        return face.Sight switch
        {
            FaceSight.Toward => isOfNext ? 1 : -1,
            FaceSight.AwayFrom => isOfNext ? -1 : 1,
            _ => 0,
        };
    }

    private static double RakeDegrees(double slope) => Math.Atan(slope) * 180 / Math.PI;

    private Face Toward(int neighbour) => new(FaceSight.Toward, _line.Posts[neighbour].Mark);

    /// <summary>At the end of a run, the face its rope leaves by.</summary>
    private Face NearSide(Piece piece, int index) => Toward(index == piece.First ? index + 1 : index - 1);

    /// <summary>At the end of a run, the face opposite to the one its rope leaves by.</summary>
    private Face FarSide(Piece piece, int index) => NearSide(piece, index) with { Sight = FaceSight.AwayFrom };

    private Fixing FixingAt(int index, Piece piece, FixingPurpose purpose, Face face, int count = 1)
    {
        var post = _line.Posts[index];
        // Most posts of a row are alike.
        if (!_chosen.TryGetValue((purpose, post.Across), out var choice))
            _chosen[(purpose, post.Across)] = choice = ScrewChoice.For(purpose, post.Across, _rope, _bit, _tables);
        var height = _row.Height + ScrewChoice.RaiseFor(purpose, _rope);
        var slope = purpose == FixingPurpose.Wrap ? 0 : SlopeAt(index, piece);
        return new(post, _row.Mark, _row.Height, piece.Run, choice.Driven(purpose, count), face, height, MarkOn(index, face, height, slope));
    }
}
