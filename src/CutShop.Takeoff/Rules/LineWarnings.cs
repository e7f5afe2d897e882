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

    private readonly Job _job;
    private readonly int _lineIndex;
    private readonly Line _line;
    private readonly ShopTables _tables;
    private readonly int?[] _below;
    private readonly Length[] _bits;
    private readonly int _before;
    private readonly List<Warning> _warnings = [];

    private LineWarnings(Job job, int lineIndex, int before, ShopTables tables)
    {
        _before = before;
        (_job, _lineIndex, _line, _tables) = (job, lineIndex, job.Lines[lineIndex], tables);
        _below = RowsBelow(_line.Rows);
        _bits = [.. _line.Rows.Select(row => RopeBit.DiameterFor(row.Rope ?? job.Rope))];
    }

    /// <summary>The warnings of one line, row by row and then along the line, after so many of the lines before it.</summary>
    public static List<Warning> Of(Job job, int lineIndex, IReadOnlyList<Piece> pieces, IReadOnlyList<Fixing> fixings, int before, ShopTables tables)
    {
        var warnings = new LineWarnings(job, lineIndex, before, tables);
        var sections = warnings.SectionsByRow(pieces);
        warnings.CheckTurns();
        for (var row = 0; row < warnings._line.Rows.Count; row++)
        {
            warnings.CheckRope(row);
            warnings.CheckPosts(row);
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

    private PieceSection[][] SectionsByRow(IReadOnlyList<Piece> pieces)
    {
        var byRow = pieces.ToLookup(piece => piece.Row);
        return [.. _line.Rows.Select(row => byRow[row.Mark].SelectMany(piece => piece.Sections).ToArray())];
    }

    private void CheckTurns()
    {
        for (var i = 0; i < _line.Posts.Count; i++)
        {
            var post = _line.Posts[i];
            if (post.Turn is not { } turn)
                continue;
            if (i == 0 || i == _line.Posts.Count - 1)
                Warn("turn-at-end", post.Mark, PostPath(i) + ".turn", TakeoffWords.Of("TurnAtEnd", post.Mark), post);
            else if (turn.Degrees != 90 && _line.Rows.Any(row => row.Treatments[i].Kind == TreatmentKind.Bored))
                Warn("corner-angle", post.Mark, PostPath(i) + ".turn", TakeoffWords.Of("CornerNotSquare", post.Mark, turn.Degrees.ToString("0.##", CultureInfo.InvariantCulture)), post);
        }
    }

    private void CheckRope(int row)
    {
        var (rope, where) = (RopeOf(row), $"{_line.Mark}/{_line.Rows[row].Mark}");
        if (rope.IsNatural && _job.Allowances.Shrink == Share.None)
            Warn("no-shrink", where, "$.allowances.shrink", TakeoffWords.Of("NoShrinkage", Rope.WordOf(rope.Material), Share.None.ToString()));
        if (_tables.Weights.PoundsPerFoot(rope) is null)
            Warn("no-weight", where, RopePath(row), TakeoffWords.Of("NoWeight", Rope.WordOf(rope.Material), LengthText.Brief(rope.Diameter)));
        if (rope.Measured is { } measured && (measured - rope.Diameter).Abs() * 4 > rope.Diameter)
            Warn("measured-far-off", where, RopePath(row) + ".measured", TakeoffWords.Of("MeasuredFarOff", LengthText.Brief(measured), LengthText.Brief(rope.Diameter)));

        var bit = _bits[row];
        var isBored = _line.Rows[row].Treatments.Any(treatment => treatment.Kind != TreatmentKind.Wrap);
        if (isBored && _tables.Rack.Choose(bit, rope.Across) is { OnRack: false } choice)
            Warn("bit-not-on-rack", where, RopePath(row), TakeoffWords.Of("BoresForRow", choice.ReasonFor(bit)));
    }

    private void CheckPosts(int row)
    {
        var (rope, thisRow) = (RopeOf(row), _line.Rows[row]);
        var bit = _bits[row];
        for (var i = 0; i < _line.Posts.Count; i++)
        {
            var post = _line.Posts[i];
            if (!CommonRope.Suits(post.Across, rope.Diameter))
                Warn("rope-for-post", At(post, thisRow), PostPath(i) + ".across", TakeoffWords.Of("UncommonRope", LengthText.Brief(rope.Diameter), LengthText.Brief(post.Across), CommonRope.SizesFor(post.Across)), post);
            if (thisRow.Treatments[i].Kind == TreatmentKind.Wrap)
                continue;
            var wall = BoreRules.SideWall(post.Across, bit);
            if (wall < ThinWall)
                Warn("thin-wall", At(post, thisRow), PostPath(i) + ".across", TakeoffWords.Of("ThinWall", LengthText.Brief(bit), LengthText.Inches(wall, 16), LengthText.Brief(ThinWall)), post);
            var above = post.Height - thisRow.Height - (bit / 2);
            if (above.IsNegative)
                Warn("near-top", At(post, thisRow), RowPath(row) + ".height", TakeoffWords.Of("OutOfTop", LengthText.Brief(bit)), post);
            else if (above < bit)
                Warn("near-top", At(post, thisRow), RowPath(row) + ".height", TakeoffWords.Of("LittleWoodAbove", LengthText.Inches(above, 16), LengthText.Brief(bit)), post);
            if (NextBoreDown(row, i) is { } lower)
                CheckWoodBetween(row, lower, post);
        }
    }

    private static string At(Post post, Row row) => $"{post.Mark}/{row.Mark}";

    private int? NextBoreDown(int row, int post)
    {
        var lower = _below[row];
        while (lower is { } candidate && _line.Rows[candidate].Treatments[post].Kind == TreatmentKind.Wrap)
            lower = _below[candidate];
        return lower;
    }

    private void CheckWoodBetween(int row, int lower, Post post)
    {
        var (bit, lowerBit) = (_bits[row], _bits[lower]);
        var wood = _line.Rows[row].Height - _line.Rows[lower].Height - ((bit + lowerBit) / 2);
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
        var (rope, thisRow) = (RopeOf(row), _line.Rows[row]);
        for (var i = 0; i < sections[row].Length; i++)
        {
            var section = sections[row][i];
            if (SagLimit.IsDeep(section.Sag, thisRow.Height))
                WarnOfSag("deep-sag", row, i, section, "DeepSag", LengthText.Brief(thisRow.Height));
            var underside = SagLimit.Underside(thisRow.Height, section.Sag, rope);
            if (!underside.IsPositive)
                WarnOfSag("sag-to-ground", row, i, section, "SagToGround");
            if (_below[row] is { } below && underside <= SagLimit.Upside(_line.Rows[below].Height, sections[below][i].Sag, RopeOf(below)))
                WarnOfSag("sag-to-row-below", row, i, section, "SagToRow", _line.Rows[below].Mark);
        }
    }

    private void WarnOfSag(string code, int row, int index, PieceSection section, string key, params string[] values) => Warn(
        code,
        $"{section.From.Mark}-{section.To.Mark}/{_line.Rows[row].Mark}",
        _line.Sections[index].Hang is null ? RowPath(row) : string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].sections[{index}]"),
        TakeoffWords.Of(key, [LengthText.Inches(section.Sag, 16), .. values]));

    private void CheckScrews(IReadOnlyList<Fixing> fixings)
    {
        foreach (var fixing in fixings.Where(fixing => fixing.Screw is null))
        {
            var row = _line.Rows.TakeWhile(candidate => candidate.Mark != fixing.Row).Count();
            var wanted = ScrewChoice.For(fixing.Purpose, fixing.Post.Across, RopeOf(row), _bits[row], _tables).Wanted;
            Warn("no-screw", $"{fixing.Post.Mark}/{fixing.Row}", RowPath(row), TakeoffWords.Of("NoScrewReaches", LengthText.Inches(wanted.Least, 16), LengthText.Inches(wanted.Most, 16)), fixing.Post);
        }
    }
}
