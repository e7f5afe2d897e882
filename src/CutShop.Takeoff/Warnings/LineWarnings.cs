using System.Globalization;

namespace CutShop.Takeoff;

/// <summary>What can be built on a line but is unwise. Each rule is one function.</summary>
internal sealed class LineWarnings
{
    private static readonly Length ThinWall = Length.FromSixtyFourths(48);

    private readonly Job _job;
    private readonly int _lineIndex;
    private readonly Line _line;
    private readonly ShopTables _tables;
    private readonly List<Warning> _warnings = [];

    private LineWarnings(Job job, int lineIndex, ShopTables tables) =>
        (_job, _lineIndex, _line, _tables) = (job, lineIndex, job.Lines[lineIndex], tables);

    /// <summary>The warnings of one line, row by row and then along the line.</summary>
    public static List<Warning> Of(Job job, int lineIndex, IReadOnlyList<Piece> pieces, IReadOnlyList<Fixing> fixings, ShopTables tables)
    {
        var warnings = new LineWarnings(job, lineIndex, tables);
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

    private Rope RopeOf(int row) => _line.Rows[row].Rope ?? _job.Rope;

    private string RowPath(int row) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].rows[{row}]");

    private string PostPath(int post) => string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].posts[{post}]");

    private string RopePath(int row) => _line.Rows[row].Rope is null ? "$.rope" : RowPath(row) + ".rope";

    private void Warn(string code, string where, string path, string text) => _warnings.Add(new(code, where, path, text));

    private PieceSection[][] SectionsByRow(IReadOnlyList<Piece> pieces) =>
        [.. _line.Rows.Select(row => pieces.Where(piece => ReferenceEquals(piece.Row, row)).SelectMany(piece => piece.Sections).ToArray())];

    private void CheckTurns()
    {
        for (var i = 0; i < _line.Posts.Count; i++)
        {
            var post = _line.Posts[i];
            if (post.Turn is not { } turn)
                continue;
            if (i == 0 || i == _line.Posts.Count - 1)
                Warn("turn-at-end", post.Mark, PostPath(i) + ".turn", $"Post {post.Mark} ends its line, so its turn changes nothing.");
            else if (turn.Degrees != 90 && _line.Rows.Any(row => row.Treatments[i].Kind == TreatmentKind.Bored))
                Warn("corner-angle", post.Mark, PostPath(i) + ".turn", string.Create(CultureInfo.InvariantCulture, $"Post {post.Mark} turns by {turn.Degrees:0.##}°: the lengths and bores of a bored corner are those of a right angle; check how the two bores meet."));
        }
    }

    private void CheckRope(int row)
    {
        var (rope, where) = (RopeOf(row), $"{_line.Mark}/{_line.Rows[row].Mark}");
        if (rope.IsNatural && _job.Allowances.Shrink == Share.None)
            Warn("no-shrink", where, "$.allowances.shrink", $"Natural rope shrinks when wet; {rope.MaterialName} with a shrinkage of {Share.None} will come up short. Common practice is 10 to 15 %.");
        if (_tables.Weights.PoundsPerFoot(rope) is null)
            Warn("no-weight", where, RopePath(row), $"No published weight covers {rope.MaterialName} rope of {LengthText.Brief(rope.Diameter)}, so weights and pulls are left out.");
        if (rope.Measured is { } measured && (measured - rope.Diameter).Abs() * 4 > rope.Diameter)
            Warn("measured-far-off", where, RopePath(row) + ".measured", $"The rope was measured at {LengthText.Brief(measured)}, more than a quarter off its nominal {LengthText.Brief(rope.Diameter)}. Measure again.");

        var bit = RopeBit.DiameterFor(rope);
        var isBored = _line.Rows[row].Treatments.Any(treatment => treatment.Kind != TreatmentKind.Wrap);
        if (isBored && _tables.Rack.Choose(bit, rope.Across) is { OnRack: false } choice)
            Warn("bit-not-on-rack", where, RopePath(row), $"Bores for this row: {choice.Reason}.");
    }

    private void CheckPosts(int row)
    {
        var (rope, thisRow) = (RopeOf(row), _line.Rows[row]);
        var bit = RopeBit.DiameterFor(rope);
        for (var i = 0; i < _line.Posts.Count; i++)
        {
            var post = _line.Posts[i];
            var where = $"{post.Mark}/{thisRow.Mark}";
            if (!CommonRope.Suits(post.Across, rope.Diameter))
                Warn("rope-for-post", where, PostPath(i) + ".across", $"{LengthText.Brief(rope.Diameter)} rope on a post {LengthText.Brief(post.Across)} across; common is {CommonRope.SizesFor(post.Across)}.");
            if (thisRow.Treatments[i].Kind == TreatmentKind.Wrap)
                continue;
            var wall = BoreRules.SideWall(post.Across, bit);
            if (wall < ThinWall)
                Warn("thin-wall", where, PostPath(i) + ".across", $"The {LengthText.Brief(bit)} bore leaves a side wall of {LengthText.Inches(wall, 16)}, under {LengthText.Brief(ThinWall)}.");
            var above = post.Height - thisRow.Height - (bit / 2);
            if (above.IsNegative)
                Warn("near-top", where, RowPath(row) + ".height", $"The {LengthText.Brief(bit)} bore breaks out of the top of the post.");
            else if (above < bit)
                Warn("near-top", where, RowPath(row) + ".height", $"{LengthText.Inches(above, 16)} of wood above the {LengthText.Brief(bit)} bore, less than one bit diameter.");
            CheckNeighbours(row, i, where, bit);
        }
    }

    private void CheckNeighbours(int row, int post, string where, Length bit)
    {
        // Each pair of rows is looked at once, from the later of the two.
        for (var other = 0; other < row; other++)
        {
            if (_line.Rows[other].Treatments[post].Kind == TreatmentKind.Wrap)
                continue;
            var otherBit = RopeBit.DiameterFor(RopeOf(other));
            var wood = (_line.Rows[row].Height - _line.Rows[other].Height).Abs() - ((bit + otherBit) / 2);
            if (wood < Length.Max(bit, otherBit))
            {
                Warn("bores-close", where, RowPath(row) + ".height", wood.IsPositive
                    ? $"{LengthText.Inches(wood, 16)} of wood between this bore and that of row {_line.Rows[other].Mark}, less than one bit diameter."
                    : $"This bore runs into that of row {_line.Rows[other].Mark}.");
            }
        }
    }

    private void CheckSags(int row, PieceSection[][] sections)
    {
        var (rope, thisRow) = (RopeOf(row), _line.Rows[row]);
        for (var i = 0; i < sections[row].Length; i++)
        {
            var section = sections[row][i];
            var where = $"{section.From.Mark}-{section.To.Mark}/{thisRow.Mark}";
            var path = _line.Sections[i].Hang is null ? RowPath(row) : string.Create(CultureInfo.InvariantCulture, $"$.lines[{_lineIndex}].sections[{i}]");
            if (section.Sag * 2 > thisRow.Height)
                Warn("deep-sag", where, path, $"A sag of {LengthText.Inches(section.Sag, 16)} is over half of the row's height of {LengthText.Brief(thisRow.Height)}.");
            var underside = thisRow.Height - section.Sag - (rope.Across / 2);
            if (!underside.IsPositive)
                Warn("sag-to-ground", where, path, $"With a sag of {LengthText.Inches(section.Sag, 16)} the rope reaches the ground.");
            if (RowBelow(row) is { } below)
            {
                var gap = underside - (_line.Rows[below].Height - sections[below][i].Sag) - (RopeOf(below).Across / 2);
                if (!gap.IsPositive)
                    Warn("sag-to-row-below", where, path, $"With a sag of {LengthText.Inches(section.Sag, 16)} the rope reaches row {_line.Rows[below].Mark}.");
            }
        }
    }

    private int? RowBelow(int row)
    {
        int? below = null;
        for (var other = 0; other < _line.Rows.Count; other++)
        {
            if (_line.Rows[other].Height < _line.Rows[row].Height && (below is null || _line.Rows[other].Height > _line.Rows[below.Value].Height))
                below = other;
        }
        return below;
    }

    private void CheckScrews(IReadOnlyList<Fixing> fixings)
    {
        foreach (var fixing in fixings.Where(fixing => fixing.Screw is null))
        {
            var row = _line.Rows.TakeWhile(candidate => !ReferenceEquals(candidate, fixing.Row)).Count();
            Warn("no-screw", $"{fixing.Post.Mark}/{fixing.Row.Mark}", RowPath(row), $"No screw in the catalogue fits; one that reaches from {LengthText.Inches(fixing.Wanted.Least, 16)} to {LengthText.Inches(fixing.Wanted.Most, 16)} into the post would.");
        }
    }
}
