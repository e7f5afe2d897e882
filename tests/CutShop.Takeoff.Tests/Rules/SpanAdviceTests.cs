using CsCheck;

namespace CutShop.Takeoff.Tests.Rules;

/// <summary>
/// What to do with a piece that meets other spans than planned. Figures are held against <see cref="Catenary"/>, the curve itself with its
/// length added up in small pieces, and are then rounded down to the tape's sixteenths by hand.
/// </summary>
public sealed class SpanAdviceTests
{
    private const string WithKnot = """{ "mark": "top", "height": "30 in", "sag": "4 in", "start": "stopped", "finish": "knot" }""";

    /// <summary>
    /// Two sections of 72 in with 4 in of sag have 72.5896 in of rope each. Across 72 1/4 in that sags 3.037 in; the planned 4 in take
    /// 72.8375 in there, 0.2479 in more; and 145.1791 in over both take a sag of 3.54 in.
    /// </summary>
    [Fact]
    public void A_little_too_wide_a_span_is_hung_with_less_sag_or_shared_out()
    {
        var arc = Catenary.ArcOf(Catenary.ParameterForSag(72, 0, 4), 72, 0);
        Assert.Equal(3.037, Catenary.SagOf(Catenary.ParameterForArc(72.25, 0, arc), 72.25, 0), 0.005);
        Assert.Equal(-0.2479, arc - Catenary.ArcOf(Catenary.ParameterForSag(72.25, 0, 4), 72.25, 0), 0.0005);
        Assert.InRange(2 * arc, BothAt(72.25, 3.5), BothAt(72.25, 3.5625));

        var advice = Spans(Sample.PlainRow).Of(Measured((0, "72 1/4")));
        Assert.Equal((In("3"), In("1/4"), true, true), (advice.Sections[0].Sag, -advice.Over, advice.IsEachSound, advice.IsShort));
        Assert.Equal(In("3 1/2"), advice.Shared);
        Assert.Null(advice.FromKnot);
        Assert.False(advice.IsHopeless);
    }

    /// <summary>Across 73 in the rope of 72.5896 in lacks 0.4104 in, and 4 in of sag take 73.5815 in, 0.9920 in more; shared it would be 1.55 in, under half of what is planned.</summary>
    [Fact]
    public void What_a_knots_tail_can_give_is_taken_from_it_and_no_more()
    {
        var arc = Catenary.ArcOf(Catenary.ParameterForSag(72, 0, 4), 72, 0);
        Assert.Equal(-0.992, arc - Catenary.ArcOf(Catenary.ParameterForSag(73, 0, 4), 73, 0), 0.0005);
        Assert.True(BothAt(73, 2) > 2 * arc);

        // Of the two diameters of a tail one may go: 1 1/2 in of this rope.
        Assert.Equal(In("1 1/2"), Spans(WithKnot).KnotsGive);
        var advice = Spans(WithKnot).Of(Measured((0, "73")));
        Assert.Equal((-In("7/16"), -In("1"), false), (advice.Sections[0].Sag, advice.Over, advice.IsEachSound));
        Assert.Null(advice.Shared);
        Assert.Equal(In("1"), advice.FromKnot);
        Assert.Null(Spans(WithKnot).Of(Measured((0, "73 3/4"))).FromKnot);
    }

    [Fact]
    public void Where_nothing_helps_the_piece_goes_back()
    {
        var advice = Spans(Sample.PlainRow).Of(Measured((0, "74")));
        Assert.True(advice.IsHopeless);
        Assert.Equal(-In("1 7/16"), advice.Sections[0].Sag); // 74 - 72.5896 = 1.4104, up to the next mark of the tape
    }

    /// <summary>Half the row's height of 30 in is the deepest that the takeoff lets pass; 72.5896 in across 60 in hang 18.02 in deep.</summary>
    [Fact]
    public void A_rope_that_would_hang_too_deep_is_shared_out_or_trimmed()
    {
        var arc = Catenary.ArcOf(Catenary.ParameterForSag(72, 0, 4), 72, 0);
        Assert.Equal(18.02, Catenary.SagOf(Catenary.ParameterForArc(60, 0, arc), 60, 0), 0.05);
        var advice = Spans(Sample.PlainRow).Of(Measured((0, "60")));
        Assert.Equal((true, false), (advice.Over.IsPositive, advice.IsEachSound));
        var shared = advice.Shared!.Value.Inches;
        Assert.InRange(2 * arc, BothAt(60, shared), BothAt(60, shared + 0.0625));
    }

    /// <summary>Lower rows bound how deep a rope may hang: the row below is 12 in lower and hangs 4 in, and the ropes are 1 1/2 in thick.</summary>
    [Fact]
    public void A_sag_stays_clear_of_the_row_below()
    {
        var takeoff = Sample.Takeoff(Sample.Line(Sample.PlainRow + """, { "mark": "low", "height": "18 in", "sag": "4 in", "start": "stopped", "finish": "stopped" }"""));
        var spans = new PieceSpans(takeoff, takeoff.Pieces[0]);
        var wide = MeasuredSpan.Of(takeoff.Pieces[0], 0, In("64 1/4")).Sag!.Value;
        Assert.InRange(wide.Inches, 14.5, 15);
        Assert.False(spans.Of(Measured((0, "64 1/4"))).IsEachSound);
        Assert.True(Spans(Sample.PlainRow).Of(Measured((0, "64 1/4"))).IsEachSound);
    }

    [Fact]
    public void Several_spans_add_up()
    {
        var spans = Spans(WithKnot);
        var (first, second, both) = (spans.Of(Measured((0, "72 1/2"))), spans.Of(Measured((1, "72 1/2"))), spans.Of(Measured((0, "72 1/2"), (1, "72 1/2"))));
        Assert.Equal(first.Over + second.Over, both.Over);
        Assert.Equal(-both.Over, both.FromKnot);
        // One wider and one narrower by as much: the rope fits, with nearly the planned sag in both.
        var even = spans.Of(Measured((0, "72 1/2"), (1, "71 1/2")));
        Assert.InRange(even.Shared!.Value.Inches, 3.875, 4);
    }

    [Fact]
    public void Measured_as_planned_any_piece_fits() => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            var takeoff = Sample.Takeoff(RandomJob.Of(seed).ToJsonString());
            foreach (var piece in takeoff.Pieces)
            {
                var advice = new PieceSpans(takeoff, piece).Of(piece.Sections.Index().ToDictionary(pair => pair.Index, pair => pair.Item.Clear));
                Assert.Equal(Length.Zero, advice.Over);
            }
        },
        iter: 50);

    [Fact]
    public void A_table_says_of_every_span_what_the_advice_says() => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            var takeoff = Sample.Takeoff(RandomJob.Of(seed).ToJsonString());
            var piece = takeoff.Pieces[seed % takeoff.Pieces.Count];
            var spans = new PieceSpans(takeoff, piece);
            foreach (var (index, table) in spans.Tables().Sections.Index())
            {
                for (var step = seed % 7; step < table.Overs.Count; step += 29)
                {
                    var clear = Length.FromSixtyFourths(4L * (table.First + step));
                    Assert.True(PieceSpans.IsLikely(piece.Sections[index], clear));
                    var advice = spans.Of(new Dictionary<int, Length> { [index] = clear });
                    Assert.Equal(
                        (advice.Over, advice.Sections[0].Sag, advice.IsEachSound),
                        (Sixteenths(table.Overs[step]), Sixteenths(table.Sags[step]), step >= table.FirstSound && step <= table.LastSound));
                }
            }
        },
        iter: 30);

    /// <summary>Whoever has the tables alone finds the sag to share by adding their rope up, whichever sections were measured.</summary>
    [Fact]
    public void The_tables_say_of_any_spans_what_sag_all_sections_share() => Gen.Int[0, int.MaxValue - 1].Sample(
        seed =>
        {
            var (takeoff, random) = (Sample.Takeoff(RandomJob.Of(seed).ToJsonString()), new Random(seed));
            foreach (var piece in takeoff.Pieces.Where(piece => piece.Sections.Count > 1))
            {
                var spans = new PieceSpans(takeoff, piece);
                var tables = spans.Tables();
                for (var round = 0; round < 5 && tables.Sections.Count > 0; round++)
                {
                    var steps = tables.Sections.Select(table => random.Next(2) == 0 ? (int?)null : random.Next(table.Overs.Count)).ToList();
                    var clear = steps.Index().Where(step => step.Item is not null)
                        .ToDictionary(step => step.Index, step => Sixteenths(tables.Sections[step.Index].First + step.Item!.Value));
                    if (clear.Count > 0)
                        Assert.Equal(SharedBy(tables, [.. steps.Select((step, i) => step is not null && clear[i] == piece.Sections[i].Clear ? null : step)]), spans.Of(clear).Shared);
                }
            }
        },
        iter: 30);

    /// <summary>Net 5 1/2 in at the ends' posts together, 5 1/2 in through the middle one, the rope across 72 in and across 74 in; up to the next quarter.</summary>
    [Fact]
    public void Cut_again_a_piece_is_worked_out_for_the_span_as_measured()
    {
        var takeoff = Sample.Takeoff(Sample.Line(Sample.PlainRow));
        var piece = AsMeasured.Of(takeoff.Job, takeoff.Pieces[0], Measured((1, "74")), ShopTables.Standard);
        var net = 11 + Catenary.ArcOf(Catenary.ParameterForSag(72, 0, 4), 72, 0) + Catenary.ArcOf(Catenary.ParameterForSag(74, 0, 4), 74, 0);
        Assert.Equal(net, piece.Net.Inches, 1e-5);
        Assert.Equal(Math.Ceiling(net * 4) / 4, piece.Cut.Inches);
        Assert.Equal((In("72"), In("74"), true), (piece.Sections[0].Clear, piece.Sections[1].Clear, piece.IsAsMeasured));
        // Measured once more, what was measured before holds for the sections that were not.
        var again = AsMeasured.Of(takeoff.Job, piece, Measured((0, "73")), ShopTables.Standard);
        Assert.Equal((In("73"), In("74")), (again.Sections[0].Clear, again.Sections[1].Clear));
    }

    private static PieceSpans Spans(string row)
    {
        var takeoff = Sample.Takeoff(Sample.Line(row));
        return new(takeoff, takeoff.Pieces[0]);
    }

    private static double BothAt(double measured, double sag) =>
        Catenary.ArcOf(Catenary.ParameterForSag(72, 0, sag), 72, 0) + Catenary.ArcOf(Catenary.ParameterForSag(measured, 0, sag), measured, 0);

    private static Length? SharedBy(SpanTables tables, IReadOnlyList<int?> steps)
    {
        var rows = tables.Sections[0].Arcs.Count;
        var fitting = Enumerable.Range(0, rows).Where(row => tables.Sections.Select((table, i) => RopeOf(table.Arcs[row], steps[i])).Sum() <= tables.Rope).ToList();
        return fitting.Count == 0 || fitting.Count == rows ? null : Sixteenths(tables.LeastShared + fitting[^1]);

        static decimal RopeOf(IReadOnlyList<int> row, int? step)
        {
            if (step is not { } place)
                return row[0];
            var (column, part) = Math.DivRem(place, 32);
            return part == 0 ? row[1 + column] : row[1 + column] + ((row[2 + column] - row[1 + column]) * part / 32m);
        }
    }

    private static Dictionary<int, Length> Measured(params (int Section, string Clear)[] spans) => spans.ToDictionary(span => span.Section, span => In(span.Clear));

    private static Length In(string inches) => LengthText.Parse(inches + " in").OrThrow();

    private static Length Sixteenths(int sixteenths) => Length.FromSixtyFourths(4L * sixteenths);
}
