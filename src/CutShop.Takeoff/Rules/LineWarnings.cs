using System.Globalization;
using System.Runtime.InteropServices;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Rules;

/// <summary>What can be built on a line but is unwise. Each rule is one function.</summary>
internal sealed class LineWarnings
{
    private static readonly Length UsualCoil = Length.FromSixtyFourths(64) * 12 * 600;
    private static readonly Length GapOfRing = Length.FromSixtyFourths(64) * 2;
    private const int LeastBetweenEyes = 10;

    private readonly Job _job;
    private readonly int _lineIndex;
    private readonly Line _line;
    private readonly IReadOnlyList<RowWork> _works;
    private readonly ShopTables _tables;
    private readonly int?[] _below;
    private readonly RowAtPosts[] _rows;
    private readonly BitChoice[] _bitChoices;
    private readonly bool _isUniform;
    private readonly bool _isFirst;
    private readonly int _before;
    private readonly List<Warning> _warnings = [];

    private LineWarnings(Job job, int lineIndex, IReadOnlyList<RowWork> works, int before, ShopTables tables, bool isFirst)
    {
        (_job, _lineIndex, _line, _works, _before, _tables, _isFirst) = (job, lineIndex, job.Lines[lineIndex], works, before, tables, isFirst);
        _below = RowsBelow(_line.Rows);
        (_rows, _bitChoices) = (new RowAtPosts[_line.Rows.Count], new BitChoice[_line.Rows.Count]);
        for (var row = 0; row < _rows.Length; row++)
        {
            var rope = _line.Rows[row].Rope ?? job.Rope;
            var (bit, choice) = isFirst ? FirstRules.Choose(tables.Rack, RopeBit.DiameterFor(rope), rope.Across) : tables.Rack.Choose(RopeBit.DiameterFor(rope), rope.Across);
            (_rows[row], _bitChoices[row]) = (new(_line.Rows[row], rope, bit), choice);
        }
        _isUniform = _line.Rows.All(row => row.Heights is null) && _line.Posts.All(post => post.Holes is null);
    }

    /// <summary>The warnings of one line, row by row and then along the line, after so many of the lines before it.</summary>
    public static List<Warning> Of(Job job, int lineIndex, IReadOnlyList<RowWork> works, int before, ShopTables tables, bool isFirst)
    {
        var warnings = new LineWarnings(job, lineIndex, works, before, tables, isFirst);
        var (sections, found) = (warnings.SectionsByRow(), warnings.FindAtPosts());
        warnings.CheckLine();
        for (var row = 0; row < works.Count; row++)
        {
            warnings.CheckRope(row);
            warnings.Tell(row, found);
            warnings.CheckPieces(row);
            warnings.CheckSags(row, sections);
        }
        for (var row = 0; row < works.Count; row++)
            warnings.CheckScrews(row);
        return warnings._warnings;
    }

    /// <summary>For each row the next one down; of rows at one height the later in the file is above.</summary>
    private static int?[] RowsBelow(IReadOnlyList<Row> rows)
    {
        var byHeight = Enumerable.Range(0, rows.Count).OrderBy(row => rows[row].Height).ThenBy(row => row).ToArray();
        var below = new int?[rows.Count];
        for (var i = 1; i < byHeight.Length; i++)
            below[byHeight[i]] = byHeight[i - 1];
        return below;
    }

    private Rope RopeOf(int row) => _rows[row].Rope;

    private string RowPath(int row) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].rows[{row}]");

    private string PostPath(int post) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].posts[{post}]");

    private string RopePath(int row) => _line.Rows[row].Rope is null ? "$.rope" : RowPath(row) + ".rope";

    private void Warn(string code, string where, string path, Sentence says, Post? post = null) => _warnings.Add(new(code, where, path, says, _before + _warnings.Count, post?.Mark));

    private string SectionPath(int section) => _line.Curve is null
        ? string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].sections[{section}]")
        : string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].curve");

    private string SectionName(int section) => $"{_line.At(section).Mark}-{_line.At(section + 1).Mark}";

    private PieceSection[][] SectionsByRow() => [.. _works.Select(work =>
    {
        var (sections, next) = (new PieceSection[_line.Sections.Count], 0);
        foreach (var piece in work.Pieces)
        {
            for (var i = 0; i < piece.Sections.Count; i++)
                sections[next++] = piece.Sections[i];
        }
        return sections;
    })];

    /// <summary>What is unwise at each post and row. Posts that are alike are worked out once.</summary>
    private PostFinding[][][] FindAtPosts()
    {
        var found = new PostFinding[_line.Posts.Count][][];
        var posts = new LikePosts(_line, _isFirst ? FirstRules.Level(_works) : _works);
        var known = new Dictionary<int, PostFinding[][]>(posts);
        for (var post = 0; post < found.Length; post++)
        {
            if (post > 0 && posts.Equals(post - 1, post))
            {
                found[post] = found[post - 1];
                continue;
            }
            ref var same = ref CollectionsMarshal.GetValueRefOrAddDefault(known, post, out _);
            found[post] = same ??= PostChecks.Of(_line, _rows, posts, post, _tables.Screws);
        }
        return found;
    }

    private void Tell(int row, PostFinding[][][] found)
    {
        for (var i = 0; i < found.Length; i++)
        {
            foreach (var finding in found[i][row])
            {
                var post = _line.Posts[i];
                Warn(finding.Code, At(post, _line.Rows[finding.Row]), (finding.OfPost ? PostPath(i) : RowPath(finding.Row)) + finding.Path, finding.Says, post);
            }
        }
    }

    private void CheckLine()
    {
        for (var i = 0; i < _line.Posts.Count && !_line.IsClosed; i++)
        {
            var isEnd = i == 0 || i == _line.Posts.Count - 1;
            if (_line.Posts[i] is { Turn: not null } post && isEnd)
                Warn("turn-at-end", post.Mark, PostPath(i) + ".turn", TakeoffWords.Of("TurnAtEnd", post.Mark), post);
            else if (_isFirst && _line.Posts[i] is { Turn: { Degrees: not 90 } angle } corner && _line.Rows.Any(row => row.Treatments[i].Kind == TreatmentKind.Bored))
                Warn("corner-angle", corner.Mark, PostPath(i) + ".turn", TakeoffWords.Of("CornerNotSquare", corner.Mark, angle.Degrees.ToString("0.##", CultureInfo.InvariantCulture)), corner);
        }
        if (_line.IsClosed)
            CheckRing();
        if (_line.Drop is { } drop && GuardedDrop.NeedsGuard(drop))
            WarnOfDrop(drop, _line.Mark, string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].drop"));
        for (var i = 0; i < _line.Sections.Count; i++)
        {
            if (_line.Sections[i].Drop is { } deep && GuardedDrop.NeedsGuard(deep))
                WarnOfDrop(deep, SectionName(i), SectionPath(i) + ".drop");
        }
    }

    private void WarnOfDrop(Length drop, string where, string path) =>
        Warn("drop-needs-guard", where, path, TakeoffWords.Of("DropNeedsGuard", LengthText.Inches(drop, 16), LengthText.Inches(GuardedDrop.Over)));

    /// <summary>The turns of a ring make one whole turn, and posts that stand by their centres come back to the first.</summary>
    private void CheckRing()
    {
        var (x, y, direction, turned) = (0.0, 0.0, 0.0, 0m);
        for (var i = 0; i < _line.Sections.Count; i++)
        {
            var length = Spans.Centres(_line.Sections[i], _line.At(i), _line.At(i + 1)).Inches;
            (x, y) = (x + (length * Math.Cos(direction)), y + (length * Math.Sin(direction)));
            if (_line.At(i + 1).Turn is { } turn)
            {
                var sign = turn.Side == TurnSide.Left ? 1 : -1;
                direction += sign * turn.Radians;
                turned += sign * turn.Degrees;
            }
        }
        var gap = Length.RoundedFromInches(double.Hypot(x, y));
        var isOpen = _line.Sections.All(section => section.Spacing == SpacingKind.Centres) && gap > GapOfRing;
        if (isOpen || Math.Abs(Math.Abs(turned) - 360) > 1)
        {
            Warn(
                "does-not-close",
                _line.Mark,
                string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].closed"),
                TakeoffWords.Of("DoesNotClose", LengthText.Inches(gap, 16), turned.ToString("0.##", CultureInfo.InvariantCulture)));
        }
    }

    private void CheckRope(int row)
    {
        var (rope, where) = (RopeOf(row), $"{_line.Mark}/{_line.Rows[row].Mark}");
        if (rope.IsNatural && _job.Allowances is { Wetting: null } allowances && allowances.Shrink == Share.None)
        {
            Warn("no-shrink", where, "$.allowances.shrink", TakeoffWords.Of("NoShrinkage", Rope.WordOf(rope.Material), Share.None.ToString()));
            Warn("taut-when-wet", where, "$.allowances.shrink", TakeoffWords.Of("TautWhenWet", Rope.WordOf(rope.Material)));
        }
        if (_tables.Weights.PoundsPerFoot(rope) is null)
            Warn("no-weight", where, RopePath(row), TakeoffWords.Of("NoWeight", Rope.WordOf(rope.Material), LengthText.Brief(rope.Diameter)));
        if (rope.Measured is { } measured && (measured - rope.Diameter).Abs() * 4 > rope.Diameter)
            Warn("measured-far-off", where, RopePath(row) + ".measured", TakeoffWords.Of("MeasuredFarOff", LengthText.Brief(measured), LengthText.Brief(rope.Diameter)));

        var (bit, choice) = (_rows[row].Bit, _bitChoices[row]);
        var isBored = Enumerable.Range(0, _line.Stations).Any(i => _line.Rows[row].Treatments[i].IsInBore && _line.Rows[row].HoleIn(_line.At(i)) is null);
        if (isBored && !choice.OnRack)
            Warn("bit-not-on-rack", where, RopePath(row), TakeoffWords.Of("BoresForRow", choice.ReasonFor(bit)));
    }

    private void CheckPieces(int row)
    {
        foreach (var piece in _works[row].Pieces)
        {
            if (Lifting.TakesTwo(piece))
                Warn("heavy", piece.Run, RowPath(row), TakeoffWords.Of("Heavy", piece.WeightLb!.Value.ToString("0", CultureInfo.InvariantCulture)));
            if (_job.Longest is null && piece.Cut > UsualCoil)
                Warn("longer-than-usual-coil", piece.Run, RowPath(row), TakeoffWords.Of("LongerThanUsualCoil", LengthText.FeetInches(piece.Cut), LengthText.FeetInches(UsualCoil)));
            if (piece.AtPosts[^1] is { Kind: AtPostKind.Join } join && join.Post.Across < piece.Rope.Across * 4)
                Warn("short-join", $"{join.Post.Mark}/{piece.Row}", RowPath(row), TakeoffWords.Of("ShortJoin", LengthText.Inches(join.Post.Across / 4, 16), LengthText.Brief(piece.Rope.Across)), join.Post);
            var (startsInEye, endsInEye) = (piece.AtPosts[0].Kind == AtPostKind.Eye, piece.AtPosts[^1].Kind == AtPostKind.Eye);
            if (EyeSplice.OneIsMadeOnSite(piece))
                Warn("splice-on-site", piece.Run, RowPath(row), TakeoffWords.Of("SpliceOnSite"));
            // An eye is at an end, so only the first and the last section can have one.
            if (startsInEye)
                CheckBetweenEyes(row, piece, 0);
            if (endsInEye && !(startsInEye && piece.Sections.Count == 1))
                CheckBetweenEyes(row, piece, piece.Sections.Count - 1);
        }
    }

    private void CheckBetweenEyes(int row, Piece piece, int index)
    {
        var left = piece.Sections[index].Arc.Inches - InEye(piece.AtPosts[index]) - InEye(piece.AtPosts[index + 1]);
        if (left < LeastBetweenEyes * piece.Rope.Across.Inches)
            Warn("short-between-eyes", $"{SectionName(piece.First + index)}/{piece.Row}", RowPath(row), TakeoffWords.Of("ShortBetweenEyes", LengthText.Inches(Length.RoundedFromInches(left), 16), LeastBetweenEyes));

        double InEye(AtPost at) => at.Treatment.Eye is { } eye ? eye.Throat.Inches + RopeAtPost.Splice(eye, piece.Rope.Across, piece.Rope.IsNatural) : 0;
    }

    private static string At(Post post, Row row) => $"{post.Mark}/{row.Mark}";

    private void CheckSags(int row, PieceSection[][] sections)
    {
        var rope = RopeOf(row);
        for (var i = 0; i < sections[row].Length; i++)
        {
            var section = sections[row][i];
            var atHolds = section.MidHeight!.Value + section.Sag;
            if (SagLimit.IsDeep(section.Sag, atHolds))
                WarnOfSag("deep-sag", row, i, section, "DeepSag", LengthText.Brief(atHolds));
            if (rope.IsNatural && section.Slack == Length.Zero)
                WarnOfSag("taut-when-wet", row, i, section, "TautSection");
            // Rope that is hung long comes lowest while it is dry.
            var underside = SagLimit.Underside(atHolds, section.DrySag ?? section.Sag, rope);
            if (!underside.IsPositive)
                WarnOfSag("sag-to-ground", row, i, section, "SagToGround");
            if (RowBelow(row, i, sections) is { } below && underside <= UpsideOf(sections[below][i], RopeOf(below)))
                WarnOfSag("sag-to-row-below", row, i, section, "SagToRow", _line.Rows[below].Mark);
        }
    }

    private static Length UpsideOf(PieceSection section, Rope rope) =>
        SagLimit.Upside(section.MidHeight!.Value + section.Sag, section.DrySag ?? section.Sag, rope);

    private int? RowBelow(int row, int section, PieceSection[][] sections)
    {
        if (_isUniform)
            return _below[row];
        var (here, below) = ((HoldsOf(row), row), default((Length Height, int Row)?));
        for (var other = 0; other < sections.Length; other++)
        {
            var there = (HoldsOf(other), other);
            if (other != row && there.CompareTo(here) < 0 && (below is not { } best || there.CompareTo(best) > 0))
                below = there;
        }
        return below?.Row;

        Length HoldsOf(int other) => sections[other][section].MidHeight!.Value + sections[other][section].Sag;
    }

    private void WarnOfSag(string code, int row, int index, PieceSection section, string key, params string[] values) => Warn(
        code,
        $"{SectionName(index)}/{_line.Rows[row].Mark}",
        _line.Sections[index].Hang is null ? RowPath(row) : SectionPath(index),
        TakeoffWords.Of(key, [LengthText.Inches(section.Sag, 16), .. values]));

    private void CheckScrews(int row)
    {
        foreach (var fixing in _works[row].Fixings)
        {
            if (fixing.Screw is not null || fixing.IsHardware)
                continue;
            var skew = fixing.Purpose is FixingPurpose.CornerFirst or FixingPurpose.CornerSecond ? fixing.Post.SkewDegrees : 0;
            var slope = _isFirst ? 0 : Math.Tan(fixing.RakeDegrees * Math.PI / 180);
            var hole = _line.Rows[row].HoleIn(fixing.Post)?.Across ?? _rows[row].Bit;
            var wanted = ScrewChoice.For(fixing.Purpose, fixing.Post.Across, skew, slope, RopeOf(row), hole, _tables, _isFirst).Wanted;
            Warn("no-screw", $"{fixing.Post.Mark}/{fixing.Row}", RowPath(row), TakeoffWords.Of("NoScrewReaches", LengthText.Inches(wanted.Least, 16), LengthText.Inches(wanted.Most, 16)), fixing.Post);
        }
    }
}
