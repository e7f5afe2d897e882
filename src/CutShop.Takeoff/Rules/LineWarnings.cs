using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Rules;

/// <summary>What can be built on a line but is unwise. Each rule is one function.</summary>
internal sealed class LineWarnings
{
    private static readonly Length ThinWall = Length.FromSixtyFourths(48);

    private static readonly Length TightTrue = Length.FromSixtyFourths(4);
    private static readonly Length TightNatural = Length.FromSixtyFourths(12);
    private static readonly Length LooseOver = Length.FromSixtyFourths(16);
    private static readonly Length UsualCoil = Length.FromSixtyFourths(64) * 12 * 600;
    private static readonly Length GapOfRing = Length.FromSixtyFourths(64) * 2;
    private const double MostKink = 15;
    private const double MostRake = 20;
    private const double Rounding = 1e-6; // of a chord to whole nanometres
    private const int LeastBetweenEyes = 10;

    private readonly Job _job;
    private readonly int _lineIndex;
    private readonly Line _line;
    private readonly ShopTables _tables;
    private readonly int?[] _below;
    private readonly (Length Bit, BitChoice Choice)[] _bits;
    private readonly bool _isUniform;
    private readonly bool _isFirst;
    private readonly int _before;
    private readonly List<Warning> _warnings = [];

    private LineWarnings(Job job, int lineIndex, int before, ShopTables tables, bool isFirst)
    {
        _before = before;
        (_job, _lineIndex, _line, _tables) = (job, lineIndex, job.Lines[lineIndex], tables);
        _below = RowsBelow(_line.Rows);
        _bits = [.. _line.Rows.Select(row => row.Rope ?? job.Rope).Select(rope => isFirst
            ? FirstRules.Choose(tables.Rack, RopeBit.DiameterFor(rope), rope.Across)
            : tables.Rack.Choose(RopeBit.DiameterFor(rope), rope.Across))];
        _isFirst = isFirst;
        _isUniform = _line.Rows.All(row => row.Heights is null) && _line.Posts.All(post => post.Holes is null);
    }

    /// <summary>The warnings of one line, row by row and then along the line, after so many of the lines before it.</summary>
    public static List<Warning> Of(
        Job job, int lineIndex, IReadOnlyList<Piece> pieces, IReadOnlyList<Bore> bores, IReadOnlyList<Fixing> fixings, int before, ShopTables tables, bool isFirst)
    {
        var warnings = new LineWarnings(job, lineIndex, before, tables, isFirst);
        var sections = warnings.SectionsByRow(pieces);
        warnings.CheckLine();
        var (piecesOf, boresOf) = (pieces.ToLookup(piece => piece.Row), bores.ToLookup(bore => bore.Row));
        for (var row = 0; row < warnings._line.Rows.Count; row++)
        {
            var mark = warnings._line.Rows[row].Mark;
            warnings.CheckRope(row);
            warnings.CheckPosts(row, boresOf[mark].ToLookup(bore => bore.Post.Mark));
            warnings.CheckBores(boresOf[mark]);
            warnings.CheckPieces(row, piecesOf[mark]);
            warnings.CheckSags(row, sections);
        }
        warnings.CheckScrews(fixings);
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

    private Rope RopeOf(int row) => _line.Rows[row].Rope ?? _job.Rope;

    private string RowPath(int row) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].rows[{row}]");

    private string PostPath(int post) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].posts[{post}]");

    private string RopePath(int row) => _line.Rows[row].Rope is null ? "$.rope" : RowPath(row) + ".rope";

    private void Warn(string code, string where, string path, Sentence says, Post? post = null) => _warnings.Add(new(code, where, path, says, _before + _warnings.Count, post?.Mark));

    private string SectionPath(int section) => _line.Curve is null
        ? string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].sections[{section}]")
        : string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].curve");

    private string SectionName(int section) => $"{_line.At(section).Mark}-{_line.At(section + 1).Mark}";

    private PieceSection[][] SectionsByRow(IReadOnlyList<Piece> pieces)
    {
        var byRow = pieces.ToLookup(piece => piece.Row);
        return [.. _line.Rows.Select(row => byRow[row.Mark].SelectMany(piece => piece.Sections).ToArray())];
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
        CheckDrop(_line.Drop, _line.Mark, string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].drop"));
        for (var i = 0; i < _line.Sections.Count; i++)
            CheckDrop(_line.Sections[i].Drop, SectionName(i), SectionPath(i) + ".drop");
    }

    private void CheckDrop(Length? drop, string where, string path)
    {
        if (GuardedDrop.NeedsGuard(drop))
            Warn("drop-needs-guard", where, path, TakeoffWords.Of("DropNeedsGuard", LengthText.Inches(drop!.Value, 16), LengthText.Inches(GuardedDrop.Over)));
    }

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

        var (bit, choice) = _bits[row];
        var isBored = Enumerable.Range(0, _line.Stations).Any(i => _line.Rows[row].Treatments[i].IsInBore && _line.Rows[row].HoleIn(_line.At(i)) is null);
        if (isBored && !choice.OnRack)
            Warn("bit-not-on-rack", where, RopePath(row), TakeoffWords.Of("BoresForRow", choice.ReasonFor(bit)));
    }

    private void CheckPosts(int row, ILookup<string, Bore> bores)
    {
        var (rope, thisRow) = (RopeOf(row), _line.Rows[row]);
        for (var i = 0; i < _line.Posts.Count; i++)
        {
            var post = _line.Posts[i];
            if (!CommonRope.Suits(post.Across, rope.Diameter))
                Warn("rope-for-post", At(post, thisRow), PostPath(i) + ".across", TakeoffWords.Of("UncommonRope", LengthText.Brief(rope.Diameter), LengthText.Brief(post.Across), CommonRope.SizesFor(post.Across)), post);
            if (thisRow.Treatments[i] is { Kind: TreatmentKind.Wrap } wrap && wrap.HalfTurns % 2 == 1 && i > 0 && i < _line.Stations - 1)
                Warn("half-turn-inside", At(post, thisRow), RowPath(row) + ".at", TakeoffWords.Of("HalfTurnInside", wrap.Turns.ToString("0.#", CultureInfo.InvariantCulture)), post);
            if (!thisRow.Treatments[i].IsInBore)
                continue;
            if (bores[post.Mark].MinBy(bore => bore.Wall) is { } thinnest && thinnest.Wall < ThinWall)
                Warn("thin-wall", At(post, thisRow), PostPath(i) + ".across", TakeoffWords.Of("ThinWall", LengthText.Brief(thinnest.Bit), LengthText.Inches(thinnest.Wall, 16), LengthText.Brief(ThinWall)), post);
            var (bit, height) = (HoleFor(row, post), thisRow.HeightAt(post));
            var above = post.Height - height - (bit / 2);
            if (above.IsNegative)
                Warn("near-top", At(post, thisRow), RowPath(row) + ".height", TakeoffWords.Of("OutOfTop", LengthText.Brief(bit)), post);
            else if (above < bit)
                Warn("near-top", At(post, thisRow), RowPath(row) + ".height", TakeoffWords.Of("LittleWoodAbove", LengthText.Inches(above, 16), LengthText.Brief(bit)), post);
            if (NextBoreDown(row, i) is { } lower)
                CheckWoodBetween(row, lower, post);
            if (thisRow.HoleIn(post) is { } hole)
                CheckHole(hole, rope, post, thisRow, i);
        }
    }

    private void CheckHole(Hole hole, Rope rope, Post post, Row row, int index)
    {
        var play = hole.Across - rope.Across;
        var least = rope.IsNatural && rope.Measured is null ? TightNatural : TightTrue;
        var path = string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].posts[{index}].holes");
        if (play < least)
            Warn("tight-hole", At(post, row), path, TakeoffWords.Of("TightHole", LengthText.Inches(hole.Across, 64), LengthText.Inches(play, 64), LengthText.Brief(least)), post);
        else if (play > least + LooseOver)
            Warn("loose-hole", At(post, row), path, TakeoffWords.Of("LooseHole", LengthText.Inches(hole.Across, 64), LengthText.Inches(play, 64), LengthText.Brief(least + LooseOver)), post);
    }

    private void CheckBores(IEnumerable<Bore> bores)
    {
        foreach (var bore in bores)
        {
            var (where, post) = ($"{bore.Post.Mark}/{bore.Row}", bore.Post);
            var path = PostPath(_line.Posts.Index().First(at => at.Item.Mark == post.Mark).Index);
            if (bore.KinkDegrees > MostKink + Rounding)
                Warn("kink", where, path + ".turn", TakeoffWords.Of("Kink", bore.KinkDegrees.ToString("0.#", CultureInfo.InvariantCulture)), post);
            if (Math.Abs(bore.RakeDegrees) > MostRake + Rounding)
                Warn("steep-bore", where, path, TakeoffWords.Of("SteepBore", Math.Abs(bore.RakeDegrees).ToString("0.#", CultureInfo.InvariantCulture)), post);
        }
    }

    private void CheckPieces(int row, IEnumerable<Piece> pieces)
    {
        foreach (var piece in pieces)
        {
            var natural = piece.Rope.IsNatural;
            if (Lifting.TakesTwo(piece))
                Warn("heavy", piece.Run, RowPath(row), TakeoffWords.Of("Heavy", piece.WeightLb!.Value.ToString("0", CultureInfo.InvariantCulture)));
            if (_job.Longest is null && piece.Cut > UsualCoil)
                Warn("longer-than-usual-coil", piece.Run, RowPath(row), TakeoffWords.Of("LongerThanUsualCoil", LengthText.FeetInches(piece.Cut), LengthText.FeetInches(UsualCoil)));
            foreach (var at in piece.AtPosts.Where((at, i) => at.Kind == AtPostKind.Join && i > 0 && at.Post.Across < piece.Rope.Across * 4))
                Warn("short-join", $"{at.Post.Mark}/{piece.Row}", RowPath(row), TakeoffWords.Of("ShortJoin", LengthText.Inches(at.Post.Across / 4, 16), LengthText.Brief(piece.Rope.Across)), at.Post);
            if (EyeSplice.OneIsMadeOnSite(piece))
                Warn("splice-on-site", piece.Run, RowPath(row), TakeoffWords.Of("SpliceOnSite"));
            for (var i = 0; i < piece.Sections.Count; i++)
            {
                var (eyes, section) = (new[] { piece.AtPosts[i], piece.AtPosts[i + 1] }.Where(at => at.Kind == AtPostKind.Eye).ToList(), piece.Sections[i]);
                if (eyes.Count == 0)
                    continue;
                var left = section.Arc.Inches - eyes.Sum(at => at.Treatment.Eye!.Throat.Inches + RopeAtPost.Splice(at.Treatment.Eye, piece.Rope.Across, natural));
                if (left < LeastBetweenEyes * piece.Rope.Across.Inches)
                    Warn("short-between-eyes", $"{SectionName(piece.First + i)}/{piece.Row}", RowPath(row), TakeoffWords.Of("ShortBetweenEyes", LengthText.Inches(Length.RoundedFromInches(left), 16), LeastBetweenEyes));
            }
        }
    }

    private static string At(Post post, Row row) => $"{post.Mark}/{row.Mark}";

    /// <summary>Diameter of a row's hole in a post: one that is there, or the bit's.</summary>
    private Length HoleFor(int row, Post post) => _line.Rows[row].HoleIn(post)?.Across ?? _bits[row].Bit;

    private int? NextBoreDown(int row, int post)
    {
        if (!_isUniform)
        {
            var at = _line.Posts[post];
            return Enumerable.Range(0, _line.Rows.Count)
                .Where(other => other != row && _line.Rows[other].Treatments[post].IsInBore)
                .Where(other => (_line.Rows[other].HeightAt(at), other).CompareTo((_line.Rows[row].HeightAt(at), row)) < 0)
                .OrderByDescending(other => (_line.Rows[other].HeightAt(at), other))
                .Select(other => (int?)other)
                .FirstOrDefault();
        }
        var lower = _below[row];
        while (lower is { } candidate && !_line.Rows[candidate].Treatments[post].IsInBore)
            lower = _below[candidate];
        return lower;
    }

    private void CheckWoodBetween(int row, int lower, Post post)
    {
        var (bit, lowerBit) = (HoleFor(row, post), HoleFor(lower, post));
        var wood = _line.Rows[row].HeightAt(post) - _line.Rows[lower].HeightAt(post) - ((bit + lowerBit) / 2);
        if (wood >= Length.Max(bit, lowerBit))
            return;
        // Of the two the warning names the one that comes later in the file.
        var (named, other) = (Math.Max(row, lower), Math.Min(row, lower));
        Warn("bores-close", At(post, _line.Rows[named]), RowPath(named) + ".height", wood.IsPositive
            ? TakeoffWords.Of("LittleWoodBetween", LengthText.Inches(wood, 16), _line.Rows[other].Mark)
            : TakeoffWords.Of("BoresMeet", _line.Rows[other].Mark), post);
    }

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
        var height = HoldsOf(row);
        return Enumerable.Range(0, sections.Length)
            .Where(other => other != row && (HoldsOf(other), other).CompareTo((height, row)) < 0)
            .OrderByDescending(other => (HoldsOf(other), other))
            .Select(other => (int?)other)
            .FirstOrDefault();

        Length HoldsOf(int other) => sections[other][section].MidHeight!.Value + sections[other][section].Sag;
    }

    private void WarnOfSag(string code, int row, int index, PieceSection section, string key, params string[] values) => Warn(
        code,
        $"{SectionName(index)}/{_line.Rows[row].Mark}",
        _line.Sections[index].Hang is null ? RowPath(row) : SectionPath(index),
        TakeoffWords.Of(key, [LengthText.Inches(section.Sag, 16), .. values]));

    private void CheckScrews(IReadOnlyList<Fixing> fixings)
    {
        foreach (var fixing in fixings.Where(fixing => fixing.Screw is null && !fixing.IsHardware))
        {
            var row = _line.Rows.TakeWhile(candidate => candidate.Mark != fixing.Row).Count();
            var skew = fixing.Purpose is FixingPurpose.CornerFirst or FixingPurpose.CornerSecond ? fixing.Post.SkewDegrees : 0;
            var slope = _isFirst ? 0 : Math.Tan(fixing.RakeDegrees * Math.PI / 180);
            var wanted = ScrewChoice.For(fixing.Purpose, fixing.Post.Across, skew, slope, RopeOf(row), HoleFor(row, fixing.Post), _tables, _isFirst).Wanted;
            Warn("no-screw", $"{fixing.Post.Mark}/{fixing.Row}", RowPath(row), TakeoffWords.Of("NoScrewReaches", LengthText.Inches(wanted.Least, 16), LengthText.Inches(wanted.Most, 16)), fixing.Post);
        }
    }
}
