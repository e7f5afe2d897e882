using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

namespace CutShop.Takeoff.Rules;

/// <summary>How high one row of a line hangs, how wide the opening under it is and how hard it pulls when somebody leans on it.</summary>
/// <param name="Line">The line's mark.</param>
/// <param name="Row">The row's mark.</param>
/// <param name="LowestMid">The lowest of its heights at mid-span: the rope's middle over the straight line of the ground.</param>
/// <param name="HighestMid">The highest of them.</param>
/// <param name="Below">The mark of the row below it where the opening is widest; null for the ground.</param>
/// <param name="Opening">The widest opening under it, from rope to rope or to the ground; zero where it touches.</param>
/// <param name="LeaningLb">The strongest pull along it with a person leaning; null where some section is straight.</param>
public sealed record RowOpening(string Line, string Row, Length LowestMid, Length HighestMid, string? Below, Length Opening, double? LeaningLb)
{
    /// <summary>The rows of a job, line by line and from the top row down.</summary>
    public static IReadOnlyList<RowOpening> Of(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var pieces = takeoff.Pieces.ToLookup(piece => piece.Line);
        return [.. takeoff.Job.Lines.SelectMany(line => Of([.. pieces[line.Mark]]))];
    }

    /// <summary>The rows of one line, from the top row down.</summary>
    /// <param name="pieces">The line's pieces.</param>
    public static IReadOnlyList<RowOpening> Of(IReadOnlyList<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        var ropes = pieces.SelectMany(piece => piece.Sections.Select((section, i) => Rope.In(piece, section, i))).ToList();
        var bySection = ropes.ToLookup(rope => rope.Section);
        return
        [
            .. ropes.GroupBy(rope => rope.Piece.Row)
                .Select(row => Of([.. row], bySection))
                .OrderByDescending(row => row.HighestMid).ThenBy(row => row.Row, StringComparer.Ordinal),
        ];
    }

    private static RowOpening Of(IReadOnlyList<Rope> row, ILookup<int, Rope> bySection)
    {
        var widest = row.Select(rope => (Below: rope.NextBelow(bySection[rope.Section]), Rope: rope))
            .Select(pair => (pair.Below, Opening: pair.Rope.OpeningTo(pair.Below)))
            .MaxBy(pair => pair.Opening);
        var pulls = row.Select(rope => rope.LeaningLb).ToList();
        return new(
            row[0].Piece.Line,
            row[0].Piece.Row,
            Length.RoundedFromInches(row.Min(rope => rope.Mid)),
            Length.RoundedFromInches(row.Max(rope => rope.Mid)),
            widest.Below?.Piece.Row,
            Length.RoundedFromInches(Math.Max(0, widest.Opening)),
            pulls.Contains(null) ? null : pulls.Max());
    }

    /// <summary>A rope in one section: its middle over the straight line of the ground at both holds and at mid-span, in inches.</summary>
    private sealed record Rope(Piece Piece, int Section, double First, double Mid, double Last, double? LeaningLb)
    {
        private double Half => Piece.Rope.Across.Inches / 2;

        public static Rope In(Piece piece, PieceSection section, int index)
        {
            var (before, after) = (piece.HeightAt(piece.First + index), piece.HeightAt(piece.First + index + 1));
            // Parts that are older than it have no height at mid-span.
            var mid = (section.MidHeight ?? (((before + after) / 2) - section.Sag)).Inches;
            var (mean, lean) = (mid + section.Sag.Inches, (after - before).Inches / 2);
            return new(piece, piece.First + index, mean - lean, mid, mean + lean, Leaning.PullLb(section));
        }

        /// <summary>The rope of the same section that hangs next below, or null.</summary>
        public Rope? NextBelow(IEnumerable<Rope> others) =>
            others.Where(other => other.Piece.Row != Piece.Row && (other.Mid, other.Piece.Row).CompareTo((Mid, Piece.Row)) < 0).MaxBy(other => (other.Mid, other.Piece.Row));

        /// <summary>The widest opening down to another rope, or to the ground.</summary>
        public double OpeningTo(Rope? below) => below is null
            ? Widest(First, Mid, Last) - Half
            : Widest(First - below.First, Mid - below.Mid, Last - below.Last) - Half - below.Half;

        /// <summary>
        /// The greatest of a gap that is known at both ends and in the middle: at one of them or, where the gap bulges between them, at the top of
        /// the parabola through the three, as shallow ropes are nearly parabolas.
        /// </summary>
        private static double Widest(double first, double mid, double last)
        {
            var (slope, bend) = ((last - first) / 2, ((first + last) / 2) - mid);
            var top = bend < 0 ? -slope / (2 * bend) : double.NaN;
            return Math.Abs(top) < 1 ? mid + (slope * top) + (bend * top * top) : Math.Max(first, last);
        }
    }
}
